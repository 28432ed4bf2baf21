"""Of a label that suffered, what can still be read brings up the sensor: at hand first, never past a stop."""

import pytest

from server.core.codes import labels
from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def job(core):
    """Two sensors in hand, and the next step wants one of them fitted."""
    job = Driver(core).faulted()
    job.start_exchange(OUTER, INNER)
    while job.step()["expects"].get("do") != "fit":
        job.scan_wanted()
    return job


def near(core, text, job=""):
    return core("near_labels", text=text, job=job)


def codes(found):
    return [line["code"] for line in found["labels"]]


def test_two_characters_bring_up_the_ones_in_hand(core, job):
    for code in job.labels.values():
        for typed in (code[:2], code[2:4].lower(), code[1] + "-" + code[3]):
            found = near(core, typed, job.job)
            assert code in codes(found)
    (line,) = [each for each in near(core, code[:2], job.job)["labels"] if each["code"] == code]
    assert line["shown"] == labels.shown(code)
    assert line["where"]


def test_those_in_hand_come_before_all_others_and_no_more_are_shown_than_can_be_compared(core, job):
    in_hand = sorted(job.labels.values())
    for number in range(4):
        job.fact(
            "unit_added",
            unit=f"u0000000000a{number}",
            part="PS-1",
            serial="",
            code=[code for code in job.codes if code not in in_hand][number],
            how="scanned",
            place="stock",
        )
    shared = [first + second for first in labels.ALPHABET for second in labels.ALPHABET]
    seen = 0
    for typed in shared:
        found = near(core, typed, job.job)
        at_hand = [code in in_hand for code in codes(found)]
        assert at_hand == sorted(at_hand, reverse=True)
        assert len(at_hand) <= 6
        seen += len(at_hand)
    assert seen > 20


@pytest.mark.parametrize("text", ["", "A", "-", "!!", "ABCDE", "no label at all"])
def test_nothing_is_offered_for_less_than_two_characters_for_a_whole_code_or_for_another_text(
    core, job, text
):
    assert near(core, text, job.job) == {"labels": [], "more": 0}


def test_the_wrong_one_is_offered_too_and_stops_as_if_it_was_scanned(core, job):
    wanted = job.step()["expects"]["unit"]
    wrong = job.labels[home(INNER) if wanted == home(OUTER) else home(OUTER)]
    assert wrong in codes(near(core, wrong[:2], job.job))
    scanned = core("scan", job=job.job, text=wrong, how="scanned")
    typed = core("scan", job=job.job, text=wrong, how="typed")
    assert (typed["outcome"], typed["title"]) == ("stop", scanned["title"])
    assert [event["data"]["how"] for event in typed["events"]] == ["typed"]


def test_a_label_out_of_use_is_offered_because_it_has_to_stop(core, job):
    unit = home(OUTER)
    old = job.labels[unit]
    job.fact("label_voided", unit=unit, code=old, reason="torn")
    assert old in codes(near(core, old[:2], job.job))
    assert core("scan", job=job.job, text=old, how="typed")["outcome"] == "stop"
