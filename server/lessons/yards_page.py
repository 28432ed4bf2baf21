"""The part of the page that lets figures pass between yards, every sentence a message.

{"title", "note", "words": {"give", "choose", "weight", "weigh_in", "out"}, "weights": [{"value", "words"}],
"rows": [{"fingerprint", "words", "note"}]}; `value` is a weight as the server takes it.
"""

from typing import Any

from server.core.evidence.assumptions import exact
from server.core.messages import message

_WEIGHTS = {"1": 100, "0.5": 50, "0.2": 20, "0.05": 5}


def yards_card(found: dict[str, Any]) -> dict[str, Any]:
    """Returns it, by the figures."""
    return {
        "title": message("lessons-yards"),
        "note": message("lessons-yards-note"),
        "words": {
            name: message(f"lessons-yards-{name}") for name in ("give", "choose", "weight", "weigh-in", "out")
        },
        "weights": [
            {"value": value, "words": exact(percent * 10_000)} for value, percent in _WEIGHTS.items()
        ],
        "rows": [_row(each) for each in found["yards"]],
    }


def _row(yard: dict[str, Any]) -> dict[str, Any]:
    span = {name: yard[name] for name in ("jobs", "first", "last")}
    return {
        "fingerprint": yard["fingerprint"],
        "words": message("lessons-yard-weighs", yard=yard["name"], weight=exact(yard["weight"] * 10_000)),
        "note": message("lessons-yard-jobs", **span),
    }
