"""No code is ever printed for two sensors: a batch is new, or what is printed again is on no sensor."""

from ..codes import labels
from ..state.printed import batch_of
from ..state.printed import printed_codes
from ..state.unit import Unit
from .refusal import refusal

RULE = "printing"


def refuse(fold, draft, job):
    """Refuse codes that are no printed ones, that lie about on paper, or that a sensor has."""
    if draft["kind"] != "labels_printed":
        return None
    state, data = fold.state, draft["data"]
    batch = batch_of(state, data["batch"])
    printed = {} if batch else printed_codes(state)
    for code in data["codes"]:
        name = labels.shown(code)
        if not labels.may_be_issued(code) or code[0] not in labels.PRINT_FIRST:
            return refusal(
                RULE, "Not a label code", "{} is no code that is printed.".format(code), "Draw others."
            )
        if code in state.codes:
            return refusal(
                RULE,
                "This label is in use",
                "{} is on {}, or was.".format(name, Unit(state, state.codes[code]).sort.a_unit),
                "Print the others: open the batch again.",
            )
        if code in printed or (batch and code not in batch["codes"]):
            return refusal(
                RULE,
                "This label was printed before",
                "{} belongs to another batch.".format(name),
                "Print new labels once more: others are drawn.",
            )
    return None
