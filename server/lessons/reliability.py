"""What was claimed before the repair beside what was proven afterwards, and what chance allows.

Of so many claims with these chances, the number that is right has a Poisson-binomial distribution; its middle
90 % is the band that chance allows. Only jobs whose cause was proven in the end are counted.
"""

from itertools import pairwise
from typing import Any
from typing import NamedTuple

#: Claims from a chance up to the next, in per mille.
BANDS = (0, 800, 950, 990, 1001)
_PPB = 1_000_000_000
_NOTHING = 1e-18  # a share that no figure shows


class Claims(NamedTuple):
    """Claims of about one chance: from and to (per mille), how many, right, expected, and the band."""

    start: int
    end: int
    number: int
    right: int
    expected: float
    low: int
    high: int
    jobs: list[str]


def claims(jobs: list[dict[str, Any]]) -> list[Claims]:
    """Returns the claims of contributions by their chance; bands without a claim are left out."""
    made = [job for job in jobs if job.get("proven") and job["claimed_ppb"]]
    found = []
    for start, end in pairwise(BANDS):
        here = [job for job in made if start <= job["claimed_ppb"] * 1000 // _PPB < end]
        if not here:
            continue
        chances = [job["claimed_ppb"] / _PPB for job in here]
        right = sum(job["right"] for job in here)
        low, high = band(chances)
        names = [job["job"] for job in here]
        found.append(Claims(start, end, len(here), right, sum(chances), low, high, names))
    return found


def band(chances: list[float], part: float = 0.9) -> tuple[int, int]:
    """Returns the fewest and the most that are right within the middle part of what chance allows."""
    first, shares = 0, [1.0]  # the chance of `first` right ones, and of each more
    for chance in chances:
        longer = [0.0] * (len(shares) + 1)
        for more, share in enumerate(shares):
            longer[more] += share * (1.0 - chance)
            longer[more + 1] += share * chance
        while len(longer) > 1 and longer[0] < _NOTHING:
            first, longer = first + 1, longer[1:]
        while len(longer) > 1 and longer[-1] < _NOTHING:
            longer.pop()
        shares = longer
    tail = (1.0 - part) / 2.0
    last = first + len(shares) - 1
    return first + _beyond(shares, tail), last - _beyond(shares[::-1], tail)


def _beyond(shares: list[float], tail: float) -> int:
    """Returns how many from the beginning lie in a tail."""
    below = 0.0
    for number, share in enumerate(shares):
        below += share
        if below > tail:
            return number
    return len(shares) - 1
