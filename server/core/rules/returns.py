"""A decision at the counter is about a return that waits, and one against the proposal has its reason."""

from .. import phrases
from ..facts.returns import open_return
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
            "Nobody has received this {} at the counter.".format(asked.sort.unit), "Scan its label first."
        )
    if open_return(unit) is None:
        last = unit["returns"][-1]["decision"]
        return _refusal(
            "{} was {} already, signed by {}.".format(
                phrases.sentence_case(words.unit_name(asked)),
                words.DECIDED[last["decision"]],
                last["signed"],
            ),
            "Take that decision back first, or scan the {} again if it came in once more.".format(
                asked.sort.unit
            ),
        )
    if data["decision"] != data["proposed"] and not data["overrule"].strip():
        return _refusal("It goes against what the record says.", "Give your reason in a few words.")
    return None


def _refusal(sentence, do) -> dict:
    return refusal("returns", "This can't be decided yet", sentence, do)
