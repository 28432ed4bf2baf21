"""Tests that say the same again: what comes next is something else, or an end."""

import pytest

from tests.core.driver import Driver

PLACES = ("rear-left-outer", "rear-left-inner", "rear-right-inner")


def test_a_test_that_said_the_same_twice_is_not_the_best_move(core):
    job = Driver(core).open(first=3)
    job.tap()
    job.tap()
    for _ in range(2):
        job.test(*PLACES)
        job.photograph()
    assert job.step()["id"] == "wiring.several"
    moves = [move["move"] for move in job.view()["moves"]]
    assert moves[0] != "retest" or set(moves) == {"retest"}


def test_a_shared_cause_that_was_repaired_is_not_asked_for_again(core):
    job = Driver(core).begin()
    job.test(*PLACES, "rear-right-outer")
    assert job.step()["id"] == "wiring.several"
    job.choose(0)
    job.test("rear-left-inner")
    assert job.step()["id"] != "wiring.several"


def test_of_the_shared_causes_one_that_was_not_repaired_yet_comes_first(core):
    job = Driver(core).begin()
    job.test(*PLACES, "rear-right-outer")
    first = job.step()["choices"][0]["events"][0]["data"]["cause"]
    for _ in range(2):
        job.fact("circuit_repaired", cause=first, what="repaired")
        job.test(*PLACES, "rear-right-outer")
    assert job.step()["id"] == "wiring.several"
    assert job.step()["choices"][0]["events"][0]["data"]["cause"] != first


def test_a_control_unit_that_was_repaired_is_tested_once_more_not_asked_for_again(core):
    job = Driver(core).begin(layout="both-12")
    job.test(*[each["id"] for each in job.view()["board"]["positions"]])
    assert job.step()["id"] == "wiring.shared"
    job.tap()
    job.test()
    # Twelve suspects are left, so that one clean test is not enough; no hand comes to any for another.
    assert job.step()["title"] == "Run the self-test again"
    job.tap()
    job.test()
    assert job.step()["id"] == "walk"


@pytest.mark.parametrize(("tests", "step"), [(4, "test.again"), (5, "nothing.enough")])
def test_enough_clean_tests_of_a_fault_that_never_showed_lead_to_the_close(core, tests, step):
    job = Driver(core).begin()
    job.test()
    job.tap()  # it comes and goes
    for _ in range(tests - 1):
        job.test()
    assert job.step()["id"] == step


def test_after_enough_clean_tests_one_more_may_be_made_or_the_job_closed(core):
    job = Driver(core).begin()
    job.test()
    job.tap()
    for _ in range(4):
        job.test()
    assert job.step()["title"] == "No fault in 5 tests"
    job.tap("second")
    assert job.step()["form"] == "test"
    job.test()
    job.tap()
    assert job.view()["closed"]


def test_a_fault_that_went_by_itself_may_be_said_to_come_and_go(core):
    job = Driver(core).faulted()

    def offered():
        return [each["words"] for each in job.step()["also"]]

    again = {"move": "retest", "fitted": {}, "position": "", "reason": ""}
    assert offered() == []
    job.fact("move_started", **again)
    job.test()
    assert offered() == ["It comes and goes"]
    job.record(*job.step()["also"][0]["events"])
    assert job.view()["comes_and_goes"]
    assert offered() == []


def test_a_fault_that_was_handled_before_it_went_is_not_said_to_come_and_go(core):
    job = Driver(core).faulted()
    job.start_exchange()
    job.guided()
    job.test()
    assert job.step()["form"] == "moves"
    assert job.step()["also"] == []
