"""How long the hand needed: the times between entries of one phone, action by action.

A time runs from one entry of a phone to its next one on the same job, with nothing of that phone between
them, and belongs to what the later entry records. A reach cannot be told from the pull that ends it, so both
are one time, `reach`, where a position is opened for the first time in a job, and `pull` afterwards.

Pauses are cut by Tukey's fence (1977): a time whose logarithm lies above the third quartile by more than one
and a half times the distance of the quartiles, among the times of that action. Whatever is longer than
`MOST_MINUTES` is one before that, and where there are fewer than `FOR_A_FENCE` times, that alone. What runs
backwards is a clock that was put right; it is left out and counted, and so is what was taken back.

Where two phones are at work on one job, what passed between two entries of one may have the work of the other
in it. Left out and counted is every time with an entry of another phone within, in the order of the log or by
their clocks, and every time that reaches into the stretch from the first to the last piece of work of
another: of two who work side by side the long times have an entry of the other within, and the short ones
alone would be left.
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


class _Stretch(NamedTuple):
    """From where to where in the history of a job, and from when to when by the clock of a phone."""

    first: int
    last: int
    start: int
    end: int

    def meets(self, other: "_Stretch") -> bool:
        in_order = self.first < other.last and other.first < self.last
        return in_order or (self.start < other.end and other.start < self.end)


class Spread(NamedTuple):
    """Times of one kind in minutes: the median, the quartiles, how many, and how many pauses were cut."""

    median: float
    low: float
    high: float
    number: int
    cut: int


def of_job(job: Job) -> tuple[list[Taken], int]:
    """Returns the times of a job, and how many were left out for a clock, a correction or a second phone."""
    last: dict[str, int] = {}  # phone -> number of its last entry
    opened: set[str] = set()
    under_way: dict[str, int] = {}  # position -> place of its fitting in `found`
    found: list[Taken] = []
    left_out = 0
    stretches = _stretches(job)
    for number, entry in enumerate(job.history):
        phone = entry["device"]
        start, last[phone] = last.get(phone), number
        action, position = _action(entry, opened)
        if not action or start is None or entry["seq"] != job.history[start]["seq"] + 1:
            continue
        before = job.history[start]
        ms = entry["at"] - before["at"]
        time = _Stretch(start, number, before["at"], entry["at"])
        is_shared = any(time.meets(each) for other, each in stretches if other != phone)
        if ms < 0 or entry["withdrawn"] is not None or not entry["understood"] or is_shared:
            left_out += 1
            under_way.pop(position, None)
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


def _stretches(job: Job) -> list[tuple[str, _Stretch]]:
    """Returns (phone, stretch) of each entry, and of all work of a phone; none where one phone did all."""
    entries = [(n, each["device"], each["at"]) for n, each in enumerate(job.history)]
    if len({phone for _, phone, _ in entries}) < 2:
        return []
    found = [(phone, _Stretch(n, n, at, at)) for n, phone, at in entries]
    work: dict[str, _Stretch] = {}
    for phone, each in found:
        if _action(job.history[each.first], set())[0]:
            known = work.get(phone, each)
            start, end = min(known.start, each.start), max(known.end, each.end)
            work[phone] = _Stretch(known.first, each.last, start, end)
    return found + list(work.items())


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
