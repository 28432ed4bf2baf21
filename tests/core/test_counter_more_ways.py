"""More ways in which a return is wrong, or looks wrong and is not: each with what is right to propose."""

import pytest

from tests.core.counter_yard import BAD
from tests.core.counter_yard import INNER
from tests.core.counter_yard import NOW
from tests.core.counter_yard import OUTER
from tests.core.counter_yard import Clerk
from tests.core.counter_yard import proven
from tests.core.counter_yard import said
from tests.core.counter_yard import standing

NEW = "u00000000new1"
OWN = {"part": "PS-1", "serial": "SN-1"}
AT_NORTH = {"place": "north", "decision": "accept", "settled": True, "at": NOW}


def asked(core, job, read=OWN, **more):
    return Clerk(core).ask(job.labels[BAD], read=read, **more)


def test_a_serial_number_of_another_makers_sensor_is_no_sign_of_a_moved_label(core):
    """Two makers number their sensors alike; the part number, which was read with it, tells them apart."""
    job = proven(core, serial="SN-1")
    job.force("part_noted", unit=NEW, part="QX-9", serial="SN-1")
    answer = asked(core, job)
    assert (answer["proposed"], standing(answer, "serial")) == ("accept", "pass")
    assert "with another part number. So it is another one." in said(answer, "serial")
    alone = asked(core, job, {"serial": "SN-1"})
    assert (alone["proposed"], alone["against"]) == ("hold", ["serial"]), "a record says what somebody typed"


def test_one_part_does_not_come_back_twice_by_another_part_number_on_its_record(core):
    """It was accepted as QX-9; labelled anew, its record now says PS-1 with the same serial number."""
    job = proven(core, serial="SN-1")
    clerk, foreign = Clerk(core), "HTTPS://NORTH.EXAMPLE/U/" + job.codes[15]
    clerk.decide(
        clerk.ask(foreign, read={"part": "QX-9", "serial": "SN-1"}, host="yard.example"),
        "accept",
        "as agreed",
    )
    assert asked(core, job, {"serial": "SN-1"})["proposed"] == "hold"
    assert asked(core, job, {"part": "QX-9", "serial": "SN-1"})["proposed"] == "refuse"


def test_a_serial_number_that_came_back_on_another_makers_sensor_refuses_nothing(core):
    job = proven(core, serial="SN-1")
    clerk, foreign = Clerk(core), "HTTPS://NORTH.EXAMPLE/U/" + job.codes[15]
    first = clerk.ask(foreign, read={"part": "QX-9", "serial": "SN-1"}, host="yard.example")
    clerk.decide(first, "refuse", "wet inside")
    assert asked(core, job)["proposed"] == "accept"
    same = clerk.ask(job.codes[16], read={"part": "QX-9", "serial": "SN-1"})
    assert same["proposed"] == "refuse"


def test_a_serial_number_alone_does_not_say_of_which_makers_sensor_it_is(core):
    job = proven(core)
    job.force("part_noted", unit=NEW, part="QX-9", serial="SN-1")
    answer = asked(core, job, {"serial": "SN-1", "compared": "same"})
    assert (answer["proposed"], answer["against"]) == ("hold", ["serial"])
    assert "Read the part number off this one." in said(answer, "serial")
    read = {"part": "PS-1", "serial": "SN-1", "compared": "same"}
    assert asked(core, job, read)["proposed"] == "accept"
    assert asked(core, job, {**read, "part": "QX-9"})["proposed"] == "refuse"


@pytest.mark.parametrize(
    ("recorded", "read"),
    [
        ({"part": "PS-1", "serial": "SN-O1I"}, {"serial": "SN-01I"}),
        ({"part": "PS-1", "serial": "SN-O1I"}, {"serial": "sn o1l"}),
        ({"part": "PS-O1", "serial": "SN-1"}, {"part": "PS-01"}),
    ],
)
def test_a_sign_that_is_taken_for_another_refuses_nothing_and_is_looked_at(core, recorded, read):
    job = proven(core)
    job.force("part_noted", unit=BAD, **recorded)
    answer = asked(core, job, read)
    assert (answer["proposed"], answer["against"]) == ("hold", ["part"])
    assert "O and 0, or I and 1, are easily taken for each other." in said(answer, "part")
    assert asked(core, job, {**read, "compared": "same"})["proposed"] == "accept"
    assert asked(core, job, {**read, "compared": "other"})["proposed"] == "refuse"
    assert asked(core, job, recorded)["proposed"] == "accept"


@pytest.mark.parametrize("typed", ["SN-O1", "sn 0l", "SN-0I"])
def test_another_sensors_serial_number_typed_with_a_sign_that_looks_the_same_is_held(core, typed):
    """This one has none on record, so only a look at the pictures was asked for, and that accepted it."""
    job = proven(core)
    job.force("part_noted", unit=NEW, part="PS-1", serial="SN-01")
    for read in ({"serial": typed}, {"part": "PS-1", "serial": typed, "compared": "same"}):
        answer = asked(core, job, read)
        assert (answer["proposed"], "serial" in answer["against"]) == ("hold", True)
    assert "looks like the one of" in said(answer, "serial")
    assert asked(core, job, {"part": "QX-9", "serial": typed})["proposed"] == "refuse"
    other = {"part": "PS-1", "serial": "SN-O7", "compared": "same"}
    assert asked(core, job, other)["proposed"] == "accept"


@pytest.mark.parametrize("typed", ["SN\u201101", "ＳＮ－０１", "SN\xa001", "\ufeffSN 0\u200b1", "sn\u221201"])
def test_a_number_copied_with_signs_of_another_width_is_the_same_number(core, typed):
    """Its own was refused for a dash; another sensor's, where this one has none on record, was not seen."""
    job = proven(core, serial="SN-01")
    assert asked(core, job, {"part": "PS-1", "serial": typed})["proposed"] == "accept"
    job.force(
        "unit_added", unit="u0000000other", part="PS-1", serial="SN-02", code="", how="typed", place="stock"
    )
    theirs = typed.replace("1", "2").replace("１", "２")
    assert asked(core, job, {"part": "PS-1", "serial": theirs})["proposed"] == "refuse"


def test_one_part_does_not_come_back_twice_by_a_sign_that_looks_the_same(core):
    """It was accepted as SN-01; labelled anew, its record now says SN-O1."""
    job = proven(core, serial="SN-O1")
    assert asked(core, job, {"serial": "SN-O1"})["proposed"] == "accept"
    job.force("part_noted", unit=NEW, part="PS-1", serial="SN-01")
    assert asked(core, job, {"serial": "SN-O1"})["proposed"] == "accept", (
        "two sensors that are both on record"
    )
    clerk, foreign = Clerk(core), "HTTPS://NORTH.EXAMPLE/U/" + job.codes[15]
    first = clerk.ask(foreign, read={"part": "PS-1", "serial": "SN-01"}, host="yard.example")
    clerk.decide(first, "accept", "as agreed")
    answer = asked(core, job, {"serial": "SN-O1"})
    assert (answer["proposed"], answer["against"]) == ("hold", ["serial"])


def test_a_number_of_another_maker_that_looks_the_same_holds_nothing(core):
    job = proven(core)
    job.force("part_noted", unit=NEW, part="QX-9", serial="SN-01")
    read = {"part": "PS-1", "serial": "SN-O1", "compared": "same"}
    assert asked(core, job, read)["proposed"] == "accept"


@pytest.mark.parametrize("typed", ["n/a", "None", "?", "0000", "--", "xx"])
def test_what_is_typed_where_there_is_no_serial_number_proves_nothing_and_refuses_nothing(core, typed):
    """On two sensors it refused both; read at the counter as it stands on record, it accepted any part."""
    job = proven(core, serial=typed)
    job.force("part_noted", unit=NEW, part="PS-1", serial=typed)
    for read in (
        {},
        {"serial": typed},
        {"part": "PS-1", "serial": typed},
        {"part": "PS-1", "serial": "SN-7"},
    ):
        answer = asked(core, job, read)
        assert (answer["proposed"], answer["against"]) == ("hold", ["part"])
        assert not [key for key in answer["keys"] if key.startswith("serial ") and "SN7" not in key]
        assert asked(core, job, {**read, "compared": "same"})["proposed"] == "accept"


def test_a_serial_number_with_another_figure_is_refused_as_before(core):
    job = proven(core, serial="SN-O1I")
    assert asked(core, job, {"part": "PS-1", "serial": "SN-02I"})["proposed"] == "refuse"


@pytest.mark.parametrize("serial", ["PS-1", "ps 1"])
def test_the_part_number_given_as_the_serial_number_is_the_part_number(core, serial):
    job = proven(core, serial="SN-1")
    answer = asked(core, job, {"serial": serial})
    assert (answer["proposed"], answer["against"]) == ("hold", ["part"])
    assert answer["read"] == {"part": serial, "serial": "", "compared": ""}
    assert (answer["received"]["data"]["part"], answer["received"]["data"]["serial"]) == (serial, "")


def test_a_part_whose_serial_number_is_its_part_number_keeps_it(core):
    job = proven(core, serial="PS-1")
    assert asked(core, job, {"serial": "PS-1"})["proposed"] == "accept"


def test_the_label_of_the_spare_in_the_bag_of_the_suspect_is_refused(core):
    job = proven(core, serial="SN-1")
    spare = {"part": "PS-1", "serial": "", "code": job.codes[14], "how": "scanned", "place": "stock"}
    job.force("unit_added", unit="u0000000spare", **spare)
    answer = Clerk(core).ask(job.codes[14], read=OWN)
    assert (answer["proposed"], standing(answer, "serial")) == ("refuse", "fail")
    assert asked(core, job, {"part": "PS-1", "serial": "SP-7"})["proposed"] == "refuse"


def test_a_test_taken_back_after_the_handover_leaves_nothing_proven(core):
    job = proven(core, serial="SN-1")
    carried = [event for event in job.events if event["kind"] == "test_run"][1]
    job.force("corrected", device=carried["device"], seq=carried["seq"], reason="slip")
    answer = asked(core, job)
    assert (answer["proposed"], answer["against"]) == ("hold", ["verdict"])


def test_a_serial_number_put_right_after_the_handover_is_the_one_that_counts(core):
    job = proven(core, serial="SN-1")
    job.force("part_noted", unit=BAD, part="PS-1", serial="SN-2")
    assert asked(core, job)["proposed"] == "refuse"
    assert asked(core, job, {"part": "PS-1", "serial": "SN-2"})["proposed"] == "accept"


@pytest.mark.parametrize("position", [OUTER, INNER])
@pytest.mark.parametrize("count", [1, 3])
def test_a_fault_that_comes_after_the_handover_is_never_an_acceptance(core, position, count):
    """It opens the job again: what comes of it is not known yet, and refuses nothing either."""
    job = proven(core, serial="SN-1")
    last = [event["data"] for event in job.events if event["kind"] == "test_run"][-1]
    for _ in range(count):
        job.force("test_run", **{**last, "faulted": [position]})
    answer = asked(core, job)
    assert answer["proposed"] == "hold"
    assert "job" in answer["against"]


def test_a_proof_that_fails_after_the_handover_holds(core):
    job = proven(core, serial="SN-1")
    walk = [event["data"] for event in job.events if event["kind"] == "walk_checked"][-1]
    job.force("walk_checked", **{**walk, "missed": [INNER]})
    assert (asked(core, job)["proposed"], asked(core, job)["against"]) == ("hold", ["job"])


def test_what_is_held_here_and_was_accepted_elsewhere_meanwhile_is_refused(core):
    job = proven(core, serial="SN-1")
    clerk = Clerk(core)
    clerk.decide(clerk.ask(job.labels[BAD], read=OWN), "hold", "the foreman looks at it")
    waiting = core("waiting")[0]["unit"]
    found = {"asked": True, "found": [AT_NORTH]}
    assert clerk.ask(unit=waiting, register=found)["proposed"] == "refuse"
    begun = {"asked": True, "found": [{**AT_NORTH, "settled": False}]}
    assert clerk.ask(unit=waiting, register=begun)["proposed"] == "hold"
    assert clerk.ask(unit=waiting, register={"asked": False, "found": []})["proposed"] == "accept"


def test_another_serial_number_read_at_a_second_look_refuses(core):
    job = proven(core, serial="SN-1")
    clerk = Clerk(core)
    clerk.record(clerk.ask(job.labels[BAD], read=OWN)["received"])
    answer = clerk.ask(unit=core("waiting")[0]["unit"], read={"serial": "SN-2"})
    assert answer["proposed"] == "refuse"
