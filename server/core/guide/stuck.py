"""The step where the fault stays and every check of the wiring is done without a finding: what is left."""

from ..evidence import checks
from ..facts.draft import draft
from ..messages import all_of
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

# So many checks are told by name.
_FEW = 2


def nothing_found(job: Job, position: str, moves: list | None) -> dict:
    """Return the step: check again with the wires moved, the channel, another exchange, help.

    The other moves come beside it once they are worked out.
    """
    name = words.position_name(job, position)
    done, complete = checks.now(job, position)
    cause = "circuit:" + position
    others = [move for move in moves or [] if move["move"] not in ("retest", "meter", "repair")]
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
    view = harness.view(job, position, None)
    title = message("guide-stuck-title", position=name, count=complete)
    told = [job.sort.says("guide-stuck-text")]
    if done.get(checks.EITHER_SIDE) == "good":
        told = [message("guide-stuck-moved"), message("guide-harness-warm")]
    elif view:
        told += [message("guide-harness-apart"), message("guide-harness-warm")]
    missed = checks.impossible(job, position)
    if missed:
        title = message("guide-stuck-missed-title", position=name)
        told = [_missed(job, missed)] + ([view["where"]] if view else [])
        choices[0]["words"] = message("guide-stuck-missed-again")
    return step(
        "wiring.stuck",
        title,
        sentences(told) if len(told) > 1 else told[0],
        form="choices",
        choices=choices,
        second=action(message("guide-moves-other")) if others else None,
        harness=view,
    )


def _missed(job: Job, missed: list[str]) -> dict:
    """Return the words for the checks that nobody could make: few by name, more by their number."""
    titles = [check["title"] for check in job.sort.circuit_checks if check["id"] in missed]
    few = titles if len(titles) <= _FEW else []
    return message("guide-stuck-missed", checks=all_of(few), few="yes" if few else "no", count=len(missed))
