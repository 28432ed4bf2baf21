"""The band that chance allows is that of the binomial distribution where all claims are alike."""

import pytest
from scipy.stats import binom

from server.lessons.reliability import BANDS
from server.lessons.reliability import Claims
from server.lessons.reliability import band_of


def claims(chances):
    found = Claims()
    for number, chance in enumerate(chances):
        found.add(f"j{number:04}", chance, True)
    return found


@pytest.mark.parametrize(("count", "chance"), [(1, 0.5), (12, 0.95), (40, 0.8), (700, 0.97)])
def test_the_band_of_equal_claims_is_binomial(count, chance):
    low, high = claims([chance] * count).band()

    assert low == binom.ppf(0.05, count, chance)
    assert high == count - binom.ppf(0.05, count, 1 - chance)


def test_a_claim_that_is_taken_out_leaves_the_band_of_the_others():
    found = claims([0.9] * 30 + [0.5])

    found.remove("j0030")

    assert found.band() == claims([0.9] * 30).band()
    assert len(found.right) == 30


def claim(chance, proven=True):
    return {"proven": proven, "claimed_ppb": int(chance * 1e9)}


def test_claims_stand_by_their_chance_and_only_what_was_proven_counts():
    assert BANDS[:3] == (0, 800, 950)
    assert [band_of(claim(chance)) for chance in (0.7, 0.96, 0.97, 1.0)] == [0, 2, 2, 3]
    assert band_of(claim(0.97, proven=False)) is None
    assert band_of(claim(0.0)) is None
