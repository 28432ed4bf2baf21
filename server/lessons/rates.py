"""The rates of readings: of the self-test over all jobs, of other checks by counts where the cause is proven.

`showing` makes `shows` and `false_alarm` of every job. What listening and measuring say is counted where a
proven cause acted or none did, as Beta posteriors. The prior is the default with the weight of twenty
jobs, so that a few move little. The bounds of 90 % are of the readings alone (`beta.interval`):
leaning on the default they would hide where it is wrong.
"""

from collections.abc import Mapping
from collections.abc import Sequence
from typing import NamedTuple

from server.core.infer.case import RATES
from server.lessons.beta import interval
from server.lessons.showing import Base
from server.lessons.showing import Said
from server.lessons.showing import maximum

#: What a default weighs, in readings: of the self-test what twenty jobs have after their first test, 2.4 of a
#: fault that is there and 26 of a position each (tests/bench/lessons.py, the nominal world); else one a job.
PRIOR = Base(48.0, 520.0)
PRIOR_CHECKS = 20
#: What may be learned besides the classes of causes; shown once there is a reading.
CHECKS = ("meter_sees", "meter_false", "tick_unit", "tick_circuit", "tick_feed", "tick_control", "tick_false")
DEFAULT = Base(RATES["shows"], RATES["false_alarm"])


class Rate(NamedTuple):
    """A rate: as learned, the bounds that the readings alone give it, its default, and the readings."""

    value: float
    low: float
    high: float
    default: float
    hits: float
    tries: float


def learned(readings: Said, checks: Mapping[str, Sequence[float]], start: Base = DEFAULT) -> dict[str, Rate]:
    """Returns each rate of which there are readings; `checks` is rate -> [hits, readings].

    The search for the rates of the self-test begins at `start`.
    """
    found = {}
    for name, rate in zip(Base._fields, maximum(readings, DEFAULT, PRIOR, start), strict=True):
        if rate.tries > 0.0:
            bounds = interval(rate.hits * rate.known, rate.tries * rate.known)
            found[name] = Rate(rate.value, *bounds, RATES[name], rate.hits, rate.tries)
    for name in CHECKS:
        hits, tries = checks.get(name, [0, 0])
        if tries:
            value = (hits + PRIOR_CHECKS * RATES[name]) / (tries + PRIOR_CHECKS)
            found[name] = Rate(value, *interval(hits, tries), RATES[name], hits, tries)
    return found
