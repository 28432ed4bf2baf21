"""A component too large for a table: its causes are summed out one after the other, exactly.

Eliminating a cause multiplies the factors that mention it and keeps the table of the others. The
work grows with the widest table, not with the number of causes; nothing is ever left out. Each
bucket is kept, because read backwards it gives the chance of a cause given those after it, which
is what lists the likeliest subsets.
"""

from collections import namedtuple

from .ordering import in_order

# How many times more than asked for are looked at before the threshold is raised.
_SPARE = 4
_HALVINGS = 12

# What was multiplied when a cause was eliminated: the weights of absent and of present for each
# state of the causes in its scope, all of which are eliminated later.
Bucket = namedtuple("Bucket", ("cause", "scope", "absent", "present"))


class Eliminated:
    """One large component, answering what Table answers."""

    def __init__(self, weights: list, factors: list, one):
        self.size = len(weights)
        self.one = one
        self.weights = weights
        self._known = {}
        self.tables = factors
        self.order = _order(self.size, [scope for scope, _ in self.tables])
        self.buckets, self.total = self._run(weights)

    def marginals(self) -> list:
        """Return P(present) of each cause: the share of the weight that it holds."""
        chances = []
        for n in range(self.size):
            absent, present = self.weights[n]
            held = list(self.weights)
            held[n] = (absent * 0.0, present)
            chances.append(self._run(held)[1] / self.total)
        return chances

    def expect(self, scales: tuple) -> float:
        """Return the mean of the product of the scales of the causes that are present."""
        if scales in self._known:
            return self._known[scales]
        scaled = list(self.weights)
        for cause, scale in scales:
            absent, present = scaled[cause]
            scaled[cause] = (absent, present * scale)
        self._known[scales] = self._run(scaled)[1] / self.total
        return self._known[scales]

    def chance(self, present: int, absent: int, counted: int, factor: float) -> float:
        """Return the mean of factor ** (how many of `counted` are present); see Table.chance."""
        key = (present, absent, counted, factor)
        if key not in self._known:
            weights = []
            for n, (without, with_it) in enumerate(self.weights):
                without = without * 0.0 if present >> n & 1 else without
                with_it = with_it * 0.0 if absent >> n & 1 else with_it
                weights.append((without, with_it * factor if counted >> n & 1 else with_it))
            self._known[key] = self._run(weights)[1] / self.total
        return self._known[key]

    def likeliest(self, least: float, most: int) -> list:
        """Return the (share, mask) of at least `least`, at most `most`, best first.

        The threshold is raised while there are too many, then lowered half-way again where that
        left nothing.
        """
        low = least
        subsets = self._at_least(low, most * _SPARE)
        high = low
        while subsets is None:
            low = high
            high = high * 4
            subsets = self._at_least(high, most * _SPARE)
        for _ in range(_HALVINGS):
            if subsets or low == high:
                break
            middle = (low + high) / 2
            closer = self._at_least(middle, most * _SPARE)
            if closer is None:
                low = middle
            else:
                high = middle
                subsets = closer
        rows = in_order([(-share, mask) for share, mask in subsets])
        return [(-less, mask) for less, mask in rows[:most]]

    def _at_least(self, least: float, most: int) -> list | None:
        """Return the (share, mask) of at least `least`; None when they are more than `most`."""
        partial = [(1.0, 0)]
        for n in range(len(self.buckets) - 1, -1, -1):
            bucket = self.buckets[n]
            bit = 1 << bucket.cause
            longer = []
            for share, mask in partial:
                state = 0
                for i, cause in enumerate(bucket.scope):
                    if mask >> cause & 1:
                        state += 1 << i
                absent = bucket.absent[state]
                present = bucket.present[state]
                both = absent + present
                without = share * (absent / both)
                if without >= least:
                    longer.append((without, mask))
                with_it = share * (present / both)
                if with_it >= least:
                    longer.append((with_it, mask | bit))
            if len(longer) > most:
                return None
            partial = longer
        return partial

    def _run(self, weights: list) -> tuple:
        """Eliminate every cause; return the buckets and the total weight."""
        tables = list(self.tables)
        total = self.one
        buckets = []
        for cause in self.order:
            mine = [table for table in tables if cause in table[0]]
            tables = [table for table in tables if cause not in table[0]]
            scope = []
            for causes, _ in mine:
                for other in causes:
                    if other != cause and other not in scope:
                        scope.append(other)
            scope.sort()
            absent = _product(cause, 0, scope, mine, weights[cause][0])
            present = _product(cause, 1, scope, mine, weights[cause][1])
            buckets.append(Bucket(cause, scope, absent, present))
            summed = [absent[n] + present[n] for n in range(len(absent))]
            if scope:
                tables.append((scope, summed))
            else:
                total = total * summed[0]
        return buckets, total


def _product(cause: int, value: int, scope: list, tables: list, weight) -> list:
    """Return the weight times all tables, for each state of the scope, the cause held."""
    result = [weight] * (1 << len(scope))
    for causes, values in tables:
        # Where each bit of the table's state comes from; the held cause is a constant.
        fixed = 0
        steps = []
        for n, other in enumerate(causes):
            if other == cause:
                fixed = value << n
            else:
                steps.append((scope.index(other), 1 << n))
        for state in range(len(result)):
            index = fixed
            for place, step in steps:
                if state >> place & 1:
                    index += step
            result[state] = result[state] * values[index]
    return result


def _order(size: int, scopes: list) -> list:
    """Return an order that keeps tables narrow: always the cause with fewest neighbours."""
    neighbours = [[] for _ in range(size)]
    for scope in scopes:
        for cause in scope:
            _join(neighbours, cause, scope)
    left = list(range(size))
    order = []
    while left:
        best = left[0]
        for cause in left:
            if len(neighbours[cause]) < len(neighbours[best]):
                best = cause
        left.remove(best)
        order.append(best)
        for cause in neighbours[best]:
            neighbours[cause].remove(best)
            _join(neighbours, cause, neighbours[best])
    return order


def _join(neighbours: list, cause: int, others: list) -> None:
    for other in others:
        if other != cause and other not in neighbours[cause]:
            neighbours[cause].append(other)
