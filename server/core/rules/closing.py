"""A job closes when no unit is out, no conflict open, no move under way, no position empty by accident."""

from .. import phrases
from ..state.job import Job
from ..words import labels_on_unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse closing while something is unaccounted for; names the first of it."""
    if draft["kind"] != "job_closed":
        return None
    blockers = blocked_by(job)
    if not blockers:
        return None
    return refusal("closing", "Not everything is accounted for", blockers[0], "Settle it first.")


def blocked_by(job: Job) -> list[str]:
    """Return a sentence for each thing that keeps the job from closing."""
    sentences = []
    for unit in job.in_hand():
        sentences.append(
            "{} is {}.".format(
                phrases.sentence_case(words.unit_name(job.unit(unit))),
                words.place_words(job.unit(unit)),
            )
        )
    for unit in job.disputed():
        sentences.append(
            "{} is in dispute; scan it where it really is.".format(
                phrases.sentence_case(words.unit_name(job.unit(unit)))
            )
        )
    sentences.extend(labels_on_unit.label_troubles(job))
    if job.move and [p for p in job.move["fitted"] if _differs(job, p)]:
        sentences.append("A move is under way. Finish it, or stop it.")
    for position in job.positions:
        place = position["id"]
        if job.is_empty_by_accident(place):
            sentences.append("{} is empty.".format(phrases.sentence_case(position["name"])))
    return sentences


def _differs(job: Job, position) -> bool:
    return job.fitted_at(position) != job.move["fitted"][position]
