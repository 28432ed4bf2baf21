"""Each kind of event is one declaration; what it names is looked up before it is recorded."""

import pytest

from server.core.facts import amounts
from server.core.facts import corrections
from server.core.facts import fields
from server.core.facts import naming
from server.core.facts import several
from server.core.facts.kinds import ALL
from server.core.facts.kinds import KINDS
from tests.core.driver import Driver
from tests.said import english

HERE, THERE = "rear-left-outer", "rear-left-inner"
UNIT, OTHER = f"v1.{HERE}", f"v1.{THERE}"
A_POSITION, A_UNIT = "a position of the job", "a sensor that is on record"

# A well-formed value of each form, on a job that was just begun.
SOUND = {
    fields.Text: "said",
    fields.Name: "named",
    fields.Id: "b1",
    fields.Reason: "because",
    fields.Flag: True,
    amounts.Count: 3,
    amounts.Celsius: -5,
    amounts.Centimetres: 170,
    amounts.WireLength: 450,
    amounts.Minutes: 3,
    fields.Digest: "0a" * 32,
    fields.Photo: "0a" * 32,
    fields.Names: ["named"],
    amounts.Rates: {"unit": 50000},
    amounts.Counts: {"pull": 60},
    amounts.Confidence: 950000,
    fields.Options: {"width": "60"},
    fields.Vehicle: {"id": "v1", "name": "Blue estate", "vin": ""},
    corrections.Entry: {"kind": "cleaned", "data": {"position": HERE, "note": ""}},
    naming.LabelCode: "JRMMA",
    naming.LabelCodeOrNone: "JRMMA",
    naming.Position: HERE,
    naming.Positions: [HERE, THERE],
    several.Distances: [{"position": HERE, "left": 20, "tape": 60, "shown": 62}],
    several.Findings: [{"position": HERE, "found": "dirt"}],
    several.Codes: [{"position": HERE, "code": "B1", "failure_type": ""}],
    several.Meanings: [{"code": "B1", "means": "wire"}],
    several.RepairedCause: f"circuit:{HERE}",
    naming.Unit: UNIT,
    naming.NewUnit: UNIT,
    naming.Units: [UNIT, OTHER],
    several.Fitted: {HERE: OTHER, THERE: UNIT},
}
# The same naming something that does not exist: (value, where in it, what is found, what is wanted).
UNKNOWN = {
    naming.Position: [("roof", "", "roof", A_POSITION)],
    naming.Positions: [([HERE, "roof"], "[1]", "roof", A_POSITION)],
    several.Findings: [([{"position": "roof", "found": "ice"}], "[0].position", "roof", A_POSITION)],
    several.Distances: [
        ([{"position": "roof", "left": 0, "tape": 1, "shown": 1}], "[0].position", "roof", A_POSITION)
    ],
    several.Codes: [
        ([{"position": "roof", "code": "", "failure_type": ""}], "[0].position", "roof", A_POSITION)
    ],
    several.RepairedCause: [
        (cause, "", cause, "a position or feed of the job") for cause in ("circuit:roof", "feed:roof")
    ],
    naming.Unit: [("ughost", "", "ughost", A_UNIT)],
    naming.NewUnit: [],
    naming.Units: [([UNIT, "ughost"], "[1]", "ughost", A_UNIT)],
    several.Fitted: [
        ({HERE: UNIT, "roof": OTHER}, ".roof", "roof", A_POSITION),
        ({HERE: UNIT, THERE: "ughost"}, f".{THERE}", "ughost", A_UNIT),
    ],
}
# What the fold keeps as it is, since the first release, though the job does not know the position.
KEPT_AS_IT_IS = {("test_run", "codes"), ("walk_checked", "positions"), ("walk_checked", "missed")}
NAMING = [
    pytest.param(kind, field, *case, id=f"{kind.name}.{field.name}-{number}")
    for kind in ALL
    for field in kind.fields
    if field.names_positions or field.names_units
    for number, case in enumerate(UNKNOWN[type(field)])
]


def sound(kind, layout):
    return {field.name: _value(field, layout) for field in kind.fields}


def _value(field, layout):
    if isinstance(field, fields.Choice):
        return field.allowed[0]
    return layout if isinstance(field, fields.NewPositions) else SOUND[type(field)]


@pytest.fixture
def job(core):
    return Driver(core).begin()


@pytest.fixture
def layout(core):
    return next(entry["positions"] for entry in core("layouts") if entry["id"] == "rear-4")


def test_no_two_kinds_have_one_name():
    assert sorted(KINDS) == sorted(kind.name for kind in ALL)


@pytest.mark.parametrize("kind", ALL, ids=lambda kind: kind.name)
def test_each_kind_is_folded_and_tells_its_sentence(core, job, layout, kind):
    data = sound(kind, layout)
    assert kind.problem(data) is None

    job.force(kind.name, **data)

    assert core("conflicts")["not_understood"] == []
    told = job.view()["history"][0]["sentence"]
    assert not told[0].islower()
    assert "{" not in told


@pytest.mark.parametrize("kind", ALL, ids=lambda kind: kind.name)
def test_a_field_that_is_missing_is_named_unless_it_was_added_after_release(layout, kind):
    for field in kind.fields:
        data = sound(kind, layout)
        del data[field.name]
        fault = kind.problem(data)
        if field.later:
            assert fault is None
        else:
            assert english(fault.as_dict()) == {
                "field": f"data.{field.name}",
                "found": "nothing",
                "wanted": "the field to be there",
                "message": f"data.{field.name}: found nothing, wanted the field to be there",
            }


@pytest.mark.parametrize(("kind", "field", "value", "where", "found", "wanted"), NAMING)
def test_what_does_not_exist_is_refused_by_name_whatever_the_kind(
    core, job, layout, kind, field, value, where, found, wanted
):
    before = core("state")

    stop = job.check({"kind": kind.name, "data": {**sound(kind, layout), field.name: value}})

    assert stop["rule"] == "form"
    said = {key: stop["fault"][key] for key in ("field", "found", "wanted")}
    assert said == {"field": f"data.{field.name}{where}", "found": f'"{found}"', "wanted": wanted}
    assert core("state") == before


@pytest.mark.parametrize(("kind", "field", "value", "where", "found", "wanted"), NAMING)
def test_the_fold_keeps_what_names_something_that_does_not_exist(
    core, job, layout, kind, field, value, where, found, wanted
):
    """Another phone may send it: an unknown position is listed as not understood, a unit kept as it was."""
    job.force(kind.name, **{**sound(kind, layout), field.name: value})

    assert job.view()["history"][0]["kind"] == kind.name
    missed = core("conflicts")["not_understood"]
    if wanted == A_UNIT or (kind.name, field.name) in KEPT_AS_IT_IS:
        assert missed == []
    else:
        assert [entry["kind"] for entry in missed] == [kind.name]
        assert found in missed[0]["why"]


def test_a_sound_draft_names_nothing_that_is_looked_for_in_vain(core, job, layout):
    for kind in ALL:
        stop = job.check({"kind": kind.name, "data": sound(kind, layout)})
        assert stop is None or stop["rule"] != "form", kind.name


def test_an_empty_text_names_no_position_and_no_unit(job):
    nothing = {"position": "", "unit": ""}
    picture = {"sha256": "0a" * 32, "mime": "image/jpeg", "bytes": 1, "width": 1, "height": 1}
    assert job.check({"kind": "photo_taken", "data": {**picture, "shows": "screen", **nothing}}) is None


def test_a_position_that_stays_empty_names_no_unit(job):
    empty = {"unit": "empty", "position": HERE, "reason": "left empty"}
    assert job.check({"kind": "left_deliberately", "data": empty}) is None
