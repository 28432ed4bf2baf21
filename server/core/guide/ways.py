"""What can be done at any step instead of it: record a repair, pause, hand over, end it unrepaired."""

from ..facts.draft import draft
from ..facts.job import UNREPAIRED
from ..facts.pausing import WHY
from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..rules.closing import blocked_by
from ..state.job import Job
from ..state.jobs_in_part import people_of
from ..words import causes
from ..words import words
from . import fitting
from . import repairing
from .finishing import place_choices
from .step import action
from .step import step
from .step import stop_move

# What a choice asks for besides the tap.
_WANTS = {"part": "part", "other": "note"}


def ways(job: Job, result: dict | None) -> dict | None:
    """Return the ways out of an open job, None once it is closed.

    A choice wants "part" (the number to order, none is all right), "note" (a word why) or "". The screen
    puts what was typed into the last fact, as `part` and `note`.
    """
    if job.is_closed():
        return None
    return {
        "pause": None if job.pause else _pause(job, result),
        "repair": _repair(job),
        "hand": _hand(job),
        "close": _close(job),
    }


def paused(job: Job) -> dict:
    """Return the step of a job that rests."""
    pause = job.pause or {}
    said = []
    if pause["part"]:
        said.append(message("ways-order", part=pause["part"]))
    if pause["note"]:
        said.append(pause["note"])
    said.append(_left_out(job) or message("ways-paused-text"))
    return step(
        "paused",
        message("ways-paused-title", why=pause["why"]),
        sentences(said),
        action=action(message("ways-go-on"), draft("job_resumed")),
    )


def _pause(job: Job, result) -> dict:
    choices = [
        {
            "id": why,
            "words": message("ways-pause-why", why=why),
            "wants": _WANTS.get(why, ""),
            "events": [draft("job_paused", why=why, part="", note="")],
        }
        for why in WHY
    ]
    return {
        "text": _left_out(job) or message("ways-pause-text"),
        "part": _to_order(job, result),
        "choices": choices,
    }


def _to_order(job: Job, result) -> str:
    """Return the number of the part that the verdict condemns, else the one the job was opened with."""
    for cause in sorted(result["verdict"]["causes"]) if result and result["verdict"] else []:
        kind, what, _ = causes.split(cause)
        if kind == "unit" and what in job.state.units and job.unit(what).part:
            return job.unit(what).part
    return job.part


def _left_out(job: Job) -> dict | None:
    """Return what lies about, stands open or hangs while the job rests, None where all is in order."""
    said = []
    out = [words.unit_name(job.unit(unit)) for unit in job.in_hand()]
    if out:
        said.append(message("ways-in-hand", units=all_of(out), count=len(out)))
    if job.plugged_off:
        said.append(message("ways-plug-off", position=words.position_name(job, job.plugged_off[0])))
    hanging = [words.position_name(job, place) for place in job.hanging()]
    if hanging:
        # Someone who waits for a part drives meanwhile.
        said.append(message("ways-hanging", positions=all_of(hanging), count=len(hanging)))
    return sentences(said) if said else None


def _hand(job: Job) -> dict:
    """Return what is said at a handover, who worked on the job so far, and the fact without its name."""
    return {
        "text": _left_out(job) or message("ways-hand-text"),
        "people": people_of(job.facts),
        "event": draft("job_handed_over", to="", note=""),
    }


def _repair(job: Job) -> dict:
    return {
        "text": message("ways-repair-text"),
        "choices": [
            dict(repairing.repaired(job, cause), id=cause, words=causes.phrase(job, cause), wants="")
            for cause in repairing.can_be(job)
        ],
    }


def _close(job: Job) -> dict:
    """Return the reasons, or what has to be settled first: a sensor in hand, a move that is half done."""
    drafts = stop_move()["events"] if job.move else []
    blockers = blocked_by(job, but_move=not job.in_hand())
    return {
        "text": message("ways-close-text"),
        "blockers": blockers,
        "stop": _first(job) if blockers else None,
        "settle": [_settle(job, unit) for unit in job.in_hand()] if blockers and not job.move else [],
        "choices": [
            {
                "id": why,
                "words": message("ways-close-why", why=why),
                "wants": _WANTS.get(why, ""),
                "events": drafts + [draft("job_closed", note="", why=why, knows=job.known_entries)],
            }
            for why in UNREPAIRED
        ],
    }


def _first(job: Job) -> dict | None:
    """Return what one tap settles before the end: a move is stopped, or what hangs was pushed home."""
    if job.move:
        return stop_move()
    places = job.hanging()
    if not places or job.in_hand():
        return None
    names = all_of([words.position_name(job, place) for place in places])
    seated = fitting.seat(job, places)["action"]["events"]
    return action(message("ways-pushed-home", positions=names), *seated)


def _settle(job: Job, unit: str) -> dict:
    return {
        "unit": unit,
        "title": message("guide-where-title", unit=words.unit_name(job.unit(unit))),
        "choices": place_choices(job, unit, job.in_hand() == [unit]),
    }
