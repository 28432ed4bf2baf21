"""A small component: every subset of its causes, weighed one by one.

A component is a set of causes tied together by faulted readings, given the shared causes. Causes
are numbered from 0 within it; a subset is a bit mask. elimination.py answers the same questions
for a component that is too large for a table.
"""

from .ordering import in_order


class Table:
    """All subsets of one component with their probabilities, likeliest first."""

    def __init__(self, weights: list, factors: list, one):
        """Weigh the subsets; a factor is (causes, extra present, value per number present)."""
        size = len(weights)
        subsets = [one]
        for n, (absent, present) in enumerate(weights):
            subsets = [w * absent for w in subsets] + [w * present for w in subsets]
            # As early as its last cause is there: the lists are still short then.
            for causes, base, values in factors:
                if max(causes) == n:
                    subsets = _multiply(subsets, causes, base, values)
        self.size = size
        self._known = {}
        total = one * 0.0
        for weight in subsets:
            total = total + weight
        self.total = total
        self.entries = []
        if total == 0:
            return
        for mask in range(len(subsets)):
            share = subsets[mask] / total
            if share > 0.0:
                self.entries.append((-share, mask))
        self.entries = [(-less, mask) for less, mask in in_order(self.entries)]

    def marginals(self) -> list:
        """Return P(present) of each cause."""
        chances = [0.0] * self.size
        for share, mask in self.entries:
            for n in range(self.size):
                if mask >> n & 1:
                    chances[n] = chances[n] + share
        return chances

    def expect(self, scales: tuple) -> float:
        """Return the mean of the product of the scales of the causes that are present.

        `scales` holds (cause, scale). A scale of 0 asks for the chance of absence. Answers are
        kept: the outlook asks for the same ones over and over.
        """
        if scales in self._known:
            return self._known[scales]
        total = 0.0
        for share, mask in self.entries:
            for cause, scale in scales:
                if mask >> cause & 1:
                    share = share * scale
            total = total + share
        self._known[scales] = total
        return total

    def likeliest(self, least: float, most: int) -> list:
        """Return the (share, mask) of at least `least`, at most `most`, best first."""
        entries = []
        for entry in self.entries[:most]:
            if entry[0] < least:
                break
            entries.append(entry)
        return entries


def _multiply(subsets: list, causes: list, base: int, values: list) -> list:
    """Return the weights times the factor's value for the number of its causes present."""
    counts = [base] * len(subsets)
    for cause in causes:
        bit = 1 << cause
        for mask in range(len(subsets)):
            if mask & bit:
                counts[mask] += 1
    return [subsets[mask] * values[counts[mask]] for mask in range(len(subsets))]
