"""The step where the fault stays and every check of the wiring is done without a finding: what is left."""

from ..evidence import checks
from ..facts.draft import draft
from ..messages import message
from ..state.job import Job
from ..words import words
from .step import action
from .step import step


def nothing_found(job: Job, position: str, moves: list) -> dict:
    """Return the step: check again with the wires moved, the channel, another exchange, help."""
    name = words.position_name(job, position)
    _, complete = checks.now(job, position)
    cause = "circuit:" + position
    others = [move for move in moves if move["move"] not in ("retest", "meter", "repair")]
    made = step(
        "wiring.stuck",
        message("guide-stuck-title", position=name, count=complete),
        job.sort.says("guide-stuck-text"),
        form="choices",
        choices=[
            {
                "words": message("guide-stuck-again"),
                "events": [
                    draft(
                        "move_started",
                        move="meter",
                        fitted={},
                        position=position,
                        reason="",
                        **checks.again(job, position),
                    )
                ],
            },
            {
                "words": message("guide-stuck-found"),
                "events": [draft("circuit_repaired", cause=cause, what="repaired")],
            },
            {
                "words": message("guide-stuck-control"),
                "events": [
                    draft("circuit_repaired", cause=cause, what="repaired"),
                    draft("circuit_repaired", cause="control", what="repaired"),
                ],
            },
            {
                "words": message("guide-sounder-help"),
                "events": [draft("job_paused", why="help", part="", note="")],
            },
        ],
        second=action(message("guide-moves-other")) if others else None,
    )
    if "control" in job.sort.without:
        made["choices"] = [each for each in made["choices"] if not _repairs(each, "control")]
    return made


def _repairs(choice: dict, cause: str) -> bool:
    return len([each for each in choice["events"] if each["data"].get("cause") == cause]) > 0
