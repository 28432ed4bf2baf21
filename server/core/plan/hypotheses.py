"""Questions to a list of worlds: explanations as (mask, weight), the rest of the weight unknown."""

from ..infer.entropy import BITS
from ..infer.entropy import weighed


def acting(worlds: list, live: int) -> dict:
    """Return the weight of each set of live suspects that are present, by its mask."""
    sums = {}
    for mask, weight in worlds:
        present = mask & live
        sums[present] = sums.get(present, 0.0) + weight
    return sums


def live_fault(worlds: list, live: int):
    """Return the likeliest set of live suspects present as (mask, weight)."""
    sums = acting(worlds, live)
    best = (0, 0.0)
    for present in sorted(sums):
        if sums[present] > best[1]:
            best = (present, sums[present])
    return best


def weight_clear(worlds: list, live: int) -> float:
    """Return the weight of the worlds in which nothing live is present."""
    found = 0.0
    for mask, weight in worlds:
        if mask & live == 0:
            found = found + weight
    return found


def likeliest(worlds: list, most: int) -> list:
    """Return the worlds with the highest weights."""
    rows = sorted([(-weight, mask) for mask, weight in worlds])
    return [(mask, -less) for less, mask in rows[:most]]


def bits_open(worlds: list, total) -> float:
    """Return the entropy in bits; what is missing to `total` counts as one more world."""
    known = 0.0
    spread = 0.0
    for _, weight in worlds:
        known = known + weight
        spread = spread + weighed(weight)
    if total is None:
        total = known
    else:
        spread = spread + weighed(total - known)
    return (spread - weighed(total)) / total * BITS
