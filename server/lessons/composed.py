"""What jobs say of the classes of causes, and the likelihood of it; see `shares` for the derivation."""

from collections.abc import Sequence
from math import log
from typing import NamedTuple

from server.core.infer.case import RATES
from server.core.infer.variations import CLASSES

PRIOR_JOBS = 20.0
#: Jobs that came for nothing among those known before: of so many a third, or three times as many, are
#: still within the middle 90 %.
ALARMS = 2.24
#: Causes of each class on eight positions in two groups, and the places of a false alarm.
ORDINARY = (8, 8, 8, 2, 1, 8)


class Composed(NamedTuple):
    """What a job says: the causes its layout has by class, and (composition, weight) of each possible one.

    Last of the classes stands what is no cause: that a job was opened for nothing.
    """

    has: tuple[int, ...]
    weights: list[tuple[tuple[int, ...], float]]


Weighed = list[tuple[Composed, float]]
"""What jobs say, each with what it counts."""


def odds(chance: float) -> float:
    """Returns the odds of a chance."""
    return chance / (1.0 - chance)


DEFAULTS = tuple(RATES[name] for name in CLASSES)
#: Of each class, and of a false alarm as a cause that would open as many jobs.
DEFAULT_ODDS = (*(odds(rate) for rate in DEFAULTS), RATES["false_alarm"] / RATES["shows"])


def composition(causes: Sequence[int]) -> tuple[int, ...]:
    """Returns how many of each class are present, nothing among them, of how many causes of each are."""
    return (*causes, 0 if any(causes) else 1)


def layout(has: Sequence[int]) -> tuple[int, ...]:
    """Returns how many of each class a layout has of which the causes are known: any position may alarm."""
    return (*has, has[0])


def counted(job: Composed, number: float) -> tuple[Composed, float]:
    """Returns what so many jobs that say the same count."""
    return job, number * weight_of(job)


def weight_of(job: Composed) -> float:
    """Returns what a job counts: one, however many causes are expected in it."""
    expected = sum(weight * sum(causes) for causes, weight in job.weights)
    return 1.0 / max(1.0, expected)


def log_posterior(x: tuple[float, ...], jobs: list[Composed], alarm: float = DEFAULT_ODDS[-1]) -> float:
    """Returns the logarithm of prior times likelihood at odds x, but for a constant.

    `alarm` are the odds with which a position is known to alarm for nothing.
    """
    scale = log(mean(ORDINARY, x) / mean(ORDINARY, DEFAULT_ODDS))
    total = sum(n * (log(x[c] / DEFAULT_ODDS[c]) - scale) for c, n in enumerate(prior()))
    for job, weight in [*((job, weight_of(job)) for job in jobs), *alarms(alarm)]:
        total += weight * log(sum(_weighed(job, ratios(job.has, x))))
    return total


def alarms(alarm: float) -> Weighed:
    """Returns what is known of jobs that come for nothing, as jobs that say it."""
    size = range(len(CLASSES))
    causes = [tuple(int(c == d) for d in range(len(DEFAULT_ODDS))) for c in range(len(DEFAULT_ODDS))]
    parts = [ORDINARY[c] * DEFAULT_ODDS[c] for c in size]
    nothing = Composed(ORDINARY, [(causes[-1], 1.0)])
    something = Composed(ORDINARY, [(causes[c], parts[c] / sum(parts)) for c in size])
    return [(nothing, ALARMS), (something, ALARMS * sum(parts) / (ORDINARY[-1] * alarm))]


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


def _weighed(job: Composed, ratios: list[float]) -> list[float]:
    values = []
    for causes, weight in job.weights:
        for ratio, n in zip(ratios, causes, strict=True):
            if n:
                weight *= ratio if n == 1 else ratio**n
        values.append(weight)
    return values
