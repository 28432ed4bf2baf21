"""Which check comes next: the one with the least expected minutes until the fault is found.

To reach a place counts once: what can be checked where a hand already is, is cheap. Few checks that are left
are followed along both of their readings, all of them in every order, which is exact. Of more the likeliest
few are, fewer the deeper, by a rule that looks one check ahead: how much surer the segment gets, a minute.
`tests/core/test_harness.py` holds it to 2 % of the best way in each circuit of up to seven segments.
"""

from .chain import NAMED
from .chain import Chain

# So many checks that are left are followed in every order.
_ALL = 7
# How many of more are followed at each depth, the last for all below; what is less likely than this is not.
_FOLLOWED, _RARE = (4, 3, 2, 1), 0.005


def best(chain: Chain, weights: list, unmade: list, opened: tuple, reach: dict) -> int | None:
    """Return the index of the check to make next of those `unmade`, by index; None where none is worth it.

    One that is not worth it now can be after the next readings. `opened` are the places that a hand has
    reached, `reach` is place -> minutes until one is there.
    """
    # Of many, those that are not worth it now are left out: they would take the place of others.
    followed = unmade if len(unmade) <= _ALL else chain.worthwhile(weights, unmade)
    search = _Search(chain, reach, weights, len(followed) <= _ALL)
    chosen = search.cheapest(weights, followed, opened, (), 0)
    return chosen[1] if chosen else None


def minutes(chain: Chain, n: int, opened: tuple, reach: dict) -> float:
    """Return what a check takes, with the way to places that nobody has reached."""
    total = chain.probes[n].minutes
    for place in chain.probes[n].places:
        if place not in opened:
            total += reach[place]
    return total


class _Search:
    """One look ahead; what it finds after the same readings is kept, in whatever order they came."""

    def __init__(self, chain: Chain, reach: dict, weights: list, every: bool):
        """Look ahead from weights, along every check or along the likeliest."""
        self.chain = chain
        self.reach = reach
        self.whole = _sum(weights)
        self.every = every
        self.kept: dict = {}

    def cheapest(self, weights: list, unmade: list, opened: tuple, read: tuple, depth: int) -> tuple | None:
        """Return (expected minutes to the end, index) of the check to make; None where none is left.

        `read` is what was read on the way here, each check by its index or, where it read bad, by that less
        than nothing, in order.
        """
        if read in self.kept:
            return self.kept[read]
        found, before = [], _sum(weights)
        for n in self._followed(weights, self.chain.worthwhile(weights, unmade), opened, depth):
            total = minutes(self.chain, n, opened, self.reach)
            rest = [m for m in unmade if m != n]
            reached = opened + self.chain.probes[n].places
            for bad in (False, True):
                after = self.chain.after(weights, n, bad)
                share = _sum(after)
                if self._ends(after, share):
                    continue
                now = tuple(sorted(read + (-1 - n if bad else n,)))
                then = self.cheapest(after, rest, reached, now, depth + 1)
                if then:
                    total += share / before * then[0]
            found.append((total, n))
        self.kept[read] = min(found) if found else None
        return self.kept[read]

    def _followed(self, weights, left, opened, depth: int) -> list[int]:
        if self.every:
            return left
        return _ranked(self.chain, weights, left, opened, self.reach)[
            : _FOLLOWED[min(depth, len(_FOLLOWED) - 1)]
        ]

    def _ends(self, weights: list, share: float) -> bool:
        """Tell whether nothing more is looked at: it is too rare, or a segment is named."""
        if share < _RARE * self.whole and not self.every:
            return True
        return max(self.chain.chances(weights)) >= NAMED


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
