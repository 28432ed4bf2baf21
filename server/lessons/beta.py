"""Quantiles of the Beta distribution, without a library of statistics.

The regularised incomplete beta function by its continued fraction (DLMF 8.17.22, evaluated by the method of
Lentz), and its inverse by Halley's steps, by halving where one leaves the bounds. SciPy's quantiles are met
to 1e-9 (tests/server/lessons/test_beta.py).
"""

from math import exp
from math import lgamma
from math import log
from math import log1p
from math import sqrt
from statistics import NormalDist

_TINY = 1e-300
_MOST_TERMS = 10_000
_MOST_STEPS = 300
#: What of the Beta posterior lies beyond Sterne's bounds, by how many were hit (of Poisson's distribution,
#: tests/server/lessons/test_beta.py); from eight on as good as alike.
_BELOW = (0.05, 0.0603, 0.0804, 0.0875, 0.0908, 0.0795, 0.0697, 0.0598, 0.05)
_ABOVE = (0.0144, 0.0280, 0.0332, 0.0347, 0.0343, 0.0330, 0.0387, 0.0443, 0.05)
_STILL = 1e-5  # Halley: each step triples the right digits, so that after one so short there are fifteen


def quantile(share: float, a: float, b: float) -> float:
    """Returns the value below which a share of Beta(a, b) lies."""
    low, high, x = 0.0, 1.0, _guess(share, a, b)
    for _ in range(_MOST_STEPS):
        below, density = _below(x, a, b)
        if below < share:
            low = x
        else:
            high = x
        step = (below - share) / density if density > _TINY else 1.0
        # Halley: with the slope of the density's logarithm a good guess is exact in two or three steps.
        bend = 0.5 * step * ((a - 1.0) / x - (b - 1.0) / (1.0 - x))
        now = x - step / (1.0 - min(bend, 0.5))
        if low <= now <= high:
            if abs(now - x) <= _STILL * min(x, 1.0 - x):
                return now
        else:
            now = (low + high) / 2.0
            if now in (low, high):
                return now
        x = now
    return x


def _guess(share: float, a: float, b: float) -> float:
    """Returns about where a quantile lies: by the normal distribution on the scale of the log odds.

    The logarithm of the odds has about the middle log(a / b) and the variance 1/a + 1/b.
    """
    z = NormalDist().inv_cdf(share)
    return 1.0 / (1.0 + exp(-max(-500.0, min(500.0, log(a / b) + z * sqrt(1.0 / a + 1.0 / b)))))


def _below(x: float, a: float, b: float) -> tuple[float, float]:
    """Returns the share below x, and the density there."""
    if x <= 0.0:
        return 0.0, 0.0
    if x >= 1.0:
        return 1.0, 0.0
    front = exp(a * log(x) + b * log1p(-x) + lgamma(a + b) - lgamma(a) - lgamma(b))
    density = front / (x * (1.0 - x))
    # The fraction converges quickly on this side of the mean; beyond it the mirror image does.
    if x < (a + 1.0) / (a + b + 2.0):
        return front * _fraction(x, a, b) / a, density
    return 1.0 - front * _fraction(1.0 - x, b, a) / b, density


def interval(hits: float, tries: float) -> tuple[float, float]:
    """Returns the bounds between which a chance lies, nine times in ten, by its counts alone.

    Of the Beta posterior after Jeffreys' prior, Beta(hits + 1/2, misses + 1/2), the middle part; where
    nothing was hit, or everything, it reaches to the end. Of few hits, or few misses, the two tails are not
    alike: a truth of which few are expected can be missed on one side alone. They are those of Sterne (1954)
    with half of the count itself (mid-p, Lancaster 1961; both from memory), which of all bounds by the
    likeliest counts hold each truth as nearly nine times in ten as whole hits allow. Nothing in n tries
    leaves up to 3 in n.

    Over all truths they hold the truth that often; for one truth more or less often, for hits are whole:
    where about one is expected in 82 to 98 of 100, from three on in 86 to 95 (`tests/bench/lessons.py` has
    the exact sums).
    """
    misses = max(0.0, tries - hits)
    below, above = _tail(_BELOW, hits), _tail(_ABOVE, hits)
    if misses < hits:
        below, above = _tail(_ABOVE, misses), _tail(_BELOW, misses)
    low = 0.0 if hits <= 0.0 else quantile(below, hits + 0.5, misses + 0.5)
    high = 1.0 if hits >= tries else quantile(1.0 - above, hits + 0.5, misses + 0.5)
    return low, high


def _tail(tails: tuple[float, ...], hits: float) -> float:
    """Returns the tail for so many hits, in between by a straight line, and beyond the last that one."""
    n = int(min(hits, len(tails) - 1))
    after = tails[min(n + 1, len(tails) - 1)]
    return tails[n] + (after - tails[n]) * min(hits - n, 1.0)


def _fraction(x: float, a: float, b: float) -> float:
    c = 1.0
    d = 1.0 - (a + b) * x / (a + 1.0)
    d = 1.0 / (d if abs(d) > _TINY else _TINY)
    value = d
    for m in range(1, _MOST_TERMS):
        twice = a + 2 * m
        for step in (
            m * (b - m) * x / ((twice - 1.0) * twice),
            -(a + m) * (a + b + m) * x / (twice * (twice + 1.0)),
        ):
            d = 1.0 + step * d
            d = 1.0 / (d if abs(d) > _TINY else _TINY)
            c = 1.0 + step / c
            c = c if abs(c) > _TINY else _TINY
            value *= c * d
        if abs(c * d - 1.0) < 1e-16:
            break
    return value
