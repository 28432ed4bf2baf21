"""The unit comes back in time. How many days that is, is for each counter to say (ours: 30)."""

from ..messages import message
from ..words import words
from .check import check


def look(state, case):
    """Refuse a unit that came off too long ago, hold one whose day is to come; no window lets all through."""
    unit, days = case["unit"], case["window_days"]
    if unit is None or case["unknown"] or not days:
        return None
    off = [move["at"] for move in unit["moves"] if move["what"] == "out" and move["position"]]
    if not off:
        return check("hold", message("returns-window-unknown-title"), message("returns-window-unknown"))
    if off[-1] > case["now"] + words.DAY_MS:  # no clock of a phone is trusted, least of all one that is ahead
        return check("hold", message("returns-window-ahead-title"), message("returns-window-ahead"))
    when = words.ago(off[-1], case["now"])
    said = message("returns-window", ago=when, days=days)
    if case["now"] - off[-1] > days * words.DAY_MS:
        return check("fail", message("returns-window-late-title"), said)
    return check("pass", message("returns-window-title"), said)
