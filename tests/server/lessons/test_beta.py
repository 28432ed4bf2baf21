"""Quantiles of the Beta distribution are those of SciPy."""

import pytest
from scipy.stats import beta

from server.lessons.beta import interval
from server.lessons.beta import quantile
from server.lessons.beta import share_below

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
        assert share_below(x, *shape) == pytest.approx(beta.cdf(x, *shape), abs=1e-11)


def test_bounds_of_counts_are_those_after_jeffreys_prior_and_reach_to_the_end():
    assert interval(3, 20) == pytest.approx(tuple(beta.ppf([0.05, 0.95], 3.5, 17.5)), abs=1e-9)
    assert interval(0, 20)[0] == 0.0
    assert interval(20, 20)[1] == 1.0
    assert interval(0, 0) == (0.0, 1.0)
