"""The part of the page that lets figures pass between yards, every sentence a message.

{"title", "note", "words": {"give", "choose", "weight", "weigh_in", "out"}, "weights": [{"value", "words"}],
"rows": [{"fingerprint", "words", "note"}], "none": what is said without any, "give_from": from how many jobs
on own figures are given, "" where there are so many}; `value` is a weight as the server takes it.
"""

from typing import Any

from server.core.evidence.assumptions import exact
from server.core.messages import message
from server.lessons.weighed_in import weight_of
from server.lessons.work import ENOUGH

_WEIGHTS = ("1", "0.5", "0.2", "0.05")


def yards_card(found: dict[str, Any]) -> dict[str, Any]:
    """Returns it, by the figures."""
    return {
        "title": message("lessons-yards"),
        "note": message("lessons-yards-note"),
        "words": {
            name: message(f"lessons-yards-{name}") for name in ("give", "choose", "weight", "weigh-in", "out")
        },
        "weights": [{"value": value, "words": exact(weight_of(value) * 10_000)} for value in _WEIGHTS],
        "rows": [_row(each) for each in found["yards"]],
        "none": "" if found["yards"] else message("lessons-yards-none"),
        "give_from": ""
        if found["counted_in_all"] >= ENOUGH
        else message("lessons-yards-give-from", least=ENOUGH),
    }


def _row(yard: dict[str, Any]) -> dict[str, Any]:
    return {
        "fingerprint": yard["fingerprint"],
        "words": message("lessons-yard-weighs", yard=yard["name"], weight=exact(yard["weight"] * 10_000)),
        "note": how_many(yard["jobs"], yard["first"], yard["last"]),
    }


def how_many(jobs: int, first: str, last: str) -> dict[str, Any]:
    """Returns how many jobs a yard's figures are of, and of which quarters; "" where its clock was wrong."""
    if not first:
        return message("lessons-jobs", count=jobs)
    if first == last:
        return message("lessons-yard-jobs-in", jobs=jobs, quarter=first)
    return message("lessons-yard-jobs", jobs=jobs, first=first, last=last)
