"""A figure is one that a meter shows, in the unit of its check."""

from ..errors import BadInput
from ..messages import message
from ..meter import figure
from .refusal import refusal

_FIELDS = ("value", "compared")


def refuse(fold, draft, job):
    """Refuse a figure that cannot be read; the refusal has its field under `fault`, as `form` has."""
    if draft["kind"] != "circuit_measured":
        return None
    data = draft["data"]
    check = job.sort.circuit_check(data["check"])
    if not check:
        return None
    for field in _FIELDS:
        typed = data.get(field, "")
        _, problem = figure.read(typed, check["unit"])
        if problem:
            fault = BadInput("data." + field, typed, message("rules-figure-wanted", unit=check["unit"]))
            found = refusal(
                "figure",
                message("rules-figure-title", field=field),
                message("rules-figure", found=fault.found, wanted=fault.wanted),
                message("rules-figure-do", problem=problem, unit=check["unit"]),
            )
            found["fault"] = fault.as_dict()
            return found
    return None
