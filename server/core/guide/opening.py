"""The steps before the first move: cautions, lamps and a look, the baseline test, the pictures."""

from ..facts.draft import draft
from ..messages import message
from ..parts import cautions
from ..state.job import Job
from ..words import words
from . import testing
from .step import action
from .step import step


def beginning(job: Job) -> tuple | None:
    """Return (stage, step) while the job is still before its first test, else None."""
    open_cautions = cautions.to_acknowledge(job.sort, job.cautions_read)
    if open_cautions and not job.tests:
        drafts = [draft("caution_acknowledged", caution=caution) for caution in open_cautions]
        return "look", step(
            "cautions",
            message("guide-cautions-title"),
            "",
            form="cautions",
            action=action(message("guide-cautions-read"), *drafts),
        )
    if not job.tests:
        lamps = [lamp for lamp in job.sort.lamps if not job.was_lamp_checked(lamp.when)]
        if lamps or not job.was_looked_at():
            return "look", _first_look(job, lamps)
        return "test", testing.test_step(job, job.sort.says("guide-test-run"))
    return None


def positions_to_photograph(job: Job, moves: list) -> list[str]:
    """Return the positions whose picture is due before a hand touches them, in the order shown.

    Due is every bumper with a fault, and whatever the best move touches besides; a bumper that was begun
    is not asked for again.
    """
    begun = {
        _edge(job, stop["data"]["position"]): True for stop in job.history if stop["kind"] == "unit_pulled"
    }
    faulted = [position for test in job.tests for position in test["faulted"]]
    touched = sorted(moves[0]["touches"]) if moves else []
    edges = {_edge(job, position): True for position in faulted}
    due = []
    for position in job.positions:
        edge = position["edge"]
        if edge not in begun and (edge in edges or position["id"] in touched):
            due.append(position["id"])
    return [position for position in due if position not in job.photos_skipped]


def photo_step(job: Job, moves: list) -> dict | None:
    """Return the step that asks for the pictures that are due, None when all are there."""
    due = positions_to_photograph(job, moves)
    missing = [position for position in due if not _has_photo(job, position)]
    if not missing:
        return None
    listed = [
        {"id": each, "name": words.position_name(job, each), "done": each not in missing} for each in due
    ]
    return step(
        "photo",
        message("guide-photo-title"),
        job.sort.photograph,
        form="photo",
        expects={"position": missing[0], "shows": "position", "positions": listed},
        action=action(message("guide-photo-take")),
        second=action(message("guide-photo-skip"), draft("photos_skipped", positions=missing)),
        progress={
            "now": len(due) - len(missing) + 1,
            "total": len(due),
            "word": message("guide-progress-photo"),
        },
    )


def _edge(job, position: str) -> str:
    known = job.position(position)
    return known["edge"] if known else ""


def _has_photo(job, position) -> bool:
    for photo in job.photos:
        if photo["position"] == position and photo["shows"] == "position":
            return True
    return False


def _first_look(job: Job, lamps: list) -> dict:
    """Return the step that asks for lamps and a look round at once; one tap when all is as it should be."""
    look = job.sort.look
    nothing = [{"position": each["id"], "found": "nothing"} for each in job.positions]
    all_right = [draft("lamp_checked", when=lamp.when, result=lamp.choices[0][0], note="") for lamp in lamps]
    if not job.was_looked_at():
        all_right.append(draft("looked", positions=nothing, note=""))
    return step(
        "look",
        message("guide-look-title" if lamps else "guide-look-title-alone"),
        message("guide-look-text"),
        form="look",
        expects={
            "lamps": [
                {
                    "when": lamp.when,
                    "heading": lamp.heading,
                    "text": lamp.text,
                    "choices": [{"id": identity, "words": said} for identity, said in lamp.choices],
                }
                for lamp in lamps
            ],
            "looked": job.was_looked_at(),
            "heading": look.heading,
            "text": look.text,
            "positions": [
                {"id": each["id"], "name": message("guide-position", position=words.called(job, each))}
                for each in job.positions
            ],
            "found": [{"id": identity, "words": said} for identity, said in look.found],
        },
        action=action(message("guide-look-all-right"), *all_right),
    )
