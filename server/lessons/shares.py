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

**Jobs for nothing.** What showed once and never again may have been a false alarm, or dirt that was cleaned
off. How many of such jobs had nothing depends on how rare all causes are, which no job can tell. So nothing
stands among the classes, at the odds false_alarm / shows of as many places as there are positions, with odds
of its own to be learned. Of them it is known beforehand what the learned rates of the self-test say, within
a factor of three (`composed.alarms`): all causes may be so much rarer than by default, or more frequent.
Were they held at the default's, blocked would come out too high where sensors fail seldom.

Bounds are by the jobs alone, and by that: where jobs cannot tell dirt from nothing, they are as wide.
"""

from collections.abc import Sequence
from typing import NamedTuple

from server.core.infer.variations import CLASSES
from server.lessons.beta import interval
from server.lessons.composed import DEFAULTS
from server.lessons.composed import odds
from server.lessons.maximum import Maximum


class Share(NamedTuple):
    """A class: its rate as learned, the bounds that the jobs alone give it, and its default."""

    value: float
    low: float
    high: float
    default: float
    found: float  # how many causes of it the jobs are expected to have had


def learned_at(maximum: Maximum) -> dict[str, Share]:
    """Returns each class with its rate at the maximum, and the bounds of 90 % by the jobs alone."""
    rates = scaled(maximum.odds[:-1])
    shares = {}
    for c, name in enumerate(CLASSES):
        low, high = _bounds(c, rates, maximum)
        shares[name] = Share(rates[c], low, high, DEFAULTS[c], maximum.found[c])
    return shares


def _bounds(c: int, rates: list[float], maximum: Maximum) -> tuple[float, float]:
    """Returns the bounds of the rate of a class, by the jobs alone.

    Beta by the causes found of it and of the others, as many as would leave its rate as unsure as it is. That
    is reckoned with the log odds of its part p of all rates: their derivative by the logarithm of x is 1 for
    its own, -p_d / (1 - p) for another class. What is not sure to be of the class makes its rate less sure,
    and so does what is not known of the others, for all rates together are fixed.
    """
    x, found, predicted, spread = maximum
    total = sum(found[:-1])
    if total <= 0.0 or spread is None:
        return 0.0, sum(DEFAULTS)
    parts = [rate / sum(DEFAULTS) for rate in rates]
    slopes = [1.0 if d == c else -part / (1.0 - parts[c]) for d, part in enumerate(parts)] + [0.0]
    variance = sum(
        one * other * spread[d][e] for d, one in enumerate(slopes) for e, other in enumerate(slopes)
    )
    share = min(max(predicted[c] / total, 1e-12), 1.0 - 1e-12)
    number = min(total, 1.0 / (variance * share * (1.0 - share)))
    low, high = interval(found[c] * number / total, number)
    return _rate(c, low, odds(share), x), _rate(c, high, odds(share), x)


def _rate(c: int, share: float, mine: float, x: tuple[float, ...]) -> float:
    """Returns the rate of a class where it has a share of the causes; `mine` are its odds at x."""
    if share in (0.0, 1.0):
        return share * sum(DEFAULTS)
    moved = tuple(each * odds(share) / mine if n == c else each for n, each in enumerate(x))
    return scaled(moved[:-1])[c]


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
