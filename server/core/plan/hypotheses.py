"""Questions to a list of hypotheses: explanations as (mask, weight), the rest of the weight unknown."""

from math import log

from ..infer.entropy import BITS
from ..infer.entropy import NOTHING
from ..infer.entropy import weighed


def acting(hypotheses: list, live: int) -> dict:
    """Return the weight of each set of live suspects that are present, by its mask."""
    sums = {}
    for mask, weight in hypotheses:
        present = mask & live
        sums[present] = sums.get(present, 0.0) + weight
    return sums


def weight_clear(hypotheses: list, live: int) -> float:
    """Return the weight of the hypotheses in which nothing live is present."""
    clear = 0.0
    for mask, weight in hypotheses:
        if mask & live == 0:
            clear = clear + weight
    return clear


def likeliest(hypotheses: list, most: int) -> list:
    """Return the hypotheses with the highest weights."""
    rows = sorted([(-weight, mask) for mask, weight in hypotheses])
    return [(mask, -less) for less, mask in rows[:most]]


def bits_open(hypotheses: list, total) -> float:
    """Return the entropy in bits; what is missing to `total` counts as one more hypothesis."""
    known = 0.0
    spread = 0.0
    for _, weight in hypotheses:
        known = known + weight
        if weight > NOTHING:
            spread = spread - weight * log(weight)
    if total is None:
        total = known
    else:
        spread = spread + weighed(total - known)
    return (spread - weighed(total)) / total * BITS
