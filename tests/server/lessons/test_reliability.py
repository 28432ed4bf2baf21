"""The band that chance allows is that of the binomial distribution where all claims are alike."""

import pytest
from scipy.stats import binom

from server.lessons.reliability import band
from server.lessons.reliability import claims


@pytest.mark.parametrize(("count", "chance"), [(1, 0.5), (12, 0.95), (40, 0.8), (700, 0.97)])
def test_the_band_of_equal_claims_is_binomial(count, chance):
    low, high = band([chance] * count)

    assert low == binom.ppf(0.05, count, chance)
    assert high == count - binom.ppf(0.05, count, 1 - chance)


def claim(job, chance, right, proven=True):
    return {"job": job, "proven": proven, "claimed_ppb": int(chance * 1e9), "right": right}


def test_claims_stand_by_their_chance_and_only_what_was_proven_counts():
    found = claims([claim("a", 0.7, True), claim("b", 0.96, True), claim("c", 0.97, False),
                    claim("d", 0.97, False, proven=False), claim("e", 0.0, False)])  # fmt: skip

    assert [(each.start, each.number, each.right, each.jobs) for each in found] == [
        (0, 1, 1, ["a"]),
        (950, 2, 1, ["b", "c"]),
    ]
