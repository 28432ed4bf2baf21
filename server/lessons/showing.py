"""How often a fault shows, and how often a test shows one that is not there: a maximum over all jobs.

**The likelihood.** Of a job, e runs over its explanations, W(e) is the probability that the exact engine gave
each at rates s0 and f0, and a reading at a position where k causes act shows a fault with the chance
p_k = 1 - (1 - f)(1 - s)^k. A job contributes

    L(s, f) = sum over e of  W(e) * product over its readings of  P(reading; s, f) / P(reading; s0, f0)

over the readings after the first test, which showed a fault (`explained`). What a person does next, and when
a job ends, follows from what was read before, so it multiplies L by what does not depend on s and f. Counting
in proven jobs alone has no such excuse, and comes out high. That the explanations weigh by the first test as
they did at s0 is an approximation: a fault shows there by the same factor whatever its cause.

**The maximum** by expectation-maximization: of a reading with a fault each cause showed with the chance
s / p_k and the alarm was false with f / p_k; of a clean one none did. The prior is the default with the
weight of the readings of twenty jobs (`rates.PRIOR`). **The bounds** are those of the expected counts alone.
What is not sure to be a miss, or a hit, counts for less, by the share of the variance that is missing (Louis
1982).
"""

from collections.abc import Sequence
from math import log
from typing import NamedTuple

Explained = list[tuple[float, Sequence]]
"""(probability, counts as `explained.Counts`) of each explanation of a job."""

_MOST_STEPS = 500
_STILL = 1e-10


class Base(NamedTuple):
    """The rates at which the explanations of a job were weighed."""

    shows: float
    false_alarm: float


Said = list[tuple[Base, Explained, float]]
"""What jobs say: the rates they were weighed at, their explanations, and how many such jobs there are."""


class Found(NamedTuple):
    """A rate at the maximum; expected hits and tries; and how much of them is known for sure, 0 to 1."""

    value: float
    hits: float
    tries: float
    known: float


class _Chances(dict[int, float]):
    """The chance that a position shows a fault, by how many causes act there."""

    def __init__(self, at: Base):
        super().__init__()
        self.shows, self.alarm = at

    def __missing__(self, causes: int) -> float:
        chance = 1.0 - (1.0 - self.alarm) * (1.0 - self.shows) ** causes
        self[causes] = chance
        return chance


_Jobs = list[tuple[_Chances, Explained, float]]


def maximum(jobs: Said, default: Base, prior: Base, start: Base | None = None) -> tuple[Found, Found]:
    """Returns `shows` and `false_alarm` at the maximum, looked for from some rates on, else the default."""
    weighed = _with_chances(jobs)
    here = start or default
    for _ in range(_MOST_STEPS):
        hits, tries, alarms, readings = _expected(weighed, _Chances(here))
        now = Base(
            (hits + prior.shows * default.shows) / (tries + prior.shows),
            (alarms + prior.false_alarm * default.false_alarm) / (readings + prior.false_alarm),
        )
        moved = max(abs(a - b) for a, b in zip(now, here, strict=True))
        here = now
        if moved < _STILL:
            break
    return _found(weighed, _Chances(here))


def log_posterior(at: Base, jobs: Said, default: Base, prior: Base) -> float:
    """Returns the logarithm of prior times likelihood, but for a constant.

    `prior` says of each rate how many readings its default weighs.
    """
    total = 0.0
    for rate, usual, weight in zip(at, default, prior, strict=True):
        total += weight * (usual * log(rate) + (1.0 - usual) * log(1.0 - rate))
    for usually, explained, number in _with_chances(jobs):
        total += number * log(sum(_weighed(explained, usually, _Chances(at))))
    return total


def _with_chances(jobs: Said) -> _Jobs:
    """Returns jobs with the chances that they were weighed at, worked out once for all of the same rates."""
    known: dict[Base, _Chances] = {base: _Chances(base) for base, _, _ in jobs}
    return [(known[base], explained, number) for base, explained, number in jobs]


def _expected(jobs: _Jobs, chances: _Chances) -> tuple[float, float, float, float]:
    """Returns expected (hits, tries) of `shows`, then of `false_alarm`."""
    hits = tries = alarms = readings = 0.0
    for usual, explained, number in jobs:
        values = _weighed(explained, usual, chances)
        total = sum(values)
        for (_, counts), value in zip(explained, values, strict=True):
            share = number * value / total
            for causes, faulted, clean in counts:
                if faulted:
                    shown = share * faulted / chances[causes]
                    hits += shown * causes * chances.shows
                    alarms += shown * chances.alarm
                tries += share * (faulted + clean) * causes
                readings += share * (faulted + clean)
    return hits, tries, alarms, readings


def _found(jobs: _Jobs, chances: _Chances) -> tuple[Found, Found]:
    shows, alarm = chances.shows, chances.alarm
    hits, tries, alarms, readings = _expected(jobs, chances)
    doubt, false_doubt = 0.0, 0.0
    for usual, explained, number in jobs:
        of_shows, of_alarm = _Spread(), _Spread()
        values = _weighed(explained, usual, chances)
        for (_, counts), value in zip(explained, values, strict=True):
            score = false_score = within = false_within = 0.0
            for causes, faulted, clean in counts:
                mine, false = shows / chances[causes], alarm / chances[causes]
                score += causes * (faulted * mine - (faulted + clean) * shows)
                within += causes * faulted * mine * (1.0 - mine)
                false_score += faulted * false - (faulted + clean) * alarm
                false_within += faulted * false * (1.0 - false)
            of_shows.add(value, score, within)
            of_alarm.add(value, false_score, false_within)
        doubt += number * of_shows.variance()
        false_doubt += number * of_alarm.variance()
    return (
        Found(shows, hits, tries, _known(doubt, tries * shows * (1.0 - shows))),
        Found(alarm, alarms, readings, _known(false_doubt, readings * alarm * (1.0 - alarm))),
    )


class _Spread:
    """The variance of what is counted of a job, between its explanations and within each."""

    def __init__(self) -> None:
        self._weight = self._sum = self._squares = 0.0

    def add(self, weight: float, score: float, within: float) -> None:
        self._weight += weight
        self._sum += weight * score
        self._squares += weight * (score * score + within)

    def variance(self) -> float:
        mean = self._sum / self._weight
        return max(0.0, self._squares / self._weight - mean * mean)


def _known(doubt: float, spread: float) -> float:
    return min(1.0, max(0.0, 1.0 - doubt / spread)) if spread > 0.0 else 0.0


def _weighed(explained: Explained, usual: _Chances, chances: _Chances) -> list[float]:
    """Returns the weight of each explanation at these chances."""
    values = []
    for weight, counts in explained:
        for causes, faulted, clean in counts:
            if faulted:
                weight *= (chances[causes] / usual[causes]) ** faulted
            if clean:
                weight *= ((1.0 - chances[causes]) / (1.0 - usual[causes])) ** clean
        values.append(weight)
    return values
