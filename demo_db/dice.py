"""Numbers that look random and are the same on every machine: each comes from the hash of a name.

The demo must build to the same bytes every time, so it asks neither a clock nor a random source.
"""

import hashlib
from collections.abc import Sequence
from typing import TypeVar

_Item = TypeVar("_Item")


class Dice:
    """An endless row of numbers that belongs to a name."""

    def __init__(self, *names: str):
        """Begin the row of these names."""
        self._seed = "/".join(names).encode()
        self._drawn = 0

    def bytes(self, count: int) -> bytes:
        """Return the next `count` bytes."""
        self._drawn += 1
        return hashlib.shake_256(b"%d/%s" % (self._drawn, self._seed)).digest(count)

    def between(self, low: float, high: float) -> float:
        """Return a number from `low` up to `high`."""
        return low + (high - low) * int.from_bytes(self.bytes(6)) / 2**48

    def whole(self, low: int, high: int) -> int:
        """Return a whole number from `low` to `high`, both possible."""
        return low + int.from_bytes(self.bytes(6)) % (high - low + 1)

    def pick(self, items: Sequence[_Item]) -> _Item:
        """Return one of the items."""
        return items[self.whole(0, len(items) - 1)]


def identity(letter: str, name: str) -> str:
    """Return an id as the app makes them, a letter and 12 hex digits, from a name."""
    return letter + hashlib.sha256(name.encode()).hexdigest()[:12]
