"""The list of jobs: each row says how the job stands and what comes next, without the reasoning."""

import pytest

from tests.core.driver import Driver

OUTER = "rear-right-outer"


@pytest.fixture
def job(core):
    return Driver(core).begin()


def row(job):
    return next(row for row in job.core("jobs") if row["id"] == job.job)


def said(job):
    return row(job)["standing_words"], row(job)["next_words"]


def test_a_new_job_says_its_first_step(core):
    job = Driver(core).open()
    assert said(job) == ("Not tested yet", job.step()["title"])


def test_each_stage_says_how_it_stands_and_its_step(job):
    assert said(job) == ("Not tested yet", "Run the self-test")
    job.test(OUTER)
    assert said(job) == ("Fault at right outer", "Find the cause")
    job.fact("move_started", move="clean", fitted={}, position=OUTER, reason="")
    assert said(job) == ("Cleaning under way", job.step()["title"])
    job.tap()
    job.test()
    assert said(job) == ("Last test: no fault", "Prove it and close")
    job.take("pause", "part", part="PS-1")
    assert said(job) == ("Waiting for a part", "To order: PS-1.")
    assert row(job)["paused"]


def test_the_small_board_has_the_marks_of_the_last_test(job):
    job.test(OUTER)
    board = row(job)["board"]
    assert board["kind"] == "rear"
    assert {each["id"]: each["mark"] for each in board["positions"]}[OUTER] == "fault"
    assert [each["mark"] for each in board["positions"]].count("clean") == 3


def test_a_closed_job_has_its_line_alone(job):
    job.take("close", "customer")
    assert (row(job)["board"], *said(job)) == (None, "", "")
