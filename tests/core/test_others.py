"""What a phone says of its step to others at the job, and what they are told of it."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def job(core):
    return Driver(core).begin()


def told(job, *people):
    return job.core("others", job=job.job, people=list(people))


def ben(doing, *positions):
    return {"name": "Ben", "doing": doing, "positions": list(positions)}


def heard_of(job):
    """Say what others are told of the step that is on the screen."""
    doing = job.view()["doing"]
    return told(job, ben(doing["what"], *doing["positions"]))


def test_a_new_job_is_looked_over(core):
    assert heard_of(Driver(core).open()) == "Ben is looking it over."


def test_each_stage_is_told(job):
    assert heard_of(job) == "Ben is running the self-test."
    job.test(OUTER)
    assert heard_of(job) == "Ben is taking pictures."
    job.photograph()
    assert heard_of(job) == "Ben is choosing what comes next."


def test_who_exchanges_is_told_with_the_position_of_the_hand(job):
    job.test(OUTER)
    job.photograph()
    job.start_exchange()
    assert job.step()["id"] == "pull"
    at = job.step()["expects"]["position"]
    assert job.view()["doing"] == {"what": "exchange", "positions": [at]}
    assert heard_of(job) in ("Ben is exchanging right outer.", "Ben is exchanging right inner.")


def test_putting_back_is_told(job):
    job.test(OUTER)
    job.photograph()
    job.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    job.fact("unit_labelled", unit=home(OUTER), code=job.codes[9], how="scanned")
    assert heard_of(job) == "Ben is putting back right outer."


@pytest.mark.parametrize(
    ("person", "line"),
    [
        (ben("test"), "Ben is running the self-test."),
        (ben("exchange", OUTER, INNER), "Ben is exchanging right inner and right outer."),
        (ben("exchange", "elsewhere"), "Ben is exchanging sensors."),
        (ben("of_a_later_version"), "Ben has this job open."),
        (ben("of_a_later_version", OUTER), "Ben is at right outer."),
        (ben(""), "Ben has this job open."),
    ],
)
def test_what_is_not_known_here_is_left_out(job, person, line):
    assert told(job, person) == line


def test_nobody_is_nothing_and_many_are_one_line(job):
    ana, eva, leo = ({"name": name, "doing": "test", "positions": []} for name in ("Ana", "Eva", "Leo"))
    assert told(job) == ""
    assert told(job, ana, eva) == "Ana is running the self-test. Eva is on it too."
    assert told(job, ana, eva, leo) == "Ana is running the self-test. 2 more are on it."
