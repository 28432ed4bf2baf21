"""A fact must be of a kind and form that we understand, about a job and positions that exist."""

from ..facts.fold import misfit
from ..facts.kinds import KINDS
from ..state.state import EMPTY
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse an unknown kind, malformed data, an unknown job, position or unit."""
    kind, data = draft["kind"], draft["data"]
    why: str | None
    if kind not in KINDS:
        why = "The kind {} is not known.".format(kind)
    else:
        why = misfit(kind, data, draft.get("job"), job)
        if why is None and kind not in ("unit_added", "mixup_stopped", "photo_taken", "return_received"):
            unit = data.get("unit")
            left_empty = kind == "left_deliberately" and unit == EMPTY
            if unit and not left_empty and unit not in fold.state.units:
                why = "This sensor is not on record."
    if why is None:
        return None
    return refusal("form", "This can't be recorded", why, "Go back and enter it again.")
