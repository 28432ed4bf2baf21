"""A unit that leaves its position carries a label before it is put down.

So at most one unit without a label is in hand, and it can only get a label or go straight back.
"""

from ..messages import message
from ..state.unit import Unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse pulling, parking or fitting elsewhere while an unlabelled unit is in hand."""
    kind, data, state = draft["kind"], draft["data"], fold.state
    if kind == "unit_pulled":
        for unit in job.in_hand():
            if not state.units[unit]["code"]:
                return _label_it(Unit(state, unit, job))
    if kind in ("unit_fitted", "unit_moved"):
        unit = state.units[data["unit"]]
        back = kind == "unit_fitted" and unit["pulled_from"] == data["position"]
        if unit["place"] == "out" and not unit["code"] and not back:
            return _label_it(Unit(state, data["unit"], job))
    return None


def _label_it(unit: Unit) -> dict:
    return refusal(
        "label_first",
        message("rules-label-title"),
        message("rules-label", unit=words.unit_name(unit)),
        message("rules-label-do"),
    )
