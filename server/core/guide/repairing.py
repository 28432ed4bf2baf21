"""A repair of the wiring: where it was and what was done; then the reading that was bad is taken again."""

from ..evidence import retaken
from ..facts.draft import draft
from ..messages import message
from ..messages import sentences
from ..meter import figure
from ..state.job import Job
from ..words import causes
from ..words import words
from . import measuring
from .step import action
from .step import step

# The segments of what positions share, and of the control unit; a circuit has all of its sort.
_SEGMENTS = {
    "feed": ("splice", "loom", "control-plug", "supply", "ground"),
    "control": ("control-plug", "channel", "supply", "ground"),
}


def repaired(job: Job, cause: str, **where) -> dict:
    """Return the button that records a repair of a cause, with what its form offers besides.

    "segments" are {"id", "words"} of where it can have been, which goes into the fact as `segment`;
    "position" is what pictures before and after it show, "" where positions share it. `where` is the
    `segment` that is known, if one is.
    """
    kind, what, _ = causes.split(cause)
    base = cause.partition("#")[0]
    made = action(message("guide-repaired"), draft("circuit_repaired", cause=base, what="repaired", **where))
    made["segments"] = segments(job, kind)
    made["position"] = what if kind == "circuit" else ""
    return made


def choice(job: Job, cause: str, words) -> dict:
    """Return the same button in other words, as one of several choices."""
    made = repaired(job, cause)
    made["words"] = words
    return made


def segments(job: Job, kind: str) -> list[dict]:
    """Return {"id", "words"} of where a repair of a cause of this kind can have been."""
    known = job.sort.segments
    return [
        {"id": each, "words": message("guide-repair-segment", segment=job.sort.segment(each))}
        for each in known
        if each in _SEGMENTS.get(kind, known)
    ]


def can_be(job: Job) -> list[str]:
    """Return the causes that can be repaired on a job: circuits, feeds, the control unit."""
    found = ["circuit:" + position["id"] for position in job.positions]
    groups = {position["group"]: True for position in job.positions}
    found += ["feed:" + group for group in sorted(groups)] + ["control"]
    return [cause for cause in found if causes.split(cause)[0] not in job.sort.without]


def owed(job: Job) -> dict | None:
    """Return the step that takes a reading again which was bad before a repair, None where none is owed."""
    reading = retaken.owed(job)
    if not reading:
        return None
    position, check = reading["position"], reading["check"]
    return (_again if reading["stands"] == retaken.AGAIN else _still)(job, position, check, reading)


def _again(job: Job, position: str, check: dict, reading: dict) -> dict:
    provoked = reading["provoked"]
    made = measuring.ask(job, position, check, provoked)
    made["id"] = "measure.again.warm" if provoked else "measure.again"
    made["title"] = message(
        "guide-again-title", position=words.position_name(job, position), check=check["title"]
    )
    if reading["before"]:
        unit = figure.unit_told(reading["before"], check["unit"])
        read = message("guide-again-read", value=reading["before"], unit=unit)
        made["text"] = sentences([made["text"], read])
    made["choices"] = [choice for choice in made["choices"] if choice["reads"] != "unclear"]
    reasons = ("out-of-reach", "no-meter") if check["unit"] else ("out-of-reach",)
    how = {"provoked": provoked} if provoked else {}
    made["also"] = [
        action(
            message("guide-again-left", reason=reason),
            draft("reading_not_retaken", position=position, check=check["id"], reason=reason, **how),
        )
        for reason in reasons
    ]
    return made


def _still(job: Job, position: str, check: dict, reading: dict) -> dict:
    name, provoked = words.position_name(job, position), reading["provoked"]
    how = {"provoked": provoked} if provoked else {}
    return step(
        "measure.still",
        message("guide-still-title", position=name, check=check["title"]),
        job.sort.says("guide-still-text"),
        action=repaired(job, "circuit:" + position),
        second=action(message("guide-still-measure"), measuring.begin(job, position, **how)),
    )
