"""What jobs say of the rates, own jobs and those of other yards, as the search for a maximum takes it."""

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from typing import Any

from server.lessons import showing
from server.lessons.composed import DEFAULT_ODDS
from server.lessons.composed import Composed
from server.lessons.composed import Weighed
from server.lessons.composed import composition
from server.lessons.composed import counted
from server.lessons.composed import layout
from server.lessons.rates import DEFAULT
from server.lessons.showing import Base
from server.lessons.showing import Explained

_PPM = 1_000_000
_PPB = 1_000_000_000
_MOST_KNOWN = 8192

Groups = Counter[tuple]
"""What jobs say -> how many say just that: many go the same way."""


class Start:
    """Where searches for a maximum begin: at the defaults, and from then on where the last one ended."""

    def __init__(self) -> None:
        """Starts at the defaults."""
        self.odds = DEFAULT_ODDS
        self.base = DEFAULT


class Said:
    """Of the classes of causes, of the self-test, and of other checks (rate -> [hits, tries])."""

    def __init__(self) -> None:
        """Starts with what no job says."""
        self.causes: Weighed = []
        self.readings: showing.Said = []
        self.checks: dict[str, list[float]] = {}
        self.jobs = 0.0
        self.jobs_of: dict[str, float] = {}  # by other check: how many jobs tell of it, at most

    def add(self, figures: dict[str, Any], jobs: int, weight: float = 1.0) -> None:
        """Adds the figures of jobs as a yard gives them (`given`), each for as much as it weighs."""
        for each in figures["causes"]:
            job = composed(each["has"], each["weights"])
            self.causes.append(counted(job, weight * each["count"]))
        for each in figures["readings"]:
            self.readings.append((*explained(each["base"], each["explained"]), weight * each["count"]))
        self._add_checks(figures["checks"], weight)
        self.jobs += weight * jobs
        for rate, (_, tries) in figures["checks"].items():
            self.jobs_of[rate] = self.jobs_of.get(rate, 0.0) + weight * min(jobs, tries)

    def add_own(
        self,
        causes: Groups,
        readings: Groups,
        checks: dict[str, list[int]],
        behind: dict[str, int],
        jobs: int,
    ) -> None:
        """Adds what the yard's own jobs say, as the sums have it: what jobs said before is not read again.

        `behind` says how many jobs tell of a rate of readings.
        """
        for said, count in sorted(causes.items()):
            job, weight = _known(*said)
            self.causes.append((job, count * weight))
        self.readings += [(*_explained(*said), float(count)) for said, count in sorted(readings.items())]
        self._add_checks(checks, 1.0)
        self.jobs += jobs
        for rate in checks:
            self.jobs_of[rate] = self.jobs_of.get(rate, 0.0) + behind.get(rate, 0)

    def _add_checks(self, checks: dict[str, list[int]], weight: float) -> None:
        for rate, counts in checks.items():
            total = self.checks.setdefault(rate, [0.0, 0.0])
            for n, count in enumerate(counts):
                total[n] += weight * count


@lru_cache(maxsize=_MOST_KNOWN)
def _known(has: tuple, weights: tuple) -> tuple[Composed, float]:
    return counted(composed(has, weights), 1)


def composed(has: Sequence, weights: Sequence) -> Composed:
    """Returns what jobs say of the classes of causes; from `sums.causes_of`, or as a file has it."""
    return Composed(layout(has), [(composition(key), share / _PPB) for key, share in weights])


def explained(base: Sequence, explanations: Sequence) -> tuple[Base, Explained]:
    """Returns what jobs say by their readings; from `sums.readings_of`, or as a file has it."""
    return Base(*(ppm / _PPM for ppm in base)), [(share / _PPB, counts) for share, counts in explanations]


_explained = lru_cache(maxsize=_MOST_KNOWN)(explained)
