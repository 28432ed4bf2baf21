"""Quantiles of the Beta distribution are those of SciPy."""

import pytest
from scipy.stats import beta
from scipy.stats import binom
from scipy.stats import poisson

from server.lessons import beta as own
from server.lessons.beta import interval
from server.lessons.beta import quantile

SHAPES = [
    (0.5, 0.5),
    (0.5, 1000.5),
    (0.04, 19.96),
    (1, 1),
    (2.5, 7.5),
    (43.5, 6.5),
    (900.5, 101.5),
    (12_000, 37),
]


@pytest.mark.parametrize("shape", SHAPES, ids=str)
@pytest.mark.parametrize("share", [0.001, 0.05, 0.5, 0.95, 0.999])
def test_a_quantile_is_that_of_scipy_to_1e_9(shape, share):
    assert quantile(share, *shape) == pytest.approx(beta.ppf(share, *shape), rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("shape", SHAPES, ids=str)
def test_a_share_is_that_of_scipy(shape):
    for x in (0.0, 1e-6, 0.01, 0.3, 0.77, 0.999, 1.0):
        assert own._below(x, *shape)[0] == pytest.approx(beta.cdf(x, *shape), abs=1e-11)


def test_bounds_of_many_hits_are_the_middle_after_jeffreys_prior_and_reach_to_the_end():
    assert interval(9, 40) == pytest.approx(tuple(beta.ppf([0.05, 0.95], 9.5, 31.5)), abs=1e-9)
    assert interval(0, 20)[0] == 0.0
    assert interval(20, 20)[1] == 1.0
    assert interval(0, 0) == (0.0, 1.0)


def test_what_is_missed_is_bounded_as_what_is_hit():
    for hits, tries in ((0, 30), (1.7, 30), (4, 30), (12, 30), (2, 5)):
        low, high = interval(hits, tries)

        assert interval(tries - hits, tries) == pytest.approx((1.0 - high, 1.0 - low), abs=1e-9)


def likeliest_counts(mean):
    """The likeliest counts that come as near to nine in ten as counts do: half of the next is too much."""
    chances = poisson.pmf(range(60), mean)
    inside, found = 0.0, set()
    for count in sorted(range(60), key=lambda each: -chances[each]):
        if inside + chances[count] / 2 > 0.9:
            break
        inside += chances[count]
        found.add(count)
    return found


@pytest.mark.parametrize("hits", range(5))
def test_bounds_of_few_hits_are_those_of_sterne_with_half_of_the_count(hits):
    tries = 1_000_000
    low, high = (each * tries for each in interval(hits, tries))

    assert hits == 0 or hits not in likeliest_counts(low * 0.98)
    assert hits == 0 or hits in likeliest_counts(low * 1.02)
    assert hits in likeliest_counts(high * 0.98)
    assert hits not in likeliest_counts(high * 1.02)


@pytest.mark.parametrize("tries", [50, 200])
def test_bounds_hold_a_truth_as_often_as_whole_hits_allow(tries):
    bounds = [interval(hits, tries) for hits in range(tries + 1)]
    for expected in [1 + n / 8 for n in range(120)]:
        chance = expected / tries
        hits_chances = binom.pmf(range(tries + 1), tries, chance)

        covered = sum(
            share for share, (low, high) in zip(hits_chances, bounds, strict=True) if low <= chance <= high
        )

        assert 0.845 < covered < 0.96
