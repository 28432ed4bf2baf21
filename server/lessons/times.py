"""Times of work kept in order, so that one more is put in its place and none is sorted again."""

from bisect import bisect_left
from bisect import bisect_right
from bisect import insort
from collections import Counter
from collections.abc import Callable
from typing import Any
from typing import NamedTuple

from server.lessons import minutes


class Timed(NamedTuple):
    """A time in milliseconds, its job, and what the plan reckons for it in hundredths of a minute."""

    ms: int
    job: str
    plan_x100: int


class Times:
    """Times of one kind, and the jobs that they are of."""

    def __init__(self) -> None:
        """Starts with none."""
        self._entries: list[Timed] = []
        self._ms: list[int] = []  # of the entries, and what the plan reckons for them, each in order
        self._plans: list[int] = []
        self._jobs: Counter[str] = Counter()
        self._spread: minutes.Spread | None = None
        self._is_known = False
        self._shown: dict[str, Any] | None = None

    def add(self, timed: Timed) -> None:
        """Adds a time."""
        insort(self._entries, timed)
        insort(self._ms, timed.ms)
        insort(self._plans, timed.plan_x100)
        self._jobs[timed.job] += 1
        self._is_known, self._shown = False, None

    def remove(self, timed: Timed) -> None:
        """Takes a time out that was added before."""
        del self._entries[bisect_left(self._entries, timed)]
        del self._ms[bisect_left(self._ms, timed.ms)]
        del self._plans[bisect_left(self._plans, timed.plan_x100)]
        self._jobs[timed.job] -= 1
        if not self._jobs[timed.job]:
            del self._jobs[timed.job]
        self._is_known, self._shown = False, None

    @property
    def jobs(self) -> list[str]:
        """The jobs, in order."""
        return sorted(self._jobs)

    @property
    def spread(self) -> minutes.Spread | None:
        """How they spread, None where there is none but pauses."""
        if not self._is_known:
            self._spread, self._is_known = minutes.spread(self._ms), True
        return self._spread

    def shown(self, make: Callable[["Times", minutes.Spread], dict[str, Any]]) -> dict[str, Any] | None:
        """Returns what `make` makes of them and of their spread, made once until a time comes or goes.

        None where there is none but pauses.
        """
        if self._shown is None and self.spread:
            self._shown = make(self, self.spread)
        return self._shown

    @property
    def plan_x100(self) -> int:
        """What the plan reckons for them in the middle, in hundredths of a minute."""
        return self._plans[len(self._plans) // 2] if self._plans else 0

    def pauses(self) -> list[Timed]:
        """Returns the times that are too long to be work."""
        spread = self.spread
        longest = self._entries[spread.number - 1].ms if spread else -1
        return self._entries[bisect_right(self._entries, longest, key=lambda each: each.ms) :]
