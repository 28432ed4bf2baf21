"""No code is ever printed for two sensors: a batch is new, or what is printed again is on no sensor.

Nor is a label printed again, or taken out of use, that is out of use already.
"""

from ..codes import labels
from ..messages import message
from ..state.printed import batch_of
from ..state.printed import is_spoiled
from ..state.printed import printed_codes
from ..state.unit import Unit
from .refusal import refusal

RULE = "printing"


def refuse(fold, draft, job):
    """Refuse codes that are no printed ones, that lie about on paper, that a sensor has, or out of use."""
    spoiled = draft["kind"] == "labels_spoiled"
    if draft["kind"] != "labels_printed" and not spoiled:
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
        if is_spoiled(state, code):
            return refusal(
                RULE,
                message("rules-code-void-title"),
                message("rules-code-void", code=name),
                message("rules-printed-spoiled-do"),
            )
        if code in printed or (spoiled and batch is None) or (batch and code not in batch["codes"]):
            return refusal(
                RULE,
                message("rules-printed-before-title"),
                message("rules-printed-before", code=name),
                message("rules-printed-before-do"),
            )
    return None
