"""What jobs say of the classes of causes, and the likelihood of it; see `shares` for the derivation."""

from collections.abc import Sequence
from math import log
from typing import NamedTuple

from server.core.infer.case import RATES
from server.core.infer.variations import CLASSES

PRIOR_JOBS = 20.0
#: Causes of each class on eight positions in two groups.
ORDINARY = (8, 8, 8, 2, 1)


class Composed(NamedTuple):
    """What a job says: the causes its layout has by class, and (composition, weight) of each possible one."""

    has: tuple[int, ...]
    weights: list[tuple[tuple[int, ...], float]]


Weighed = list[tuple[Composed, float]]
"""What jobs say, each with what it counts."""


def odds(chance: float) -> float:
    """Returns the odds of a chance."""
    return chance / (1.0 - chance)


DEFAULTS = tuple(RATES[name] for name in CLASSES)
DEFAULT_ODDS = tuple(odds(rate) for rate in DEFAULTS)


def counted(job: Composed, number: float) -> tuple[Composed, float]:
    """Returns what so many jobs that say the same count."""
    return job, number * weight_of(job)


def weight_of(job: Composed) -> float:
    """Returns what a job counts: one, however many causes are expected in it."""
    expected = sum(weight * sum(causes) for causes, weight in job.weights)
    return 1.0 / max(1.0, expected)


def log_posterior(x: tuple[float, ...], jobs: list[Composed]) -> float:
    """Returns the logarithm of prior times likelihood at odds x, but for a constant."""
    scale = log(mean(ORDINARY, x) / mean(ORDINARY, DEFAULT_ODDS))
    total = sum(n * (log(x[c] / DEFAULT_ODDS[c]) - scale) for c, n in enumerate(prior()))
    for job in jobs:
        total += weight_of(job) * log(sum(_weighed(job, ratios(job.has, x))))
    return total


def prior() -> list[float]:
    """Returns how many causes of each class the prior has seen."""
    whole = mean(ORDINARY, DEFAULT_ODDS)
    return [PRIOR_JOBS * n * each / whole for n, each in zip(ORDINARY, DEFAULT_ODDS, strict=True)]


def mean(has: Sequence[float], x: Sequence[float]) -> float:
    """Returns the sum of the odds of all causes that a layout has."""
    return sum(n * each for n, each in zip(has, x, strict=True))


def ratios(has: tuple[int, ...], x: Sequence[float]) -> list[float]:
    """Returns what a cause of each class multiplies the weight of a composition by, at odds x."""
    scale = mean(has, DEFAULT_ODDS) / mean(has, x)
    return [scale * each / default for each, default in zip(x, DEFAULT_ODDS, strict=True)]


def likely(job: Composed, ratios: list[float]) -> list[tuple[tuple[int, ...], float]]:
    """Returns (composition, probability) at the odds that the ratios are of."""
    if len(job.weights) == 1:
        return [(job.weights[0][0], 1.0)]
    values = _weighed(job, ratios)
    total = sum(values)
    return [(causes, value / total) for (causes, _), value in zip(job.weights, values, strict=True)]


def expected(chances: list[tuple[tuple[int, ...], float]]) -> list[float]:
    """Returns how many causes of each class are expected."""
    found = [0.0] * len(DEFAULTS)
    for causes, chance in chances:
        for c, n in enumerate(causes):
            if n:
                found[c] += n * chance
    return found


def _weighed(job: Composed, ratios: list[float]) -> list[float]:
    values = []
    for causes, weight in job.weights:
        for ratio, n in zip(ratios, causes, strict=True):
            if n:
                weight *= ratio if n == 1 else ratio**n
        values.append(weight)
    return values
