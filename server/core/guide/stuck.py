"""The step where the fault stays and every check of the wiring is done without a finding: what is left."""

from ..evidence import checks
from ..facts.draft import draft
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..words import words
from . import harness
from . import measuring
from . import repairing
from .step import action
from .step import ask_for_help
from .step import step


def nothing_found(job: Job, position: str, moves: list) -> dict:
    """Return the step: check again with the wires moved, the channel, another exchange, help."""
    name = words.position_name(job, position)
    _, complete = checks.now(job, position)
    cause = "circuit:" + position
    others = [move for move in moves if move["move"] not in ("retest", "meter", "repair")]
    choices = [
        {
            "words": message("guide-stuck-again"),
            "events": [measuring.begin(job, position)],
        },
        repairing.choice(job, cause, message("guide-stuck-found")),
    ]
    if job.sort.harness:
        choices[1:1] = measuring.warm(job, position)
    if "control" not in job.sort.without:
        replaced = repairing.choice(job, "control", message("guide-stuck-control"))
        replaced["events"] = [draft("circuit_repaired", cause=cause, what="repaired")] + replaced["events"]
        choices.append(replaced)
    choices.append(ask_for_help())
    left = job.sort.says("guide-stuck-text")
    return step(
        "wiring.stuck",
        message("guide-stuck-title", position=name, count=complete),
        sentences([left, message("guide-harness-apart")]) if job.sort.harness else left,
        form="choices",
        choices=choices,
        second=action(message("guide-moves-other")) if others else None,
        harness=harness.view(job, position, None),
    )
