"""What was seen, heard, repaired, handed over or named is entered anew in its place, in both hosts."""

import pytest

from server.core.facts.corrections import PUT_RIGHT
from server.core.views.correctable import FIELDS
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.test_put_right import right_from_the_start
from tests.core.test_put_right import told
from tests.hosts import Core

OUTER, INNER, LEFT = "rear-right-outer", "rear-right-inner", "rear-left-outer"
NOTHING = [{"position": each, "found": "nothing"} for each in (OUTER, INNER, LEFT)]
DIRT = [{"position": OUTER, "found": "dirt"}]
DRAWN = [
    {"name": name, "group": "rear", "reach_minutes": 3, "x": x, "y": 950, "part": "", "pins": ""}
    for name, x in (("near the hitch", 400), ("corner", 900))
]


@pytest.fixture
def job(core):
    job = Driver(core).begin()
    job.test(OUTER)
    return job


def fields(job, seq):
    """Return what can be entered anew of an entry, by name."""
    asked = job.core("entry", job=job.job, device=job.device, seq=seq)
    return {each["name"]: each for each in asked["fields"]}


def enter_anew(job, seq, **changes):
    """Enter an entry anew with other values in some fields; return the job as the core holds it."""
    asked = job.core("entry", job=job.job, device=job.device, seq=seq)
    entry = {"kind": asked["kind"], "data": {**asked["data"], **changes}}
    job.record(
        {"kind": PUT_RIGHT, "data": {"device": job.device, "seq": seq, "entry": entry, "reason": "slip"}}
    )
    return job.core("state")["jobs"][job.job]


@pytest.mark.parametrize(
    ("kind", "said", "field", "right", "kept"),
    [
        ("lamp_checked", {"when": "reverse", "result": "not_sure", "note": ""}, "result", "as_it_should",
         lambda facts: facts["lamps"]["reverse"]["result"]),
        ("listened", {"ticks": [OUTER], "silent": [INNER]}, "silent", [],
         lambda facts: [each for each, ticks in facts["listened"][-1]["heard"].items() if not ticks]),
        ("circuit_repaired", {"cause": "circuit:" + OUTER, "what": "pin"}, "cause", "circuit:" + INNER,
         lambda facts: facts["repairs"][-1]["cause"]),
        ("circuit_repaired", {"cause": "circuit:" + OUTER, "what": "pin"}, "what", "wire",
         lambda facts: facts["repairs"][-1]["what"]),
        ("walk_checked", {"positions": [OUTER, INNER], "missed": [OUTER]}, "missed", [INNER],
         lambda facts: facts["walk"]["missed"]),
        ("job_handed_over", {"to": "Ben", "note": ""}, "to", "Eva",
         lambda facts: facts["handed"]["to"]),
        ("fit_checked", {"unit": home(OUTER), "position": OUTER, "checks": []}, "position", INNER,
         lambda facts: min(facts["fit_checks"])),
        ("sounder_checked", {"check": "fuse", "found": "good"}, "check", "supply",
         lambda facts: facts["sounder"][-1]["check"]),
        ("sounder_checked", {"check": "fuse", "found": "good"}, "found", "mended",
         lambda facts: facts["sounder"][-1]["found"]),
        ("job_paused", {"why": "part", "part": "PS-1", "note": ""}, "why", "customer",
         lambda facts: facts["paused"]["why"]),
        ("job_closed", {"why": "no_part", "note": ""}, "why", "not_worth",
         lambda facts: facts["closed"]["why"]),
        ("left_deliberately", {"unit": home(OUTER), "position": OUTER, "reason": "good"}, "position", INNER,
         lambda facts: min(facts["left"])),
    ],
)  # fmt: skip
def test_a_field_of_what_happened_is_entered_anew(job, kind, said, field, right, kept):
    job.force(kind, **said)
    seq = job.seq
    asked = fields(job, seq)[field]
    assert asked["value"] == said[field] != right
    offered = [each["value"] for each in asked["options"]]
    assert asked["form"] == "text" or all(
        each in offered for each in ([right], right)[asked["form"] == "many"]
    )
    assert kept(enter_anew(job, seq, **{field: right})) == right
    [shown] = [each for each in job.view()["history"] if each["seq"] == seq]
    assert shown["righted"]["said"]


def test_a_job_that_ended_repaired_is_asked_for_no_reason(job):
    job.force("job_closed", note="")
    assert list(fields(job, job.seq)) == ["note"]


@pytest.mark.parametrize(
    ("right", "position"), [("", "stock"), (OUTER, "fitted")], ids=["in stock", "fitted after all"]
)
def test_where_a_sensor_was_seen_is_entered_anew_as_one_answer(job, right, position):
    unit, place = home(OUTER), position
    job.force("unit_seen", unit=unit, place="fitted", position=INNER, how="scanned")
    asked = fields(job, job.seq)["place"]
    [now] = [each for each in asked["options"] if each["value"] == asked["value"]]
    assert now["sets"] == {"place": "fitted", "position": INNER}
    [other] = [each for each in asked["options"] if each["sets"] == {"place": place, "position": right}]
    enter_anew(job, job.seq, **other["sets"])
    stands = job.core("state")["units"][unit]
    assert (stands["place"], stands["position"] or "") == (place, right)


def test_what_was_seen_is_asked_for_by_position_and_entered_anew(job):
    job.force("looked", positions=NOTHING, note="")
    seq = job.seq
    asked = fields(job, seq)
    assert asked["seen." + OUTER]["value"] == []
    assert "dirt" in [each["value"] for each in asked["seen." + OUTER]["options"]]
    facts = enter_anew(job, seq, positions=DIRT + NOTHING[1:])
    assert facts["looked"]["positions"][0]["found"] == "dirt"
    assert fields(job, seq)["seen." + OUTER]["value"] == ["dirt"]
    job.force("looked", positions=DIRT, note="")
    assert fields(job, job.seq)["seen." + INNER]["value"] == []


@pytest.fixture
def drawn_job(core):
    job = Driver(core)
    positions = core("drawn_positions", sort="parking-sensor", positions=DRAWN)
    vehicle = {"id": "v1", "name": "White van", "vin": "", "model": "White van, long"}
    job.fact("job_opened", vehicle=vehicle, complaint="", layout="own", part="PS-1", positions=positions)
    return job


def test_a_drawn_position_is_called_otherwise_wherever_it_shows(drawn_job):
    job = drawn_job
    first = job.core("state")["jobs"][JOB]["positions"][0]["id"]
    assert f"position:{first}" in job.view()["history"][-1]["about"]
    asked = fields(job, 1)
    assert asked["called." + first]["value"] == "near the hitch"
    assert asked["vehicle.model"]["value"] == "White van, long"
    positions = job.core("entry", job=JOB, device=job.device, seq=1)["data"]["positions"]
    other = [{**positions[0], "name": "left of the hitch"}, *positions[1:]]
    enter_anew(job, 1, positions=other)
    job.test(first)
    assert "left of the hitch" in job.view()["history"][0]["sentence"]
    kept = job.core("layouts")[-1]
    assert [each["name"] for each in kept["drawn"]] == ["left of the hitch", "corner"]


def test_the_model_that_a_layout_is_kept_for_is_entered_anew(drawn_job):
    asked = drawn_job.core("entry", job=JOB, device=drawn_job.device, seq=1)["data"]
    enter_anew(drawn_job, 1, vehicle={**asked["vehicle"], "model": "White van, short"})
    assert drawn_job.core("layouts")[-1]["model"] == "White van, short"


@pytest.mark.parametrize("change", ["place", "gone", "twice"])
def test_of_a_position_nothing_changes_but_what_it_is_called(drawn_job, change):
    job = drawn_job
    data = job.core("entry", job=JOB, device=job.device, seq=1)["data"]
    first, other = data["positions"]
    positions = {
        "place": [{**first, "x": 10}, other],
        "gone": [first],
        "twice": [{**first, "name": other["name"]}, other],
    }[change]
    entry = {"kind": "job_opened", "data": {**data, "positions": positions}}
    draft = {"kind": PUT_RIGHT, "data": {"device": job.device, "seq": 1, "entry": entry, "reason": "slip"}}
    assert job.check(draft)["rule"] == ("form" if change == "twice" else "correction")


def test_a_vehicle_without_a_drawn_layout_is_asked_for_no_model(job):
    assert "vehicle.model" not in fields(job, 1)
    assert not [name for name in fields(job, 1) if name.startswith("called.")]


# One entry of each kind that can be entered anew, as a mechanic makes it in the midst of a job.
TEST = {"heard": True, "faulted": [OUTER], "silent": [], "unplugged": [], "codes": [], "came_and_went": False}
PHOTO = {"sha256": "ab" * 32, "mime": "image/jpeg", "bytes": 9, "width": 4, "height": 3, "shows": "position"}
COLOURS = {"signal_colour": "", "supply_colour": "", "ground_colour": ""}
MADE = {
    "job_handed_over": {"to": "Ben", "note": ""},
    "job_paused": {"why": "part", "part": "PS-1", "note": ""},
    "job_closed": {"why": "no_part", "note": ""},
    "lamp_checked": {"when": "reverse", "result": "not_sure", "note": ""},
    "looked": {"positions": NOTHING, "note": ""},
    "walk_checked": {"positions": [OUTER, INNER], "missed": [LEFT]},
    "listened": {"ticks": [OUTER], "silent": [INNER]},
    "test_run": {**TEST, "note": ""},
    "cleaned": {"position": OUTER, "note": ""},
    "connector_locked": {"position": OUTER},
    "fit_checked": {"unit": home(OUTER), "position": OUTER, "checks": []},
    "sounder_checked": {"check": "fuse", "found": "good"},
    "photo_taken": {**PHOTO, "position": OUTER, "unit": ""},
    "circuit_measured": {"position": OUTER, "check": "ground", "value": "", "reads": "bad"},
    "circuit_repaired": {"cause": "circuit:" + OUTER, "what": "repaired"},
    "wire_noted": {
        "position": OUTER, "size": "0.5", "centimetres": 300, "celsius": 20, "colour": "", "pins": "",
        **COLOURS,
    },
    "wires_marked": {"position": OUTER, "pins": "1 signal", **COLOURS},
    "unit_labelled": {"unit": home(OUTER), "code": "", "how": "scanned"},
    "part_noted": {"unit": home(OUTER), "part": "PS-1", "serial": "1"},
    "unit_added": {"unit": "unew", "part": "PS-1", "serial": "", "code": "", "how": "typed", "place": "out"},
    "label_voided": {"unit": home(OUTER), "code": "", "reason": "torn"},
    "unit_pulled": {"unit": home(OUTER), "position": OUTER, "how": "tapped"},
    "unit_fitted": {"unit": home(INNER), "position": INNER, "how": "tapped", "override": ""},
    "left_deliberately": {"unit": home(OUTER), "position": OUTER, "reason": "good"},
    "unit_moved": {"unit": home(INNER), "place": "stock", "how": "tapped", "note": ""},
    "unit_seen": {"unit": home(OUTER), "place": "fitted", "position": OUTER, "how": "tapped"},
    "units_mixed": {"units": [home(INNER), home(OUTER)], "note": ""},
}  # fmt: skip


def test_each_kind_that_can_be_entered_anew_is_tried_below():
    assert set(MADE) | {"job_opened"} == set(FIELDS)


@pytest.mark.parametrize("kind", MADE)
def test_whatever_is_chosen_in_a_field_counts_as_if_it_had_been_entered_so(kind):
    """Each answer that the form offers gives the state and the verdict of the job in which it was right."""
    job = Driver(Core()).begin()
    job.test(OUTER)
    job.force("unit_pulled", unit=home(INNER), position=INNER, how="tapped")
    data = {**MADE[kind], **({"code": job.codes[3]} if "code" in MADE[kind] else {})}
    job.force(kind, **data)
    seq = job.seq
    job.force("test_run", **TEST, note="")
    tried = 0
    for name, field in fields(job, seq).items():
        for option in field["options"]:
            chosen = [option["value"]] if field["form"] == "many" else option["value"]
            changed = {**data, **(option.get("sets") or {name: chosen})}
            if name.startswith("seen.") or changed == data:
                continue
            entry = {"kind": kind, "data": changed}
            of = {"device": job.device, "seq": seq, "entry": entry, "reason": "slip"}
            event = {**job.events[-1], "kind": PUT_RIGHT, "data": of, "seq": job.seq + 1, "prev": job.prev}
            log = [*job.events, event]
            assert told(Core(), log) == told(Core(), right_from_the_start(log)), (name, chosen)
            tried += 1
    texts = [each for each in fields(job, seq).values() if each["form"] == "text"]
    assert tried or texts or kind == "looked"
