"""Only what lies together in hand gets mixed up; after that its bodies are moved, not its names."""

from ..messages import message
from ..state.state import MIXED
from ..state.unit import Unit
from ..words import words
from .refusal import refusal

_BY_NAME = ("unit_labelled", "unit_pulled", "unit_fitted", "unit_moved")


def refuse(fold, draft, job):
    """Refuse mixing up what is not in hand, and moving a unit whose body nobody knows."""
    data, state = draft["data"], fold.state
    if draft["kind"] in _BY_NAME and data["unit"] in state.units:
        if state.units[data["unit"]]["place"] == MIXED:
            return _refusal(
                message("rules-mixed-title"),
                _where(Unit(state, data["unit"], job)),
                message("rules-mixed-do"),
            )
        return None
    if draft["kind"] != "units_mixed":
        return None
    named = data["units"]
    if len(named) < 2 or [unit for unit in named if named.count(unit) > 1]:
        return _refusal(
            message("rules-mixed-which-title"),
            message("rules-mixed-which", sort=job.sort.identity),
            message("rules-mixed-which-do"),
        )
    for unit in named:
        if unit not in state.units:
            return _refusal(
                message("rules-not-recorded-title"),
                message("rules-mixed-unknown", sort=job.sort.identity),
                message("rules-mixed-unknown-do"),
            )
        known = state.units[unit]
        here = known["place"] == "stock" or (known["place"] == "out" and known["job"] == job.id)
        if not here or known["claims"]:
            return _refusal(
                message("rules-mixed-elsewhere-title"),
                _where(Unit(state, unit, job)),
                message("rules-mixed-elsewhere-do"),
            )
    return None


def _where(unit: Unit) -> dict:
    return message("rules-unit-is", unit=words.unit_name(unit), place=words.place_words(unit))


def _refusal(title, sentence, do) -> dict:
    return refusal("mixed", title, sentence, do)
