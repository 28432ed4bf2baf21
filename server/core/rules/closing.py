"""A job closes when no unit is out, no conflict open, no move under way, no position empty by accident."""

from .. import phrases
from ..state.state import EMPTY
from ..words import labels_on_unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse closing while something is unaccounted for; names the first of it."""
    if draft["kind"] != "job_closed":
        return None
    blockers = blocked_by(fold.state, job)
    if not blockers:
        return None
    return refusal("closing", "Not everything is accounted for", blockers[0], "Settle it first.")


def blocked_by(state, job) -> list[str]:
    """Return a sentence for each thing that keeps the job from closing."""
    sentences = []
    for unit in state.units_out(job["id"]):
        sentences.append(
            "{} is {}.".format(
                phrases.sentence_case(words.unit_name(state, job, unit)),
                words.place_words(state, job, unit),
            )
        )
    for unit in state.disputed(job["id"]):
        sentences.append(
            "{} is in dispute; scan it where it really is.".format(
                phrases.sentence_case(words.unit_name(state, job, unit))
            )
        )
    sentences.extend(labels_on_unit.label_troubles(state, job))
    if job["move"] and [p for p in job["move"]["fitted"] if _differs(state, job, p)]:
        sentences.append("A move is under way. Finish it, or stop it.")
    for position in job["positions"]:
        place = position["id"]
        if not state.occupant(job["vehicle"], place) and job["left"].get(place) != EMPTY:
            sentences.append("{} is empty.".format(phrases.sentence_case(position["name"])))
    return sentences


def _differs(state, job, position) -> bool:
    return state.occupant(job["vehicle"], position) != job["move"]["fitted"][position]
