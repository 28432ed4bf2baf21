"""How the classes of causes share among the faults of the yard: a maximum by expectation-maximization.

**What is learned.** A job is opened because something shows, so how often sensors fail at all cannot be
learned from jobs: twice as many faults on twice as many cars are the same jobs. Written out: let cause i have
the prior odds o_i. Given that k causes are present, the chance that they are just the set S is
prod(o_i, i in S) over the sum of that product over all sets of k causes, in which a common factor of all odds
cancels. So the sum of the rates stays the default's, and only the shares move.

**The likelihood.** All causes of a class have odds x_c. For the sum over all sets of k stands N^k / k!, with
N = sum of n_c x_c and n_c the causes of class c that the layout has: causes drawn one by one, which differs
by the sets that draw one cause twice and is exact for one cause. The exact engine gives, at the default's
odds d_c, the weight W(K) of each composition K (how many causes of each class are present among the suspects;
what no faulted reading points to opened no job). A job then contributes

    L(x) = sum over K of  W(K) * prod((x_c / d_c)^K_c) * (N(x) / N(d))^-|K|

whether its cause was proven (one K has nearly all weight) or not. A job with many faults counts as one: the
logarithm is weighted by 1 / the number of causes expected in it, at most 1. So nonsense moves the shares by
its number of jobs and no more. The prior is that of `PRIOR_JOBS` jobs on eight positions in two groups which
share as the defaults do. `maximum` finds where the posterior is greatest.
Bounds are by the jobs alone.
"""

from collections.abc import Sequence
from typing import NamedTuple

from server.core.infer.variations import CLASSES
from server.lessons.beta import interval
from server.lessons.composed import DEFAULTS
from server.lessons.composed import Composed
from server.lessons.composed import Weighed
from server.lessons.composed import alike
from server.lessons.composed import expected
from server.lessons.composed import likely
from server.lessons.composed import mean
from server.lessons.composed import odds
from server.lessons.composed import ratios
from server.lessons.maximum import maximum_of


class Share(NamedTuple):
    """A class: its rate as learned, the bounds that the jobs alone give it, and its default."""

    value: float
    low: float
    high: float
    default: float
    found: float  # how many causes of it the jobs are expected to have had


def maximum(jobs: list[Composed]) -> tuple[float, ...]:
    """Returns the odds of each class at the maximum, as many together as the defaults."""
    return maximum_of(alike(jobs))


def learned(jobs: list[Composed]) -> dict[str, Share]:
    """Returns each class with its rate and the bounds of 90 % that the jobs alone give it."""
    weighed = alike(jobs)
    return learned_at(weighed, maximum_of(weighed))


def learned_at(weighed: Weighed, x: tuple[float, ...]) -> dict[str, Share]:
    """Returns the same of what jobs say, at the maximum x."""
    rates = scaled(x)
    tallies = [_Tally(c) for c in range(len(x))]
    known = {has: ratios(has, x) for has in {job.has for job, _ in weighed}}
    for job, weight in weighed:
        each_class = expected(likely(job, known[job.has]))
        whole = mean(job.has, x)
        for tally in tallies:
            part = job.has[tally.c] * x[tally.c] / whole
            tally.add(part, weight * sum(each_class), weight * each_class[tally.c], each_class[tally.c])
    shares = {}
    for tally, name in zip(tallies, CLASSES, strict=True):
        low, high = tally.bounds(x)
        shares[name] = Share(rates[tally.c], low, high, DEFAULTS[tally.c], tally.found)
    return shares


class _Tally:
    """What is found of one class, and how much of it is known for sure."""

    def __init__(self, c: int):
        self.c = c
        self.found = 0.0
        self._all = 0.0
        self._predicted = 0.0
        self._spread = 0.0  # variance of what is predicted
        self._doubt = 0.0  # variance that is left when the readings are known

    def add(self, share: float, count: float, mine: float, chance: float) -> None:
        """Adds jobs that are alike: the share expected of this class, causes in all, and of this class.

        `chance` is how many of this class are expected in each.
        """
        self.found += mine
        self._all += count
        self._predicted += count * share
        self._spread += count * share * (1.0 - share)
        self._doubt += mine * max(0.0, 1.0 - chance)

    def bounds(self, x: tuple[float, ...]) -> tuple[float, float]:
        """Returns the bounds of the rate of the class, by the jobs alone.

        Beta by the causes found of it and of the others. What is not sure to be of the class counts for less,
        by the share of the variance that is missing (Louis 1982).
        """
        if self._all <= 0.0:
            return 0.0, sum(DEFAULTS)
        known = min(1.0, max(0.0, 1.0 - self._doubt / self._spread))
        low, high = interval(self.found * known, self._all * known)
        mine = odds(min(max(self._predicted / self._all, 1e-12), 1.0 - 1e-12))
        return self._rate(low, mine, x), self._rate(high, mine, x)

    def _rate(self, share: float, mine: float, x: tuple[float, ...]) -> float:
        """Returns the rate of the class where it has a share of the causes."""
        if share in (0.0, 1.0):
            return share * sum(DEFAULTS)
        moved = tuple(each * odds(share) / mine if n == self.c else each for n, each in enumerate(x))
        return scaled(moved)[self.c]


def scaled(x: Sequence[float]) -> list[float]:
    """Returns the rates whose odds are as these, and whose sum is that of the defaults."""
    # The sum rises ever more slowly, so Newton's steps from below stay below: each gets nearer.
    scale = sum(DEFAULTS) / sum(x)
    for _ in range(200):
        parts = [scale * each / (1.0 + scale * each) for each in x]
        slope = sum(part * (1.0 - part) for part in parts) / scale
        step = (sum(DEFAULTS) - sum(parts)) / slope
        scale += step
        if step <= 1e-15 * scale:
            break
    return [scale * each / (1.0 + scale * each) for each in x]
