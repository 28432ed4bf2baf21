"""Quantiles of the Beta distribution, without a library of statistics.

The regularised incomplete beta function by its continued fraction (DLMF 8.17.22, evaluated by the method of
Lentz), and its inverse by bisection: it rises from 0 to 1, so halving always ends. SciPy's quantiles are met
to 1e-9 (tests/server/lessons/test_beta.py).
"""

from math import exp
from math import lgamma
from math import log
from math import log1p

_TINY = 1e-300
_MOST_TERMS = 10_000
_HALVINGS = 200


def share_below(x: float, a: float, b: float) -> float:
    """Returns the share of Beta(a, b) that lies below x."""
    if x <= 0.0:
        return 0.0
    if x >= 1.0:
        return 1.0
    front = exp(a * log(x) + b * log1p(-x) + lgamma(a + b) - lgamma(a) - lgamma(b))
    # The fraction converges quickly on this side of the mean; beyond it the mirror image does.
    if x < (a + 1.0) / (a + b + 2.0):
        return front * _fraction(x, a, b) / a
    return 1.0 - front * _fraction(1.0 - x, b, a) / b


def quantile(share: float, a: float, b: float) -> float:
    """Returns the value below which a share of Beta(a, b) lies."""
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2.0
        if middle in (low, high):
            break
        if share_below(middle, a, b) < share:
            low = middle
        else:
            high = middle
    return (low + high) / 2.0


def interval(hits: float, tries: float, part: float = 0.9) -> tuple[float, float]:
    """Returns the bounds between which a chance lies by its counts alone.

    Of the Beta posterior after Jeffreys' prior, Beta(hits + 1/2, misses + 1/2), the middle `part`; where
    nothing was hit, or everything, it reaches to the end.
    """
    a, b, tail = hits + 0.5, max(0.0, tries - hits) + 0.5, (1.0 - part) / 2.0
    low = 0.0 if hits <= 0.0 else quantile(tail, a, b)
    high = 1.0 if hits >= tries else quantile(1.0 - tail, a, b)
    return low, high


def _fraction(x: float, a: float, b: float) -> float:
    c, d = 1.0, _not_nothing(1.0 - (a + b) * x / (a + 1.0))
    d = 1.0 / d
    value = d
    for m in range(1, _MOST_TERMS):
        for step in (
            m * (b - m) * x / ((a + 2 * m - 1.0) * (a + 2 * m)),
            -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1.0)),
        ):
            d = 1.0 / _not_nothing(1.0 + step * d)
            c = _not_nothing(1.0 + step / c)
            value *= c * d
        if abs(c * d - 1.0) < 1e-16:
            break
    return value


def _not_nothing(value: float) -> float:
    return value if abs(value) > _TINY else _TINY
