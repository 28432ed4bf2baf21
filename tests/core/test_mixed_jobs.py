"""Mix-ups done as the app leads: wherever the fault goes, each of them settles."""

import pytest
from hypothesis import assume
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from tests.core.driver import home
from tests.core.mixed_jobs import MixedJob
from tests.long_runs import times

PLACES = ("rear-right-outer", "rear-right-inner")
ALL = (*PLACES, "rear-left-outer", "rear-left-inner")


@pytest.mark.parametrize("bad", ["circuit", "gone", 0, 1])
def test_the_seen_case_ends(bad):
    """Two pulled and mixed up, fresh labels, fitted, right outer again: it went on for ever."""
    job = MixedJob(PLACES, PLACES[0], bad)
    assert job.settles() <= 3
    assert "mixed.fit" in job.steps


@st.composite
def mixups(draw):
    """Some sensors pulled and mixed up, some labels lost, a fault at any position, and what is wrong."""
    mixed = draw(st.permutations(ALL))[: draw(st.integers(2, len(ALL)))]
    faulted = draw(st.sampled_from(ALL))
    units = range(len(mixed)) if faulted in mixed else [home(faulted)]
    bad = draw(st.sampled_from([*units, "circuit", "gone"]))
    return mixed, faulted, bad, draw(st.integers(0, len(mixed) - 1))


@settings(max_examples=times(20, 300))
@given(mixups())
def test_every_mix_up_settles_as_the_app_leads_and_on_what_is_wrong(mixup):
    """Where the fault goes is what the truth makes of each place that the app has the sensors put in."""
    job = MixedJob(*mixup)
    assume(job.may_be())
    assert job.settles() <= 3
    told = job.job.view()["reasoning"]
    live = (
        [f"circuit:{job.faulted}"] if job.bad == "circuit" else [f"unit:{job.unit()}"] if job.faults() else []
    )
    assert [each["cause"] for each in told["verdict"] or []] in (live, [f"unit:{job.unit()}"])
    assert told["verdict"] or not live


@settings(max_examples=10)
@given(mixups(), st.dictionaries(st.integers(0, 8), st.integers(0, 3), min_size=1, max_size=2))
def test_a_mix_up_settles_though_labels_are_torn_off_meanwhile(mixup, torn):
    """In the hand or on the car: no step that is offered is refused."""
    job = MixedJob(*mixup, torn=torn)
    assume(job.may_be())
    assert job.settles() <= 5


def test_a_sensor_whose_place_another_has_taken_may_come_into_the_empty_one():
    """Its label was on, those of the others were not: a new sensor was asked for, this one in hand."""
    job = MixedJob(ALL, ALL[0], 0, labels=1)
    job.settles()
    assert "fill" in job.steps
    assert job.steps[job.steps.index("fill") + 1] == "fit"
    assert not job.job.view()["out"]
