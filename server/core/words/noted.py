"""Reasons on record: those that the app gave are codes and have words; all else stays as it was typed."""

from ..messages import message
from ..parts.sort import Sort

_SAID = {
    "stopped-by-hand": "guide-noted-stopped-by-hand",
    "settled-already": "guide-noted-settled-already",
    "checks-done": "guide-noted-checks-done",
    "tested-there": "guide-noted-tested-there",
    "spare-stays": "guide-noted-spare-stays",
    "left-empty": "guide-noted-left-empty",
    "slip": "guide-noted-slip",
    "same-test": "guide-noted-same-test",
    "mixed-by-then": "guide-noted-mixed-by-then",
    "not-mixed": "guide-noted-not-mixed",
    "no-repair": "guide-noted-no-repair",
    "no-fault-shown": "guide-noted-no-fault-shown",
    "out-of-reach": "guide-noted-out-of-reach",
    "no-meter": "guide-noted-no-meter",
}


def noted(sort: Sort, reason: str):
    """Return a reason as it is shown: a message, or the text that somebody typed."""
    if reason == "quiet-in-use":
        return sort.walk.accepted
    return message(_SAID[reason]) if reason in _SAID else reason
