"""The rates of readings, from those whose cause is known by proof, as Beta posteriors.

The prior is the default with the weight of `PRIOR` readings, so that a few readings move little. The bounds
of 90 % are of the readings alone (`beta.interval`): leaning on the default they would hide where it is wrong.
"""

from typing import NamedTuple

from server.core.infer.case import RATES
from server.lessons.beta import interval

PRIOR = 20
#: What may be learned besides the classes of causes; shown once there is a reading.
NAMES = ("shows", "false_alarm", "meter_sees", "meter_false", "tick_unit", "tick_circuit", "tick_feed",
         "tick_control", "tick_false")  # fmt: skip


class Rate(NamedTuple):
    """A rate: as learned, the bounds that the readings alone give it, its default, and the readings."""

    value: float
    low: float
    high: float
    default: float
    hits: float
    tries: float


def learned(counts: dict[str, list[float]]) -> dict[str, Rate]:
    """Returns each rate of which there are readings; `counts` is rate -> [hits, readings]."""
    found = {}
    for name in NAMES:
        hits, tries = counts.get(name, [0, 0])
        if tries:
            value = (hits + PRIOR * RATES[name]) / (tries + PRIOR)
            found[name] = Rate(value, *interval(hits, tries), RATES[name], hits, tries)
    return found


def together(many: list[dict[str, list[int]]]) -> dict[str, list[float]]:
    """Returns the counts of several jobs as one."""
    total: dict[str, list[float]] = {}
    for counts in many:
        for name, (hits, tries) in counts.items():
            before = total.get(name, [0, 0])
            total[name] = [before[0] + hits, before[1] + tries]
    return total
