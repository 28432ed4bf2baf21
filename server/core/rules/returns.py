"""A decision at the counter is about a return that waits, and one against the proposal has its reason."""

from ..facts.returns import open_return
from ..messages import message
from ..state.unit import Unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse deciding on what was not received or is decided, and overruling without a reason."""
    if draft["kind"] != "return_decided":
        return None
    data, unit = draft["data"], fold.state.units[draft["data"]["unit"]]
    asked = Unit(fold.state, unit["id"], job)
    if not unit["returns"]:
        return _refusal(
            message("rules-returns-not-received", sort=asked.sort.identity),
            message("rules-returns-not-received-do"),
        )
    if open_return(unit) is None:
        last = unit["returns"][-1]["decision"]
        return _refusal(
            message(
                "rules-returns-decided",
                unit=words.unit_name(asked),
                decision=last["decision"],
                signed=last["signed"],
            ),
            message("rules-returns-decided-do", sort=asked.sort.identity),
        )
    if data["decision"] != data["proposed"] and not data["overrule"].strip():
        return _refusal(message("rules-returns-against"), message("rules-returns-against-do"))
    return None


def _refusal(sentence, do) -> dict:
    return refusal("returns", message("rules-returns-title"), sentence, do)
