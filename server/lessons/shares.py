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
share as the defaults do.

**The maximum.** Given x, E is the expected number of causes of each class. log N is concave, so its tangent
at the present x bounds it from above, and what is maximised in a step bounds the posterior from below and
touches it there (expectation-maximization with a minorization, Dempster, Laird and Rubin 1977, Hunter and
Lange 2004): x_c = E_c / sum over jobs of |E| n_c / N. No step lowers the posterior.
"""

from collections.abc import Sequence
from math import log
from typing import NamedTuple

from server.core.infer.case import RATES
from server.core.infer.variations import CLASSES
from server.lessons.beta import interval

PRIOR_JOBS = 20.0
#: Causes of each class on eight positions in two groups.
ORDINARY = (8, 8, 8, 2, 1)
_MOST_STEPS = 20_000
_STILL = 1e-13  # a step that moves no logarithm by more is none


class Composed(NamedTuple):
    """What a job says: the causes its layout has by class, and (composition, weight) of each possible one."""

    has: tuple[int, ...]
    weights: list[tuple[tuple[int, ...], float]]


Weighed = list[tuple[Composed, float]]
"""What jobs say, each with what it counts."""


class Share(NamedTuple):
    """A class: its rate as learned, the bounds that the jobs alone give it, and its default."""

    value: float
    low: float
    high: float
    default: float
    found: float  # how many causes of it the jobs are expected to have had


def odds(chance: float) -> float:
    """Returns the odds of a chance."""
    return chance / (1.0 - chance)


DEFAULTS = tuple(RATES[name] for name in CLASSES)
DEFAULT_ODDS = tuple(odds(rate) for rate in DEFAULTS)


def weight_of(job: Composed) -> float:
    """Returns what a job counts: one, however many causes are expected in it."""
    expected = sum(weight * sum(causes) for causes, weight in job.weights)
    return 1.0 / max(1.0, expected)


def log_posterior(x: tuple[float, ...], jobs: list[Composed]) -> float:
    """Returns the logarithm of prior times likelihood at odds x, but for a constant; see the module."""
    scale = log(_mean(ORDINARY, x) / _mean(ORDINARY, DEFAULT_ODDS))
    total = sum(n * (log(x[c] / DEFAULT_ODDS[c]) - scale) for c, n in enumerate(_prior()))
    for job in jobs:
        total += weight_of(job) * log(sum(_weighed(job, x)))
    return total


def maximum(jobs: list[Composed]) -> tuple[float, ...]:
    """Returns the odds of each class at the maximum, as many together as the defaults."""
    return _maximum(_alike(jobs))


def _maximum(weighed: Weighed) -> tuple[float, ...]:
    x = DEFAULT_ODDS
    for _ in range(_MOST_STEPS):
        found, against = [0.0] * len(x), [0.0] * len(x)
        _add(found, against, ORDINARY, _prior(), _mean(ORDINARY, x))
        for job, weight in weighed:
            expected = _expected(job, x)
            _add(found, against, job.has, [weight * n for n in expected], _mean(job.has, x))
        y = tuple(found[c] / against[c] for c in range(len(x)))
        scale = _mean(ORDINARY, DEFAULT_ODDS) / _mean(ORDINARY, y)
        y = tuple(each * scale for each in y)
        moved = max(abs(log(now / before)) for now, before in zip(y, x, strict=True))
        x = y
        if moved < _STILL:
            break
    return x


def learned(jobs: list[Composed]) -> dict[str, Share]:
    """Returns each class with its rate and the bounds of 90 % that the jobs alone give it."""
    weighed = _alike(jobs)
    x = _maximum(weighed)
    rates = scaled(x)
    tallies = [_Tally(c) for c in range(len(x))]
    for job, weight in weighed:
        expected = _expected(job, x)
        for tally in tallies:
            tally.add(job.has, x, [weight * n for n in expected], expected[tally.c])
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

    def add(self, has: tuple, x: tuple[float, ...], counts: list[float], chance: float) -> None:
        """Adds what jobs that are alike are expected to have; `chance` is that of this class in each."""
        count, share = sum(counts), has[self.c] * x[self.c] / _mean(has, x)
        self.found += counts[self.c]
        self._all += count
        self._predicted += count * share
        self._spread += count * share * (1.0 - share)
        self._doubt += counts[self.c] * max(0.0, 1.0 - chance)

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
    low, high = 0.0, odds(sum(DEFAULTS)) / min(each for each in x if each > 0.0)
    for _ in range(200):
        scale = (low + high) / 2.0
        if sum(scale * each / (1.0 + scale * each) for each in x) < sum(DEFAULTS):
            low = scale
        else:
            high = scale
    return [high * each / (1.0 + high * each) for each in x]


def _alike(jobs: list[Composed]) -> Weighed:
    """Returns each thing that jobs say once, with what all that say it count: many jobs go the same way."""
    counts: dict[tuple, int] = {}
    for job in jobs:
        key = (job.has, tuple(job.weights))
        counts[key] = counts.get(key, 0) + 1
    found = []
    for (has, weights), count in counts.items():
        job = Composed(has, list(weights))
        found.append((job, count * weight_of(job)))
    return found


def _prior() -> list[float]:
    mean = _mean(ORDINARY, DEFAULT_ODDS)
    return [PRIOR_JOBS * n * each / mean for n, each in zip(ORDINARY, DEFAULT_ODDS, strict=True)]


def _mean(has: tuple, x: tuple[float, ...]) -> float:
    return sum(n * each for n, each in zip(has, x, strict=True))


def _add(found: list, against: list, has: tuple, counts: list, mean: float) -> None:
    together = sum(counts)
    for c, n in enumerate(counts):
        found[c] += n
        against[c] += together * has[c] / mean


def _weighed(job: Composed, x: tuple[float, ...]) -> list[float]:
    """Returns the weight of each composition at odds x."""
    scale = _mean(job.has, DEFAULT_ODDS) / _mean(job.has, x)
    ratios = [scale * each / default for each, default in zip(x, DEFAULT_ODDS, strict=True)]
    values = []
    for causes, weight in job.weights:
        for ratio, n in zip(ratios, causes, strict=True):
            if n:
                weight *= ratio**n
        values.append(weight)
    return values


def _expected(job: Composed, x: tuple[float, ...]) -> list[float]:
    """Returns how many causes of each class are expected in a job."""
    values = _weighed(job, x)
    total = sum(values)
    expected = [0.0] * len(x)
    for (causes, _), value in zip(job.weights, values, strict=True):
        for c, n in enumerate(causes):
            if n:
                expected[c] += n * value / total
    return expected
