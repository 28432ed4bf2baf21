"""What was claimed before the repair beside what was proven afterwards, and what chance allows.

Of so many claims with these chances, the number that is right has a Poisson-binomial distribution; its middle
90 % is the band that chance allows. Only jobs whose cause was proven in the end are counted.
"""

from bisect import bisect_right
from typing import Any

#: Claims from a chance up to the next, in per mille.
BANDS = (0, 800, 950, 990, 1001)
_PPB = 1_000_000_000
_NOTHING = 1e-18  # a share that no figure shows


class Claims:
    """Claims from one chance up to another: how many, how many were right, and what chance allows."""

    def __init__(self) -> None:
        """Starts with none."""
        self.chances: dict[str, float] = {}  # by job
        self.right: set[str] = set()
        self._shares: Shares | None = Shares()

    def add(self, job: str, chance: float, right: bool) -> None:
        """Adds the claim of a job."""
        self.chances[job] = chance
        if right:
            self.right.add(job)
        if self._shares:
            self._shares.add(chance)

    def remove(self, job: str) -> None:
        """Takes the claim of a job out."""
        del self.chances[job]
        self.right.discard(job)
        self._shares = None

    def band(self) -> tuple[int, int]:
        """Returns the fewest and the most that are right within the middle part of what chance allows."""
        if self._shares is None:
            self._shares = Shares()
            for job in sorted(self.chances):
                self._shares.add(self.chances[job])
        return self._shares.middle()


def band_of(job: dict[str, Any]) -> int | None:
    """Returns the number of the band that a contribution's claim is in, None where nothing is claimed."""
    if not job.get("proven") or not job["claimed_ppb"]:
        return None
    return bisect_right(BANDS, job["claimed_ppb"] * 1000 // _PPB) - 1


class Shares:
    """How likely each number of right claims is, by their chances: one claim more at a time."""

    def __init__(self) -> None:
        """Starts with no claim: none is right."""
        self._first, self._shares = 0, [1.0]  # the chance of `first` right ones, and of each more

    def add(self, chance: float) -> None:
        """Adds a claim."""
        longer = [0.0] * (len(self._shares) + 1)
        for more, share in enumerate(self._shares):
            longer[more] += share * (1.0 - chance)
            longer[more + 1] += share * chance
        start, end = 0, len(longer)
        while end - start > 1 and longer[start] < _NOTHING:
            start += 1
        while end - start > 1 and longer[end - 1] < _NOTHING:
            end -= 1
        self._first, self._shares = self._first + start, longer[start:end]

    def middle(self, part: float = 0.9) -> tuple[int, int]:
        """Returns the fewest and the most that are right within the middle part."""
        tail = (1.0 - part) / 2.0
        last = self._first + len(self._shares) - 1
        return self._first + _beyond(self._shares, tail), last - _beyond(self._shares[::-1], tail)


def _beyond(shares: list[float], tail: float) -> int:
    """Returns how many from the beginning lie in a tail."""
    below = 0.0
    for number, share in enumerate(shares):
        below += share
        if below > tail:
            return number
    return len(shares) - 1
