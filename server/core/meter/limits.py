"""Limits of what is measured: which reading a figure stands for, where it stands for one."""

from collections import namedtuple

from . import figure

# An ohm check: above `most` micro-ohms it is bad; what is not is `below`, "good" or None (it does not tell);
# from `nearly_open` on it is what OL is, `open`.
AtMost = namedtuple("AtMost", ("most", "below", "nearly_open", "open"))

# A voltage held against the same one where it works: good within `within` microvolts of it, bad if lower;
# less than `nothing` is bad without it.
Beside = namedtuple("Beside", ("within", "nothing"))


def judge(check: dict, value, compared=None) -> str | None:
    """Return the reading that a figure of `check` stands for, "good" or "bad", or None.

    `value` and `compared`, the figure where it works, are as `figure.read` returns them.
    """
    limit = check.get("limit")
    if limit is None or value is None:
        return None
    if isinstance(limit, AtMost):
        if value == figure.OPEN or value >= limit.nearly_open:
            return limit.open
        return "bad" if value > limit.most else limit.below
    if value < limit.nothing:
        return "bad"
    if compared is None or value > compared + limit.within:
        return None
    return "bad" if value < compared - limit.within else "good"
