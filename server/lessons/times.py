"""Times of work kept in order, so that one more is put in its place and none is sorted again."""

from bisect import bisect_left
from bisect import bisect_right
from bisect import insort
from collections import Counter
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
        self._jobs: Counter[str] = Counter()
        self._spread: minutes.Spread | None = None
        self._plan_x100 = 0
        self._is_known = False

    def add(self, timed: Timed) -> None:
        """Adds a time."""
        insort(self._entries, timed)
        self._jobs[timed.job] += 1
        self._is_known = False

    def remove(self, timed: Timed) -> None:
        """Takes a time out that was added before."""
        del self._entries[bisect_left(self._entries, timed)]
        self._jobs[timed.job] -= 1
        if not self._jobs[timed.job]:
            del self._jobs[timed.job]
        self._is_known = False

    @property
    def jobs(self) -> list[str]:
        """The jobs, in order."""
        return sorted(self._jobs)

    @property
    def spread(self) -> minutes.Spread | None:
        """How they spread, None where there is none but pauses."""
        self._know()
        return self._spread

    @property
    def plan_x100(self) -> int:
        """What the plan reckons for them in the middle, in hundredths of a minute."""
        self._know()
        return self._plan_x100

    def _know(self) -> None:
        """Works both out where a time came or went since."""
        if self._is_known:
            return
        self._is_known = True
        self._spread = minutes.spread([each.ms for each in self._entries])
        plans = sorted(each.plan_x100 for each in self._entries)
        self._plan_x100 = plans[len(plans) // 2] if plans else 0

    def pauses(self) -> list[Timed]:
        """Returns the times that are too long to be work."""
        spread = self.spread
        longest = self._entries[spread.number - 1].ms if spread else -1
        return self._entries[bisect_right(self._entries, longest, key=lambda each: each.ms) :]
