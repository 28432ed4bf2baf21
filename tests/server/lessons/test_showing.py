"""How often a fault shows: the maximum is SciPy's on the same likelihood, and what hid is not forgotten."""

from random import Random

import pytest
from scipy.optimize import minimize

from demo_db.yard import Truth
from server.core.facts.fold import Fold
from server.core.state.job import known_job
from server.lessons import contribution
from server.lessons import rates
from server.lessons.rates import DEFAULT
from server.lessons.rates import PRIOR
from server.lessons.said import explained
from server.lessons.showing import Base
from server.lessons.showing import log_posterior
from server.lessons.showing import maximum
from server.lessons.sums import readings_of
from tests.made_up_yard import Yard


def contributions(yard):
    by_job = {}
    for entry in yard.entries:
        by_job.setdefault(entry["event"]["job"], []).append(entry["event"])
    found = []
    for job, events in by_job.items():
        fold = Fold()
        fold.reset(events)
        found.append(contribution.of_job(known_job(fold.state, job)))
    return [each for each in found if not each["why"] and each["readings"]]


def said(jobs):
    return [(*explained(*readings_of(job)), 1.0) for job in jobs]


def random_jobs(seed, count=40):
    dice = Random(seed)
    jobs = []
    for _ in range(count):
        weights = [dice.random() ** 2 for _ in range(dice.randint(1, 4))]
        explained = [
            (weight / sum(weights), [(k, dice.randint(0, 3), dice.randint(0, 5)) for k in (0, 1, 2)])
            for weight in weights
        ]
        jobs.append((dice.choice([DEFAULT, Base(0.8, 0.01)]), explained, float(dice.randint(1, 3))))
    return jobs


@pytest.mark.parametrize("seed", range(4))
def test_the_maximum_is_that_of_scipys_optimizer_to_1e_6(seed):
    jobs = random_jobs(seed)

    ours = maximum(jobs, DEFAULT, PRIOR)
    theirs = minimize(
        lambda at: -log_posterior(Base(*at), jobs, DEFAULT, PRIOR),
        [0.8, 0.1],
        bounds=[(1e-6, 1 - 1e-6)] * 2,
        method="L-BFGS-B",
        options={"ftol": 1e-16, "gtol": 1e-9, "maxls": 60},
    )

    assert [each.value for each in ours] == pytest.approx(list(theirs.x), abs=1e-6)


def test_it_ends_at_the_same_rates_wherever_it_begins():
    jobs = random_jobs(9)

    from_default, from_elsewhere = (
        maximum(jobs, DEFAULT, PRIOR),
        maximum(jobs, DEFAULT, PRIOR, Base(0.5, 0.1)),
    )

    for one, other in zip(from_default, from_elsewhere, strict=True):
        assert one == pytest.approx(other, abs=1e-7)


def test_what_is_sure_is_counted_as_it_is():
    found = maximum([(DEFAULT, [(1.0, [(1, 60, 0), (1, 0, 40)])], 1.0)], Base(0.5, 1e-9), Base(1e-9, 1e-9))[0]

    assert found.value == pytest.approx(0.6, abs=1e-6)
    assert (found.hits, found.tries) == pytest.approx((60, 100))
    assert found.known == pytest.approx(1.0, abs=1e-6)


@pytest.mark.parametrize("truth", [0.86, 0.95, 0.98])
def test_a_fault_that_hides_is_found_as_often_as_it_hid(truth):
    jobs = [job for n in range(3) for job in contributions(Yard(f"hid {n} {truth}", 100, Truth(shows=truth)))]

    found = rates.learned(said(jobs), {})["shows"]

    assert found.hits / found.tries == pytest.approx(truth, abs=0.02)
    assert found.low < truth < found.high


def test_neither_the_first_test_nor_a_job_that_waited_for_a_fault_says_how_often_one_shows():
    yard = Yard("opened", 60, Truth(shows=0.6))
    tests = {}
    for entry in yard.entries:
        if entry["event"]["kind"] == "test_run":
            tests.setdefault(entry["event"]["job"], []).append(entry["event"]["data"]["faulted"])
    jobs = contributions(yard)

    assert [job["job"] for job in jobs] == [name for name in tests if tests[name][0] and len(tests[name]) > 1]
    for job in jobs:
        read = {sum(faulted + clean for _, faulted, clean in counts) for _, counts in job["readings"]}
        assert read == {(len(tests[job["job"]]) - 1) * len(job["positions"])}


def test_a_dozen_jobs_without_a_false_alarm_leave_more_than_half_of_its_default():
    """Twenty jobs weigh as much as the default: to a twentieth of it no dozen moves it."""
    twelve = [(DEFAULT, [(1.0, [[0, 0, 27]])], 12.0)]

    _, alarm = maximum(twelve, DEFAULT, PRIOR)

    assert DEFAULT.false_alarm / 2 < alarm.value < DEFAULT.false_alarm
