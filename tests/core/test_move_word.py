"""What the guided steps of a move are counted as: an exchange only where sensors change places."""

import pytest

from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.scenarios import INNER
from tests.core.scenarios import OUTER
from tests.core.scenarios import single
from tests.core.scenarios import spare_at_hand


@pytest.fixture
def job(core):
    return Driver(core)


def counted_as(job, **fitted):
    """Return the word that stands over the first step of a move."""
    job.fact("move_started", move="exchange", fitted=fitted, position="", reason="to see")
    return job.step()["progress"]["word"]


def test_a_spare_that_comes_in_is_fitted(job):
    spare_at_hand(job)
    assert counted_as(job, **{OUTER: "u0000000spare"}) == "Fit"
    assert job.step()["heading"] == "Fit at right outer"


def test_two_that_change_places_are_exchanged(job):
    single(job)
    assert counted_as(job, **{OUTER: home(INNER), INNER: home(OUTER)}) == "Exchange"
    assert job.step()["heading"] == "Exchange right inner and right outer"
