"""The odds of the classes at which the posterior of `shares` is greatest.

**Expectation-maximization.** Given x, E is the expected number of causes of each class. log N is concave, so
its tangent at the present x bounds it from above, and what is maximised in a step bounds the posterior from
below and touches it there (a minorization: Dempster, Laird and Rubin 1977, Hunter and Lange 2004):
x_c = E_c / sum over jobs of |E| n_c / N. No step lowers the posterior.

**Newton's steps** end it, for from nearby they are few. In z = log x, with p_c = n_c x_c / N, a job has the
gradient E[K - |K| p], and the second derivative Var[K - |K| p] - |E| (diag p - p p'). A step is taken where
the matrix is that of a maximum and the step is short; one after which the gradient is not less is taken back.
"""

from math import exp
from math import log
from typing import NamedTuple

from server.lessons.composed import DEFAULT_ODDS
from server.lessons.composed import ORDINARY
from server.lessons.composed import Weighed
from server.lessons.composed import alarms
from server.lessons.composed import mean
from server.lessons.composed import prior
from server.lessons.composed import ratios
from server.lessons.matrix import cholesky
from server.lessons.matrix import inverse
from server.lessons.matrix import solved

_MOST_STEPS = 20_000
_STILL = 1e-12  # a step that moves no logarithm by more is none
_STILL_SQUARED = 1e-5
_SHORT = 0.5

Odds = tuple[float, ...]


class _Unsure(NamedTuple):
    """A job of which it is not sure what it had, as each look goes through it."""

    has: tuple[int, ...]
    weight: float
    #: (weight, what of each class is present, how many causes it has more than all have in common).
    parts: list[tuple[float, list[tuple[int, int]], int]]


_Parted = tuple[dict[tuple, list[float]], list[_Unsure]]


class Maximum(NamedTuple):
    """The odds of each class at the maximum, as many together as the defaults, and what the jobs say there.

    Of each class how many causes the jobs are expected to have had, and how many the odds lead one to expect;
    and the covariance of the logarithms of the odds, None where they say too little. That is the inverse of
    minus the second derivative, in which what is not sure is missing (Louis 1982). One factor of all odds
    varies as it likes there, which moves no share.
    """

    odds: Odds
    found: list[float]
    predicted: list[float]
    covariance: list[list[float]] | None


def maximum_of(weighed: Weighed, start: Odds = DEFAULT_ODDS, alarm: float = DEFAULT_ODDS[-1]) -> Maximum:
    """Returns where the posterior is greatest, looked for from some odds on.

    `alarm` as in `composed.log_posterior`.
    """
    jobs, known = _parted(weighed), _parted(alarms(alarm))
    x = _scaled(start)
    here = _look(jobs, known, x)
    for _ in range(_MOST_STEPS):
        step, there = _newton(here.whole), None
        if step:
            x_there = _scaled(tuple(each * exp(by) for each, by in zip(x, step, strict=True)))
            there = _look(jobs, known, x_there)
            if there.whole.size() > here.whole.size() and max(map(abs, step)) > _STILL:
                step = there = None
        if there is None:
            moved_to = zip(here.whole.found, here.whole.against, strict=True)
            x_there = _scaled(tuple(found / against for found, against in moved_to))
            there = _look(jobs, known, x_there)
        moved = max(abs(log(now / before)) for now, before in zip(x_there, x, strict=True))
        x, here = x_there, there
        # After a step of Newton's what is left is about the square of it.
        if moved < (_STILL_SQUARED if step else _STILL):
            break
    predicted = [each * against for each, against in zip(x, here.jobs.against, strict=True)]
    return Maximum(x, here.jobs.found, predicted, inverse(here.bend))


def _parted(weighed: Weighed) -> _Parted:
    """Returns the causes of what is sure, by layout; and what is not."""
    sure: dict[tuple, list[float]] = {}
    unsure = []
    for job, weight in weighed:
        if len(job.weights) > 1:
            least = min(sum(causes) for causes, _ in job.weights)
            parts = [
                (part, [(c, n) for c, n in enumerate(causes) if n], sum(causes) - least)
                for causes, part in job.weights
            ]
            unsure.append(_Unsure(job.has, weight, parts))
            continue
        counts = sure.setdefault(job.has, [0.0] * len(job.has))
        for c, n in enumerate(job.weights[0][0]):
            counts[c] += weight * n
    return sure, unsure


class _Sums(NamedTuple):
    """At some odds: causes found, what they are divided by, the gradient, minus the second derivative."""

    found: list[float]
    against: list[float]
    gradient: list[float]
    bend: list[list[float]]

    def size(self) -> float:
        return max(map(abs, self.gradient))


class _Look(NamedTuple):
    """Sums at some odds: of the jobs alone, and of all; the second derivative of all but the prior."""

    jobs: _Sums
    whole: _Sums
    bend: list[list[float]]


def _look(jobs: _Parted, known: _Parted, x: Odds) -> _Look:
    mine = _summed(*jobs, x)
    both = _together(mine, _summed(*known, x))
    whole = _together(both, _summed({ORDINARY: prior()}, [], x))
    # All odds times one factor are the same odds: this keeps such a step out of the matrix.
    bend, whole_bend = ([[each + 1.0 for each in row] for row in sums.bend] for sums in (both, whole))
    return _Look(mine, whole._replace(bend=whole_bend), bend)


def _together(one: _Sums, other: _Sums) -> _Sums:
    found, against, gradient = (_plus(a, b) for a, b in zip(one[:3], other[:3], strict=True))
    bend = [_plus(mine, its) for mine, its in zip(one.bend, other.bend, strict=True)]
    return _Sums(found, against, gradient, bend)


def _plus(one: list[float], other: list[float]) -> list[float]:
    return [a + b for a, b in zip(one, other, strict=True)]


def _summed(sure: dict[tuple, list[float]], unsure: list[_Unsure], x: Odds) -> _Sums:
    size = range(len(x))
    look = _Sums([0.0] * len(x), [0.0] * len(x), [0.0] * len(x), [[0.0] * len(x) for _ in size])
    counts = {has: list(causes) for has, causes in sure.items()}
    spreads: dict[tuple, _Spread] = {}
    for job in unsure:
        if job.has not in spreads:
            spreads[job.has] = _Spread(ratios(job.has, x))
            counts.setdefault(job.has, [0.0] * len(x))
        spreads[job.has].count(job, counts[job.has])
    for has, causes in counts.items():
        _add(look, has, x, causes)
    for has, spread in spreads.items():
        spread.take_from(look.bend, _parts(has, x))
    return look


class _Spread:
    """What is not sure of the jobs on a layout: variances of the causes K of each class, and of all, |K|."""

    def __init__(self, by: list[float]):
        """Starts with none; `by` is what a cause of each class multiplies a weight by."""
        self._by = by
        self._each = [[0.0] * len(by) for _ in by]
        self._with_all = [0.0] * len(by)  # the covariance of each class with all
        self._all = 0.0

    def count(self, job: _Unsure, counts: list[float]) -> None:
        """Adds the causes expected of a job to `counts`, and their variances here."""
        by, each, with_all = self._by, self._each, self._with_all
        values = []
        for value, present, _ in job.parts:
            for c, n in present:
                value *= by[c] if n == 1 else by[c] ** n
            values.append(value)
        scale = job.weight / sum(values)
        middle: dict[int, float] = {}
        middle_more = squares = 0.0
        for value, (_, present, more) in zip(values, job.parts, strict=True):
            share = scale * value
            middle_more += share * more
            squares += share * more * more
            for c, n in present:
                expected = share * n
                middle[c] = middle.get(c, 0.0) + expected
                with_all[c] += expected * more
                row = each[c]
                for d, other in present:
                    row[d] += expected * other
        middle_more /= job.weight
        self._all += squares - middle_more * middle_more * job.weight
        for c, found in middle.items():
            counts[c] += found
            with_all[c] -= found * middle_more
            row = each[c]
            for d, also in middle.items():
                row[d] -= found * also / job.weight

    def take_from(self, bend: list[list[float]], parts: list[float]) -> None:
        """Takes Var[K - |K| p] from the second derivative; p are `parts`."""
        for c, one in enumerate(parts):
            mine = self._with_all[c]
            for d, other in enumerate(parts):
                crossed = mine * other + one * self._with_all[d]
                bend[c][d] -= self._each[c][d] - crossed + self._all * one * other


def _add(look: _Sums, has: tuple, x: Odds, counts: list[float]) -> None:
    """Adds so many causes of each class on a layout."""
    whole, together = mean(has, x), sum(counts)
    parts = _parts(has, x)
    for c, part in enumerate(parts):
        look.found[c] += counts[c]
        look.against[c] += together * has[c] / whole
        look.gradient[c] += counts[c] - together * part
        look.bend[c][c] += together * part
        for d, other in enumerate(parts):
            look.bend[c][d] -= together * part * other


def _parts(has: tuple, x: Odds) -> list[float]:
    """Returns the part of each class in all causes of a layout."""
    whole = mean(has, x)
    return [n * each / whole for n, each in zip(has, x, strict=True)]


def _newton(look: _Sums) -> list[float] | None:
    """Returns a step of all logarithms, None where it is none to a maximum, or too long to be trusted."""
    root = cholesky(look.bend)
    step = solved(root, look.gradient) if root else None
    return step if step and max(map(abs, step)) < _SHORT else None


def _scaled(x: Odds) -> Odds:
    scale = mean(ORDINARY, DEFAULT_ODDS) / mean(ORDINARY, x)
    return tuple(each * scale for each in x)
