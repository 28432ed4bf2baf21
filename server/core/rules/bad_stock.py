"""A unit that was found bad goes into stock only with a reason: there it would be taken for a good one."""

from ..evidence import unit_history
from ..messages import message
from ..state.unit import Unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse putting a bad unit into stock without a word why."""
    data, state = draft["data"], fold.state
    if draft["kind"] != "unit_moved" or data["place"] != "stock" or data["note"].strip():
        return None
    unit = Unit(state, data["unit"], job)
    vehicle = unit_history.condemned(state, unit.id) if unit.is_on_record() else ""
    if not vehicle:
        return None
    return refusal(
        "bad_stock",
        message("rules-bad-stock-title", sort=unit.sort.identity),
        message("rules-bad-stock", unit=words.unit_name(unit), vehicle=vehicle),
        message("rules-bad-stock-do"),
    )
