"""Which sensors got mixed up is entered anew in its place, in both hosts; what follows is reasoned again."""

import pytest

from server.core.facts.corrections import PUT_RIGHT
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.test_put_right import right_from_the_start
from tests.core.test_put_right import told
from tests.hosts import Core

OUTER, INNER, LEFT = "rear-right-outer", "rear-right-inner", "rear-left-outer"
TWO, THREE = [home(INNER), home(OUTER)], [home(LEFT), home(INNER), home(OUTER)]


@pytest.fixture
def job(core):
    """A fault at right outer; three are pulled and in the hand, each with its label."""
    job = Driver(core).begin()
    job.test(OUTER)
    for place in (OUTER, INNER, LEFT):
        job.labels[home(place)] = job._fresh()
        job.force("unit_labelled", unit=home(place), code=job.labels[home(place)], how="scanned")
        job.force("unit_pulled", unit=home(place), position=place, how="scanned")
    return job


def mixed(job, units):
    """Say that they got mixed up, and put a fresh label on each; return the number of the entry."""
    job.fact("units_mixed", units=units, note="")
    seq = job.seq
    for _ in units:
        fresh_label(job)
    return seq


def fresh_label(job):
    """Put a label from the roll on the next one that is asked for."""
    step = job.step()
    assert step["id"] == "mixed.label"
    job.scan(job.label_of(step["expects"]["unit"]))


def anew(job, seq, units):
    """Return the draft of a correction that says which ones got mixed up."""
    entry = {"kind": "units_mixed", "data": {"units": units, "note": ""}}
    return {"kind": PUT_RIGHT, "data": {"device": job.device, "seq": seq, "entry": entry, "reason": "slip"}}


def test_what_was_in_the_hand_then_is_offered(job):
    seq = mixed(job, TWO)
    job.force("unit_pulled", unit=home("rear-left-inner"), position="rear-left-inner", how="tapped")
    asked = job.core("entry", job=job.job, device=job.device, seq=seq)
    units, note = asked["fields"]
    assert (units["words"], units["form"], units["value"]) == ("Mixed up", "many", TWO)
    shown = {each["value"]: each["words"] for each in units["options"]}
    assert shown == {unit: f"{code[:3]}-{code[3:]}" for unit, code in job.labels.items() if unit in THREE}
    assert note["name"] == "note"


def test_one_that_was_not_among_them_has_its_label_back_and_what_named_it_no_longer_fits(job):
    seq = mixed(job, THREE)
    changes = job.core("righted", event={**anew(job, seq, TWO), "job": job.job})
    assert changes["refusal"] is None
    assert len(changes["unfit"]) == 1, "the fresh label of the third"
    job.record(anew(job, seq, TWO), *changes["besides"])
    state = job.core("state")
    assert state["mixed"][0]["units"] == TWO
    left = state["units"][home(LEFT)]
    assert (left["place"], left["code"]) == ("out", job.labels[home(LEFT)])
    assert job.view()["disputes"] == []
    assert job.step()["form"] != "contradiction"
    log = right_from_the_start(job.events)
    assert told(Core(), job.events) == told(Core(), log)


def test_one_more_among_them_is_asked_for_a_fresh_label(job):
    seq = mixed(job, TWO)
    assert job.step()["id"] != "mixed.label"
    job.record(anew(job, seq, THREE))
    step = job.step()
    assert (step["id"], step["progress"]) == ("mixed.label", {"now": 3, "total": 3, "word": "Label"})
    assert told(Core(), job.events) == told(Core(), right_from_the_start(job.events))
    fresh_label(job)
    job.record(*job.view()["moves"][0]["events"])
    job.guided()
    job.test(OUTER)
    assert told(Core(), job.events) == told(Core(), right_from_the_start(job.events))


@pytest.mark.parametrize("units", [[], [home(OUTER)], [home(OUTER), home("rear-left-inner")]])
def test_less_than_two_or_what_sat_at_its_position_did_not_get_mixed_up(job, units):
    assert job.check(anew(job, mixed(job, TWO), units))["rule"] == "mixed"
