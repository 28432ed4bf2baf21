"""What the tests say stands before the next moves are worked out.

What is known already depends on what was asked before, so each test has a core of its own, of one host.
"""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home
from tests.hosts import Core

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def job():
    driver = Driver(Core()).begin()
    driver.test(OUTER)
    return driver


def quick(job):
    return job.core("job", job=job.job, plan=False)


def test_a_step_that_hangs_on_the_moves_waits_for_them(job):
    view = quick(job)
    assert view["planned"] is False
    assert (view["step"]["id"], view["moves"]) == ("thinking", [])
    assert view["reasoning"]["sentence"] == "Not settled yet."

    assert job.core("plan", job=job.job) is True
    assert quick(job) == job.view()
    assert quick(job)["planned"] is True
    assert quick(job)["moves"]


def test_a_step_that_follows_from_the_verdict_stands_at_once(job):
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(INNER)
    view = quick(job)
    assert view["planned"] is False
    assert view["step"]["id"] == "replace"
    whole = job.view()
    for name in ("step", "stage", "reasoning", "board", "trail"):
        assert view[name] == whole[name]


def test_a_job_whose_checks_found_nothing_opens_on_a_phone_that_has_worked_out_nothing_yet(job):
    job.photograph()
    job.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    job.test(OUTER)
    while job.step()["form"] == "measure":
        job.choose([choice["reads"] for choice in job.step()["choices"]].index("good"))
    afresh = Core()
    afresh("reset", events=[{"event": event} for event in job.events])
    view = afresh("job", job=job.job, plan=False)
    assert (view["planned"], view["step"]["id"]) == (False, "wiring.stuck")
    assert view["step"]["choices"] == job.step()["choices"]


def test_before_the_first_test_there_is_nothing_to_work_out():
    driver = Driver(Core()).begin()
    assert quick(driver) == driver.view()
    assert quick(driver)["planned"] is True
