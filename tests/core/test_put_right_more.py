"""What was seen, heard, repaired, handed over or named is entered anew in its place, in both hosts."""

import pytest

from server.core.facts.corrections import PUT_RIGHT
from tests.core.driver import JOB
from tests.core.driver import Driver
from tests.core.driver import home

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
