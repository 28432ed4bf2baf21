"""What is recorded keeps within what every host can show, and is what a person can mean."""

from ..errors import BadInput
from ..facts.kinds import KINDS
from ..log import ids
from ..messages import message
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse what the bounds of the kind's fields leave out, and the id of a new job outside the pattern.

    Refuse, too, what nobody can mean, as a wire of no length: an older phone may have recorded it.

    The refusal has the field under `fault`, as that of `form` does.
    """
    fault = KINDS[draft["kind"]].out_of_bounds(draft["data"])
    if fault is None and draft.get("job") and job is None and not ids.fits(draft["job"]):
        fault = BadInput("job", draft["job"], message("refusals-id"))
    if fault is None:
        fault = KINDS[draft["kind"]].not_meant(draft["data"])
    if fault is None:
        return None
    found = refusal("bounds", message("rules-not-recorded-title"), fault.message(), message("rules-form-do"))
    found["fault"] = fault.as_dict()
    return found
