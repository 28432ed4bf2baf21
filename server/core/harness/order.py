"""Which check comes next: the one with the least expected minutes until the fault is found.

To reach a place counts once: what can be checked where a hand already is, is cheap. The likeliest few checks
are followed along both of their readings, fewer the deeper, the last by a rule that looks one check ahead:
how much surer the segment gets, a minute. `tests/core/test_harness.py` holds it to 2 % of the best way on
average, and to 15 % of it in each circuit.
"""

from .chain import NAMED
from .chain import Chain

# How many checks are followed at each depth, the last for all below; what is less likely than this is not.
_FOLLOWED, _RARE = (4, 3, 2, 1), 0.005


def best(chain: Chain, weights: list, left: list, opened: tuple, reach: dict) -> int | None:
    """Return the index of the check to make next of those that are `left`, by index; None where none is.

    `opened` are the places that a hand has reached, `reach` is place -> minutes until one is there.
    """
    chosen = _cheapest(chain, weights, left, opened, reach, 1.0, 0)
    return chosen[1] if chosen else None


def minutes(chain: Chain, n: int, opened: tuple, reach: dict) -> float:
    """Return what a check takes, with the way to places that nobody has reached."""
    total = chain.probes[n].minutes
    for place in chain.probes[n].places:
        if place not in opened:
            total += reach[place]
    return total


def _cheapest(chain: Chain, weights, left, opened, reach, chance: float, depth: int):
    """Return (expected minutes to the end, index) of the check to make; None where none is left."""
    followed = _FOLLOWED[min(depth, len(_FOLLOWED) - 1)]
    found = []
    for n in _ranked(chain, weights, left, opened, reach)[:followed]:
        total = minutes(chain, n, opened, reach)
        rest = [m for m in left if m != n]
        reached = opened + chain.probes[n].places
        before = _sum(weights)
        for bad in (False, True):
            after = chain.after(weights, n, bad)
            share = _sum(after) / before
            if chance * share < _RARE or max(chain.chances(after)) >= NAMED:
                continue
            useful = chain.worthwhile(after, rest)
            then = _cheapest(chain, after, useful, reached, reach, chance * share, depth + 1)
            if then:
                total += share * then[0]
        found.append((total, n))
    return min(found) if found else None


def _ranked(chain: Chain, weights, left, opened, reach) -> list[int]:
    """Return checks by how much surer the segment gets, a minute: by the mean square of its chance."""
    base = 0.0
    for chance in chain.chances(weights):
        base += chance * chance
    whole, rated = _sum(weights), []
    for n in left:
        sure = 0.0
        for bad in (False, True):
            after = chain.after(weights, n, bad)
            share = _sum(after) / whole
            for chance in chain.chances(after):
                sure += share * chance * chance
        rated.append(((base - sure) / minutes(chain, n, opened, reach), n))
    return [n for _, n in sorted(rated)]


def _sum(weights: list) -> float:
    total = 0.0
    for weight in weights:
        total += weight
    return total
