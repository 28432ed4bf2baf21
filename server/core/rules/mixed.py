"""Only what lies together in hand gets mixed up; after that its bodies are moved, not its names."""

from .. import phrases
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
            return refusal(
                "mixed",
                "Which one it is, is not known",
                "{} is {}.".format(
                    phrases.sentence_case(words.unit_name(Unit(state, data["unit"], job))),
                    words.place_words(Unit(state, data["unit"], job)),
                ),
                "Scan its old label if it is still on, or use the new label of the one in your hand.",
            )
        return None
    if draft["kind"] != "units_mixed":
        return None
    named = data["units"]
    if len(named) < 2 or [unit for unit in named if named.count(unit) > 1]:
        return refusal(
            "mixed",
            "Which ones got mixed up?",
            "It takes at least two {}.".format(job.sort.units),
            "Tap them.",
        )
    for unit in named:
        if unit not in state.units:
            return refusal(
                "mixed",
                "This can't be recorded",
                "{} is not on record.".format(phrases.sentence_case(job.sort.a_unit)),
                "Go back.",
            )
        known = state.units[unit]
        here = known["place"] == "stock" or (known["place"] == "out" and known["job"] == job.id)
        if not here or known["claims"]:
            return refusal(
                "mixed",
                "It is not in your hand",
                "{} is {}.".format(
                    phrases.sentence_case(words.unit_name(Unit(state, unit, job))),
                    words.place_words(Unit(state, unit, job)),
                ),
                "Only what lies together can be mixed up.",
            )
    return None
