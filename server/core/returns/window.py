"""The unit comes back in time. How many days that is, is for each counter to say (ours: 30)."""

from .. import phrases
from ..words import words
from .check import check


def look(state, case):
    """Refuse a unit that came off its vehicle longer ago than the window; no window lets all through."""
    unit, days = case["unit"], case["window_days"]
    if unit is None or case["unknown"] or not days:
        return None
    off = [move["at"] for move in unit["moves"] if move["what"] == "out" and move["position"]]
    if not off:
        return check("hold", "Not known how old", "Nothing on record says when it came off a vehicle.")
    when = words.ago(off[-1], case["now"])
    window = "the return window is {}".format(phrases.counted(days, "day"))
    if case["now"] - off[-1] > days * words.DAY_MS:
        return check("fail", "Too late", "It came off {}; {}.".format(when, window))
    return check("pass", "In time", "It came off {}; {}.".format(when, window))
