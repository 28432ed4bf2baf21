"""What the register of a chain says reaches the proposal, and what a return is found by at other counters."""

import pytest

from tests.core.counter_yard import BAD
from tests.core.counter_yard import DAY_MS
from tests.core.counter_yard import NOW
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import proven
from tests.core.counter_yard import said
from tests.core.counter_yard import standing

READ = {"part": "PS-1", "serial": "S-100", "compared": "same"}
THERE = {"place": "north.example", "decision": "accept", "settled": True, "at": NOW - 3 * DAY_MS}
HERE = "yard.example"


@pytest.fixture
def bad(core):
    """The label of a unit that was found bad, replaced and scanned to the counter."""
    return proven(core).labels[BAD]


def asked(core, bad, *found, reached=True):
    """Return the proposal where the register answered with `found`, or could not be asked."""
    return Clerk(core).ask(bad, read=READ, host=HERE, register={"asked": reached, "found": list(found)})


def test_what_another_counter_accepted_or_refused_is_refused_with_the_place(core, bad):
    answer = asked(core, bad, THERE)
    assert (answer["proposed"], answer["headline"]) == ("refuse", "Accepted at another counter")
    assert said(answer, "others").endswith("Accepted 3 days ago at north.example.")
    answer = asked(core, bad, {**THERE, "decision": "refuse"})
    assert (answer["proposed"], answer["against"]) == ("refuse", ["others"])


def test_what_another_counter_has_in_hand_is_held(core, bad):
    begun = {**THERE, "settled": False}
    assert asked(core, bad, begun)["proposed"] == "hold"
    assert asked(core, bad, begun, THERE)["proposed"] == "refuse"


def test_what_is_at_no_other_counter_is_accepted(core, bad):
    answer = asked(core, bad)
    assert (answer["proposed"], standing(answer, "others"), standing(answer, "unasked")) == (
        "accept",
        "pass",
        None,
    )


def test_without_a_connection_the_own_record_decides_and_the_decision_says_so(core, bad):
    answer = asked(core, bad, reached=False)
    assert (answer["proposed"], answer["against"]) == ("accept", ["unasked"])
    assert said(answer, "unasked").startswith("Other counters not asked: ")
    clerk = Clerk(core)
    clerk.decide(answer)
    line = core("decided", start=0, end=NOW + DAY_MS)["lines"][0]
    assert line["about"] == ["other counters not asked"]


def test_a_yard_without_a_register_hears_nothing_of_one(core, bad):
    answer = Clerk(core).ask(bad, read=READ)
    assert (standing(answer, "others"), standing(answer, "unasked")) == (None, None)


def test_a_return_is_found_by_label_and_host_and_by_its_serial_number(core, bad):
    assert asked(core, bad)["keys"] == [f"label {bad} {HERE}", "serial S100"]
    text = f"HTTPS://North.Example/U/{bad}"
    elsewhere = Clerk(core).ask(text, read={"serial": "s 7"}, host=HERE)
    assert elsewhere["keys"] == [f"label {bad} north.example", "serial S7"]


def test_what_is_entered_of_a_return_names_the_part_and_no_people(core, bad):
    assert core("entered", unit=BAD, host=HERE)["decision"] == ""
    clerk = Clerk(core)
    clerk.decide(asked(core, bad))
    assert core("entered", unit=BAD, host=HERE) == {
        "keys": [f"label {bad} {HERE}", "serial S100"],
        "part": "PS-1",
        "decision": "accept",
        "knowing": False,
        "at": clerk.events[-1]["at"],
        "shown": f"{bad[:3]}-{bad[3:]}",
    }
    assert core("entered", unit="u0000000000ff", host=HERE) is None


def test_who_refuses_what_another_counter_has_knew_of_it(core, bad):
    clerk = Clerk(core)
    clerk.decide(asked(core, bad, THERE))
    entered = core("entered", unit=BAD, host=HERE)
    assert (entered["decision"], entered["knowing"]) == ("refuse", True)
