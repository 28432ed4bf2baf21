"""One sentence says how a conclusion holds against the rates that are assumed."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home
from tests.said import english

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def job(core):
    driver = Driver(core)
    driver.begin()
    return driver


def exchange(job):
    fitted = {OUTER: home(INNER), INNER: home(OUTER)}
    job.fact("move_started", move="exchange", fitted=fitted, position="", reason="")
    job.guided()


def told(job):
    return english(job.view()["reasoning"])


def test_a_verdict_says_how_far_off_the_rates_may_be(job):
    job.test(OUTER)
    exchange(job)
    job.test(INNER)
    assert told(job)["holds_words"] == (
        "Stands even if dirt, ice, paint or aim were 4 times as common as assumed."
    )


def test_a_verdict_names_the_dirt_that_it_cannot_speak_of_any_more(job):
    job.test(OUTER)
    assert told(job)["past_words"] == ""
    exchange(job)
    job.test(INNER)
    assert told(job)["past_words"] == "Dirt, ice, paint or aim at right outer"


def test_two_exchanged_that_fault_again_say_what_is_missing(job):
    job.test(OUTER, INNER)
    exchange(job)
    job.test(OUTER, INNER)
    found = told(job)
    assert found["verdict"] is None
    assert found["sentence"] == "Not settled yet."
    assert found["holds_words"] == (
        "Not yet: if wiring faults were 3 times as common, it would be only 86 % sure."
    )


def test_nothing_is_said_before_something_is_concluded(job):
    job.test(OUTER)
    assert told(job)["holds_words"] == ""
