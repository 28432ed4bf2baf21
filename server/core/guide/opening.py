"""The steps before the first move: cautions, lamps, the look, the baseline test, the pictures."""

from ..facts.draft import draft
from ..parts import cautions
from ..phrases import sentence_case
from ..state.job import Job
from ..words.words import position_name
from . import moving
from .step import action
from .step import step

_LAMP_TITLES = {
    "key_on": "Turn the key on. Does the parking-aid lamp come on, then go out?",
    "reverse": "Now reverse. Is the parking aid on?",
}
_LAMP_TEXTS = {
    "key_on": "If it never comes on, the control unit may have no supply, or the lamp or its button is "
    "not connected.",
    "reverse": "A fault that is present now usually turns the system off.",
}
_LAMP_CHOICES = {
    "key_on": (
        ("as_it_should", "It comes on, then goes out"),
        ("not_as_it_should", "It stays on, flashes, or never comes on"),
        ("not_sure", "I can't tell"),
    ),
    "reverse": (
        ("as_it_should", "It is on"),
        ("not_as_it_should", "It is off, or shows a fault"),
        ("not_sure", "I can't tell"),
    ),
}


def beginning(job: Job) -> tuple | None:
    """Return (stage, step) while the job is still before its first test, else None."""
    open_cautions = cautions.to_acknowledge(job.cautions_read)
    if open_cautions:
        drafts = [draft("caution_acknowledged", caution=caution) for caution in open_cautions]
        return "look", step(
            "cautions",
            "Before you start",
            "Read these once. They come back at the step that needs them.",
            form="cautions",
            action=action("I have read these", *drafts),
        )
    if not job.tests:
        for when in ("key_on", "reverse"):
            if not job.was_lamp_checked(when):
                return "look", _lamps(when)
        if not job.was_looked_at():
            return "look", _look(job)
        return "test", moving.test_step(job, "Run the self-test")
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
    name = position_name(job, position)
    return step(
        "photo",
        "Photograph {}".format(name),
        "Before a hand touches it: the sensor, its place, the paint around it.",
        form="photo",
        expects={"position": position, "shows": "position"},
        action=action("Take the picture"),
        second=action("Go on without", *moves[0]["events"]) if moves else None,
        progress={"now": done + 1, "total": len(ids)},
    )


def _has_photo(job, position) -> bool:
    for photo in job.photos:
        if photo["position"] == position and photo["shows"] == "position":
            return True
    return False


def _lamps(when):
    choices = [
        {"words": words, "events": [draft("lamp_checked", when=when, result=result, note="")]}
        for result, words in _LAMP_CHOICES[when]
    ]
    return step("lamps." + when, _LAMP_TITLES[when], _LAMP_TEXTS[when], form="lamps", choices=choices)


def _look(job):
    nothing = [{"position": each["id"], "found": "nothing"} for each in job.positions]
    return step(
        "look",
        "Look at every sensor",
        "Dirt, ice, thick paint, a sensor pushed in, a bumper repaired lately. Tap what you see.",
        form="look",
        expects={
            "positions": [{"id": each["id"], "name": sentence_case(each["name"])} for each in job.positions],
            "found": [
                {"id": "dirt", "words": "dirt"},
                {"id": "ice", "words": "ice"},
                {"id": "paint", "words": "thick paint"},
                {"id": "pushed_in", "words": "pushed in"},
                {"id": "repaired_bumper", "words": "bumper repaired"},
            ],
        },
        action=action("Nothing to see", draft("looked", positions=nothing, note="")),
    )
