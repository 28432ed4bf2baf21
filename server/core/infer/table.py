"""A small component: every subset of its causes, weighed one by one.

A component is a set of causes tied together by readings, given the shared causes. Causes
are numbered from 0 within it; a subset is a bit mask. elimination.py answers the same questions
for a component that is too large for a table.
"""

from .ordering import in_order


class Table:
    """All subsets of one component with their probabilities, likeliest first."""

    def __init__(self, weights: list, factors: list, one):
        """Weigh the subsets; a factor is (causes, a value for each state of them)."""
        size = len(weights)
        subsets = [one]
        for n, (absent, present) in enumerate(weights):
            subsets = [w * absent for w in subsets] + [w * present for w in subsets]
            # As early as its last cause is there: the lists are still short then.
            for causes, values in factors:
                if max(causes) == n:
                    subsets = _multiply(subsets, causes, values)
        self.size = size
        self._known = {}
        self._entries: list | None = None
        total = one * 0.0
        for weight in subsets:
            total = total + weight
        self.total = total
        # The share of each subset, by its mask.
        self.shares = [] if total == 0 else [weight / total for weight in subsets]

    @property
    def entries(self) -> list:
        """The (share, mask) of every subset that is possible, likeliest first."""
        if self._entries is None:
            rows = [(-share, mask) for mask, share in enumerate(self.shares) if share > 0.0]
            self._entries = [(-less, mask) for less, mask in in_order(rows)]
        return self._entries

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

    def chance(self, present: int, absent: int, counted: int, factor: float) -> float:
        """Return the mean of factor ** (how many of `counted` are present), as far as an event is true.

        It is true where all of `present` are and none of `absent` is; all three are bit masks. What is
        summed for one factor serves every other.
        """
        key = (present, absent, counted)
        if key not in self._known:
            self._known[key] = self._by_count(present, absent, counted)
        coefficients = self._known[key]
        result = 0.0
        for n in range(len(coefficients) - 1, -1, -1):
            result = result * factor + coefficients[n]
        return result

    def _by_count(self, present: int, absent: int, counted: int) -> list:
        """Return the share of the subsets with 0, 1, ... of `counted`."""
        masks = [0]
        counts = [0]
        for n in range(self.size):
            bit = 1 << n
            more = 1 if counted & bit else 0
            if present & bit:
                masks = [mask | bit for mask in masks]
                counts = [count + more for count in counts] if more else counts
            elif not absent & bit:
                masks = masks + [mask | bit for mask in masks]
                counts = counts + ([count + more for count in counts] if more else counts)
        shares = self.shares
        result = [0.0] * (max(counts) + 1)
        for n, mask in enumerate(masks):
            result[counts[n]] += shares[mask]
        return result

    def likeliest(self, least: float, most: int) -> list:
        """Return the (share, mask) of at least `least`, at most `most`, best first."""
        entries = []
        for entry in self.entries[:most]:
            if entry[0] < least:
                break
            entries.append(entry)
        return entries


def _multiply(subsets: list, causes: list, values: list) -> list:
    """Return the weights times the factor's value for the state of its causes."""
    states = [0] * len(subsets)
    for n, cause in enumerate(causes):
        bit = 1 << cause
        step = 1 << n
        for mask in range(len(subsets)):
            if mask & bit:
                states[mask] += step
    return [subsets[mask] * values[states[mask]] for mask in range(len(subsets))]
