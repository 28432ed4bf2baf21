"""A fact must be of a kind and form that we understand, about a job and positions and units that exist."""

from ..facts.kinds import KINDS
from ..messages import message
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse an unknown kind, malformed data, an unknown job, position or unit.

    Where one field is at fault, the refusal has it under `fault`: {"field", "found", "wanted", "message"}.
    """
    fault, why = _fault(fold, draft, job)
    if why is None:
        return None
    found = refusal("form", message("rules-not-recorded-title"), why, message("rules-form-do"))
    if fault:
        found["fault"] = fault.as_dict()
    return found


def _fault(fold, draft, job) -> tuple:
    """Return (BadInput or None, sentence); the sentence is None where nothing is wrong."""
    kind, data = KINDS.get(draft["kind"]), draft["data"]
    if kind is None:
        return None, message("rules-form-kind", kind=draft["kind"])
    fault = kind.problem(data)
    if fault:
        return fault, fault.message()
    why = kind.misplaced(data, draft.get("job"), job)
    return (None, why) if why else kind.unknown(data, job, fold.state.units) or (None, None)
