"""Times of work: the pauses among them are cut by Tukey's fence, and by an hour where there are few."""

import pytest

from server.lessons import minutes

MINUTE = 60_000


def test_the_middle_and_the_quartiles_are_those_of_the_times():
    found = minutes.spread([each * MINUTE for each in (1, 2, 3, 4, 5)])

    assert (found.low, found.median, found.high) == (2, 3, 4)
    assert (found.number, found.cut) == (5, 0)


@pytest.mark.parametrize("pause", [12, 45, 600])
def test_a_pause_among_many_times_is_cut(pause):
    times = [int(MINUTE * (1 + n / 10)) for n in range(10)]

    found = minutes.spread([*times, pause * MINUTE])

    assert found.cut == 1
    assert found == minutes.spread(times)._replace(cut=1)


def test_of_few_times_only_what_is_longer_than_an_hour_is_a_pause():
    found = minutes.spread([MINUTE, 12 * MINUTE, 61 * MINUTE])

    assert (found.number, found.cut) == (2, 1)
    assert minutes.spread([61 * MINUTE]) is None


def test_times_that_are_all_alike_are_all_kept():
    assert minutes.spread([MINUTE] * 20).number == 20
