"""While a move is under way, each position gets the unit that the plan names, and no other."""

from ..messages import message
from ..state.unit import Unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse fitting another unit than the plan names, with both names."""
    if draft["kind"] != "unit_fitted" or not job.move:
        return None
    data, state = draft["data"], fold.state
    planned = job.move["fitted"].get(data["position"])
    if planned is None or planned == data["unit"]:
        return None
    if job.move["before"].get(data["position"]) == data["unit"]:
        return None  # straight back where it came from: always safe
    seen = words.unit_name(Unit(state, data["unit"], job))
    belongs = words.unit_name(Unit(state, planned, job))
    return refusal(
        "planned_unit",
        message("rules-planned-title", sort=job.sort.identity),
        message("rules-planned", unit=seen, planned=belongs),
        message("rules-planned-do", unit=seen, planned=belongs),
    )
