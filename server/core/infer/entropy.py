"""Shannon's measure of doubt: how many yes-or-no questions an answer is worth."""

import math

# Natural logarithms are what both hosts have; this turns them into bits.
BITS = 1.4426950408889634
NOTHING = 1e-12


def weighed(share: float) -> float:
    """Return -x ln x, which is nothing for nothing."""
    return -share * math.log(share) if share > NOTHING else 0.0


def bits(shares: list) -> float:
    """Return the entropy of shares that add up to one; it only ranks, or is rounded before it is shown."""
    nats = 0.0
    for share in shares:
        nats = nats + weighed(share)
    return nats * BITS
