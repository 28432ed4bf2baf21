"""No code is ever printed for two sensors: a batch is new, or what is printed again is on no sensor."""

from ..codes import labels
from ..messages import message
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
                RULE,
                message("rules-printed-none-title"),
                message("rules-printed-none", code=code),
                message("rules-printed-none-do"),
            )
        if code in state.codes:
            return refusal(
                RULE,
                message("rules-printed-used-title"),
                message("rules-printed-used", code=name, sort=Unit(state, state.codes[code]).sort.identity),
                message("rules-printed-used-do"),
            )
        if code in printed or (batch and code not in batch["codes"]):
            return refusal(
                RULE,
                message("rules-printed-before-title"),
                message("rules-printed-before", code=name),
                message("rules-printed-before-do"),
            )
    return None
