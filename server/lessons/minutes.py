"""How long the hand needed: the times between entries of one phone, action by action.

A time runs from one entry of a phone to its next one on the same job, with nothing of that phone between
them, and belongs to what the later entry records. A reach cannot be told from the pull that ends it, so both
are one time, `reach`, where a position is opened for the first time in a job, and `pull` afterwards.

Pauses are cut by Tukey's fence (1977): a time whose logarithm lies above the third quartile by more than one
and a half times the distance of the quartiles, among the times of that action. Whatever is longer than
`MOST_MINUTES` is one before that, and where there are fewer than `FOR_A_FENCE` times, that alone. What runs
backwards is a clock that was put right; it is left out and counted, and so is what was taken back.
"""

from bisect import bisect_right
from math import exp
from math import log
from typing import NamedTuple

from server.core.infer.case import MINUTES
from server.core.state.job import Job

MOST_MINUTES = 60
FOR_A_FENCE = 8
_MS = 60_000

REACH, PULL, PLUG, FIT, TEST = "reach", "pull", "plug", "fit", "test"
_ALONE = {"test_run": TEST, "cleaned": "clean", "circuit_measured": "meter", "circuit_repaired": "repair",
          "listened": "listen"}  # fmt: skip
ACTIONS = (REACH, PULL, PLUG, FIT, TEST, "clean", "meter", "listen", "repair")
#: These may be learned; a repair and a measurement are too unlike one another to be one figure.
LEARNED = (PULL, PLUG, FIT, TEST)


class Taken(NamedTuple):
    """A time: of which action, at which position ("" for none), in milliseconds."""

    action: str
    position: str
    ms: int


class Spread(NamedTuple):
    """Times of one kind in minutes: the median, the quartiles, how many, and how many pauses were cut."""

    median: float
    low: float
    high: float
    number: int
    cut: int


def of_job(job: Job) -> tuple[list[Taken], int]:
    """Returns the times of a job, and how many were left out for a clock or a correction."""
    last: dict[str, dict] = {}
    opened: set[str] = set()
    under_way: dict[str, int] = {}  # position -> place of its fitting in `found`
    found: list[Taken] = []
    left_out = 0
    for entry in job.history:
        before, last[entry["device"]] = last.get(entry["device"]), entry
        action, position = _action(entry, opened)
        if not action or before is None or entry["seq"] != before["seq"] + 1:
            continue
        ms = entry["at"] - before["at"]
        if ms < 0 or entry["withdrawn"] is not None or not entry["understood"]:
            left_out += 1
            continue
        if action == "home":  # the lock and the look at the seat belong to the fitting before
            if position in under_way:
                fitting = found[under_way[position]]
                found[under_way[position]] = fitting._replace(ms=fitting.ms + ms)
            continue
        if action in {PLUG, FIT}:
            under_way[position] = len(found)
        found.append(Taken(action, position, ms))
    return [each for each in found if each.ms > 0], left_out


def planned(taken: Taken, reach: dict[str, float]) -> float:
    """Returns the minutes that the plan reckons for what a time was spent on; `reach` is by position."""
    if taken.action == REACH:
        return reach.get(taken.position, MINUTES["reach"]) + MINUTES["pull"]
    return MINUTES[taken.action]


def spread(ordered: list[int]) -> Spread | None:
    """Returns how times in milliseconds spread without the pauses among them, None where none is left.

    They come in order, the shortest first.
    """
    short = ordered[: bisect_right(ordered, MOST_MINUTES * _MS)]
    if not short:
        return None
    fence = float(short[-1])
    if len(short) >= FOR_A_FENCE:
        first, third = log(_at(short, 0.25)), log(_at(short, 0.75))
        fence = exp(third + 1.5 * (third - first)) * (1.0 + 1e-9)
    kept = short[: bisect_right(short, fence)]
    low, median, high = (_at(kept, part) / _MS for part in (0.25, 0.5, 0.75))
    return Spread(median, low, high, len(kept), len(ordered) - len(kept))


def _action(entry: dict, opened: set[str]) -> tuple[str, str]:
    """Returns (action, position) of an entry; "home" is what ends a fitting, "" nothing that is timed."""
    kind, data = entry["kind"], entry["data"]
    if kind in _ALONE:
        return _ALONE[kind], data.get("position", "")
    if kind == "unit_pulled":
        again = data["position"] in opened
        opened.add(data["position"])
        return PULL if again else REACH, data["position"]
    if kind == "unit_fitted":
        return PLUG if data.get("hanging") else FIT, data["position"]
    return ("home", data["position"]) if kind in {"connector_locked", "fit_checked"} else ("", "")


def _at(ordered: list[int], part: float) -> float:
    """Returns a quantile of ordered values, between two of them by a straight line."""
    place = part * (len(ordered) - 1)
    low = int(place)
    high = min(low + 1, len(ordered) - 1)
    return ordered[low] + (ordered[high] - ordered[low]) * (place - low)
