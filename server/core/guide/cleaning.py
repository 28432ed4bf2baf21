"""The step that cleans a position, and the next one where several are cleaned before one test."""

from ..facts.draft import draft
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..words import words
from .step import action
from .step import step
from .step import stop_move


def all_of(job: Job, positions: list) -> dict | None:
    """Return the step for the first of a move's positions that is not clean yet, None when all are."""
    waiting = [position for position in positions if position not in job.cleaned_since_test]
    if not waiting:
        return None
    then = job.sort.says("guide-clean-then-test")
    if len(waiting) > 1:
        then = message("guide-clean-then-next", position=words.position_name(job, waiting[1]))
    made = _step(job, waiting[0], job.sort.obstruction.clean, then)
    made["also"] = [stop_move()]
    if len(positions) > 1:
        now = len(positions) - len(waiting) + 1
        made["progress"] = {"now": now, "total": len(positions), "word": message("guide-progress-position")}
    return made


def found(job: Job, position: str) -> dict:
    """Return the step for a position that is known to be blocked."""
    return _step(job, position, job.sort.obstruction.clean_and_look, message("guide-clean-then-check"))


def _step(job, position, clean, then) -> dict:
    name = words.position_name(job, position)
    return step(
        "clean",
        message("guide-clean-title", position=name),
        sentences([clean, then]),
        action=action(
            message("guide-clean-done", position=name),
            draft("cleaned", position=position, note=""),
        ),
    )
