"""A job closes when no unit is out, no conflict open, no move under way, no position empty by accident.

One that was repaired also when each reading that was bad before is good now, or was left with a reason.
"""

from ..evidence import retaken
from ..facts.evidence import brought_out
from ..messages import message
from ..state.job import Job
from ..words import labels_on_unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse closing while something is unaccounted for; names the first of it."""
    if draft["kind"] != "job_closed":
        return None
    blockers = blocked_by(job)
    if blockers:
        return refusal("closing", message("rules-closing-title"), blockers[0], message("rules-closing-do"))
    reading = None if "why" in draft["data"] else retaken.owed(job)
    if not reading:
        return None
    check, name = reading["check"], words.position_name(job, reading["position"])
    return refusal(
        "closing",
        message("rules-closing-title"),
        message(
            "rules-closing-reading",
            check=check["title"],
            position=name,
            warm=brought_out(reading["provoked"]),
            stands=reading["stands"],
        ),
        message("rules-closing-reading-do"),
    )


def blocked_by(job: Job, but_move: bool = False) -> list[dict]:
    """Return a sentence for each thing that keeps it from closing; `but_move`: its move will be dropped."""
    sentences = []
    for unit in job.in_hand():
        sentences.append(
            message(
                "rules-unit-is",
                unit=words.unit_name(job.unit(unit)),
                place=words.place_words(job.unit(unit)),
            )
        )
    return sentences + blocked_beside_hand(job, but_move)


def blocked_beside_hand(job: Job, but_move: bool = False) -> list[dict]:
    """Return a sentence for each thing that keeps it from closing, units in hand left out."""
    sentences = []
    for unit in job.disputed():
        sentences.append(message("rules-closing-disputed", unit=words.unit_name(job.unit(unit))))
    sentences.extend(labels_on_unit.label_troubles(job))
    if not but_move and job.move and [p for p in job.move["fitted"] if _differs(job, p)]:
        sentences.append(message("rules-closing-move"))
    for place in job.plugged_off:
        sentences.append(message("rules-closing-plug", position=words.position_name(job, place)))
    for place in job.hanging():
        sentences.append(message("rules-closing-hangs", position=words.position_name(job, place)))
    for position in job.positions:
        place = position["id"]
        if job.is_empty_by_accident(place):
            sentences.append(message("rules-closing-empty", position=words.called(job, position)))
    return sentences


def _differs(job: Job, position) -> bool:
    return job.fitted_at(position) != job.move["fitted"][position]
