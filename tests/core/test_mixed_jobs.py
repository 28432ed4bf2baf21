"""Mix-ups done as the app leads: wherever the fault goes, each of them settles."""

import pytest

from tests.core.mixed_jobs import MixedJob

PLACES = ("rear-right-outer", "rear-right-inner")


@pytest.mark.parametrize("bad", ["circuit", "gone", 0, 1])
def test_the_seen_case_ends(bad):
    """Two pulled and mixed up, fresh labels, fitted, right outer again: it went on for ever."""
    job = MixedJob(PLACES, PLACES[0], bad)
    assert job.settles() <= 3
    assert "mixed.fit" in job.steps
