"""The steps of moves: choosing one, and what a move asks before its test: cleaning, wiring checks."""

from ..evidence import checks as rounds
from ..messages import message
from ..state.job import Job
from . import cleaning
from . import harness
from . import measuring
from . import repeats
from . import testing
from .step import action
from .step import comes_and_goes
from .step import step
from .step import stop_move


def thinking() -> dict:
    """Return the step that stands where a move will, while none is worked out."""
    return step("thinking", message("guide-thinking"), "")


def choose(job: Job, moves: list) -> dict:
    """Return the step that proposes the best move; the others are behind its second button."""
    if not moves:
        return testing.test_step(job, job.sort.says("guide-test-again"))
    best = moves[0]
    return step(
        "move",
        best["title"],
        best["reason"],
        form="moves",
        action=action(best["start_words"], *best["events"]),
        second=action(message("guide-moves-other")) if len(moves) > 1 else None,
        also=[comes_and_goes()] if repeats.went_by_itself(job) else [],
    )


def before_test(job: Job) -> dict | None:
    """Return what a clean or meter move asks to be done before anything else, or None."""
    move = job.move
    if move["move"] == "clean":
        return cleaning.all_of(job, move["positions"])
    if move["move"] == "meter" and not _found(job, move):
        made = measure(job, move["position"])
        made["also"] = [stop_move()]
        return made
    return None


def _found(job: Job, move: dict) -> bool:
    """Tell whether the circuit that a move measures was repaired since: what was bad is read again."""
    for entry in reversed(job.history):
        if "{}:{}".format(entry["device"], entry["seq"]) == move["event"]:
            return False
        counts = entry["kind"] == "circuit_repaired" and entry["understood"] and entry["withdrawn"] is None
        if counts and entry["data"]["cause"] == "circuit:" + move["position"]:
            return True
    return False


def measure(job: Job, position: str, repair: dict | None = None) -> dict:
    """Return the guided wiring checks of one position; `repair` is the button once a fault is found."""
    if job.sort.harness:
        return harness.next_check(job, job.sort.harness, position, repair)
    done, _ = rounds.now(job, position)
    left = [check["id"] for check in job.sort.circuit_checks if check["id"] not in done]
    if left:
        made = measuring.one_of_several(job, position, left[0], len(done), len(left), repair)
    else:
        made = measuring.end(job, position, done, repair)
    return made
