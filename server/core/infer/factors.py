"""Readings that tie causes together: each a value for every state of the causes of one component.

The shared causes are held at a state of theirs (`present`, a mask of suspects). What they come to in a
reading is its `key`: at two states with the same keys a component is the same.
"""

from .noisy_or import power


class Shown:
    """A fault that showed: what counts is how many of its causes are present."""

    def __init__(self, causes: list, shared: list, extra: int, values: list):
        """`causes` are numbers within the component, `values` by how many causes are present."""
        self.causes = causes
        self._shared = shared
        self._extra = extra
        self._values = values

    def key(self, present: int) -> int:
        """Return how many count as present besides those of the component."""
        count = self._extra
        for n in self._shared:
            count += present >> n & 1
        return count

    def states(self, key: int) -> list:
        """Return the value for each state of the causes."""
        counts = [key]
        for _ in self.causes:
            counts = counts + [count + 1 for count in counts]
        return [self._values[count] for count in counts]


class Unheard:
    """A unit that did not tick: each of its causes lets it tick with a chance of its own."""

    def __init__(self, causes: list, shared: list, quiet, times: int, one):
        """`causes` and `shared` hold (number, chance to tick); `quiet` is that with no cause present."""
        self.causes = [number for number, _ in causes]
        self._scales = [scale for _, scale in causes]
        self._shared = shared
        self._quiet = quiet
        self._times = times
        self._one = one

    def key(self, present: int) -> int:
        """Return which of the shared causes are present."""
        key = 0
        for n, _ in self._shared:
            key |= present & 1 << n
        return key

    def states(self, key: int) -> list:
        """Return the value for each state of the causes."""
        ticks = self._quiet
        for n, scale in self._shared:
            if key >> n & 1:
                ticks = ticks * scale
        chances = [ticks]
        for scale in self._scales:
            chances = chances + [chance * scale for chance in chances]
        return [power(self._one * (1.0 - chance), self._times, self._one) for chance in chances]
