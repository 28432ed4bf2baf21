"""Two phones on line, a third off line, random work: afterwards all three show the same screens.

A few short walks in the ordinary run; SWAPTRAIL_LONG=1 takes ten seeds of 500 steps.
"""

import pytest

from tests.long_runs import times
from tests.three_phones import Workshop

SEEDS, STEPS = times(3, 10), times(70, 500)


@pytest.mark.parametrize("seed", range(SEEDS))
def test_after_random_work_of_three_all_show_the_same(tmp_path, seed):
    workshop = Workshop(tmp_path, seed)
    workshop.work(STEPS)
    workshop.heal()

    first, *others = (workshop.screens(who) for who in range(3))
    assert len(first) > 4
    for other in others:
        assert sorted(other) == sorted(first)
        assert [name for name in first if other[name] != first[name]] == [], workshop.world["story"]


def test_the_third_really_works_off_line(tmp_path):
    """What is compared afterwards was not the same all along: the phones did differ on the way."""
    workshop = Workshop(tmp_path, 1)
    differed = 0
    for _ in range(20):
        workshop.work(2)
        differed += workshop.hands[2].phone.unsent() > 0
    assert differed > 5
