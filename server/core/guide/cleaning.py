"""The step that cleans a position, and the next one where several are cleaned before one test."""

from .. import phrases
from ..facts.draft import draft
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
    then = ". Then run the self-test again."
    if len(waiting) > 1:
        then = ". Then go on to {}.".format(words.position_name(job, waiting[1]))
    made = _step(job, waiting[0], then)
    made["also"] = [stop_move()]
    if len(positions) > 1:
        now = len(positions) - len(waiting) + 1
        made["progress"] = {"now": now, "total": len(positions), "word": "Position"}
    return made


def found(job: Job, position: str) -> dict:
    """Return the step for a position that is known to be blocked."""
    return _step(job, position, ", and {}. Then test again.".format(job.sort.obstruction.look_at))


def _step(job, position, then) -> dict:
    name = words.position_name(job, position)
    return step(
        "clean",
        "Clean {}".format(name),
        job.sort.obstruction.clean + then,
        action=action(
            "{} is clean".format(phrases.sentence_case(name)),
            draft("cleaned", position=position, note=""),
        ),
    )
