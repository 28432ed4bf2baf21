"""The steps before the first move: cautions, lamps, the look, the baseline test, the pictures."""

from ..facts.draft import draft
from ..messages import message
from ..parts import cautions
from ..parts.sort import Lamp
from ..state.job import Job
from ..words import words
from . import moving
from .step import action
from .step import step


def beginning(job: Job) -> tuple | None:
    """Return (stage, step) while the job is still before its first test, else None."""
    open_cautions = cautions.to_acknowledge(job.sort, job.cautions_read)
    if open_cautions:
        drafts = [draft("caution_acknowledged", caution=caution) for caution in open_cautions]
        return "look", step(
            "cautions",
            message("guide-cautions-title"),
            message("guide-cautions-text"),
            form="cautions",
            action=action(message("guide-cautions-read"), *drafts),
        )
    if not job.tests:
        for lamp in job.sort.lamps:
            if not job.was_lamp_checked(lamp.when):
                return "look", _lamps(lamp)
        if not job.was_looked_at():
            return "look", _look(job)
        return "test", moving.test_step(job, message("guide-test-run"))
    return None


def position_without_photo(job: Job) -> str | None:
    """Return the next position to photograph before a hand touches it, None once one was pulled."""
    touched = [stop for stop in job.history if stop["kind"] == "unit_pulled"]
    if touched:
        return None
    seen = {photo["position"]: True for photo in job.photos if photo["shows"] == "position"}
    for position in job.positions:
        if position["id"] not in seen:
            return position["id"]
    return None


def photo_step(job: Job, position: str, moves: list) -> dict:
    """Return the step that asks for one picture; going on without leads to the best move."""
    ids = [each["id"] for each in job.positions]
    done = len(ids) - len([each for each in ids if not _has_photo(job, each)])
    return step(
        "photo",
        message("guide-photo-title", position=words.position_name(job, position)),
        job.sort.photograph,
        form="photo",
        expects={"position": position, "shows": "position"},
        action=action(message("guide-photo-take")),
        second=action(message("guide-photo-skip"), *moves[0]["events"]) if moves else None,
        progress={"now": done + 1, "total": len(ids)},
    )


def _has_photo(job, position) -> bool:
    for photo in job.photos:
        if photo["position"] == position and photo["shows"] == "position":
            return True
    return False


def _lamps(lamp: Lamp) -> dict:
    choices = [
        {"words": words, "events": [draft("lamp_checked", when=lamp.when, result=result, note="")]}
        for result, words in lamp.choices
    ]
    return step("lamps." + lamp.when, lamp.heading, lamp.text, form="lamps", choices=choices)


def _look(job: Job) -> dict:
    look = job.sort.look
    nothing = [{"position": each["id"], "found": "nothing"} for each in job.positions]
    return step(
        "look",
        look.heading,
        look.text,
        form="look",
        expects={
            "positions": [
                {"id": each["id"], "name": message("guide-position", position=words.called(job, each))}
                for each in job.positions
            ],
            "found": [{"id": identity, "words": said} for identity, said in look.found],
        },
        action=action(message("guide-look-nothing"), draft("looked", positions=nothing, note="")),
    )
