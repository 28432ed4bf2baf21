"""Where the job is and what comes next: exactly one step, with the facts it would record.

The order is the trade's: cautions, lamps, a look, the baseline test, pictures, then moves and tests
until the question is settled, then proof, everything home, and the close.
"""

from ..evidence import mixups
from ..evidence import proof
from ..evidence import verdict
from ..messages import message
from ..state import contradictions
from ..state import exchange
from ..state.job import Job
from ..words import causes
from . import ending
from . import fitting
from . import fixing
from . import mixed_up
from . import moving
from . import opening
from . import repairing
from . import repeats
from . import sounder
from . import testing
from . import tried_spare
from . import ways
from .step import action
from .step import step

STAGES = (
    ("look", "guide-stage-look"),
    ("test", "guide-stage-test"),
    ("label", "guide-stage-label"),
    ("swap", "guide-stage-swap"),
    ("prove", "guide-stage-prove"),
    ("close", "guide-stage-close"),
)  # with the message that names each


def next_step(job: Job, result: dict | None, moves: list | None) -> tuple:
    """Return (stage, step): the stage the job is in and the one step to do now.

    `result` is the reasoning over the job, None while there is no test; `moves` its next moves in
    words, best first, None while they are not worked out.
    """
    if job.is_closed():
        done = step("done", message("guide-done-title"), ending.closed_words(job), form="done")
        return _contradiction(job, None) or ("close", done)
    stage, step_to_do = _at_work(job, result, moves)
    return stage, ways.paused(job) if job.pause else step_to_do


def _contradiction(job: Job, result: dict | None) -> tuple | None:
    """Return (stage, step) of what phones entered apart and what contradicts, or None."""
    if not contradictions.are_there(job.state, job.facts):
        return None
    from . import settling  # a phone that never meets one can start without it

    return settling.settling(job, result)


def without_reasoning(job: Job) -> dict | None:
    """Return the step of an open job as far as it needs no reasoning, None after a test that says what comes.

    For lists: it costs next to nothing.
    """
    if job.pause:
        return ways.paused(job)
    under_way = _under_way(job, None, None)
    if under_way:
        return under_way[1]
    owed = repairing.owed(job)
    if owed:
        return owed
    if needs_test(job):
        return testing.test_step(job, job.sort.says("guide-test-run"))
    return sounder.unproven(job)


def _at_work(job: Job, result: dict | None, moves: list | None) -> tuple:
    """Return (stage, step) of an open job, whether it rests or not."""
    under_way = _under_way(job, result, moves)
    if under_way:
        return under_way
    owed = repairing.owed(job)
    if owed:
        return "prove", owed
    if needs_test(job):
        return _retest(job, result)
    unproven = sounder.unproven(job)
    if unproven:
        return "test", unproven
    return _after_test(job, result, moves)


def _under_way(job: Job, result: dict | None, moves: list | None) -> tuple | None:
    """Return (stage, step) of what has to be done before a test can say more, None where nothing has."""
    if contradictions.corrections(job.facts):
        return _contradiction(job, result)  # what is wrong may be how it began
    beginning = opening.beginning(job)
    if beginning:
        return beginning
    contradiction = _contradiction(job, result)
    if contradiction:
        return contradiction
    told_apart = mixed_up.settling(job)
    if told_apart:
        return "swap", told_apart
    off = fitting.plug_back(job)
    if off:
        return "swap", off
    if job.move:
        impossible = fitting.impossible(job)
        if impossible:
            return "swap", impossible
        under_way = exchange.current(job)
        if under_way:
            return "swap", fitting.guided(job, under_way)
        waiting = moving.before_test(job)
        if waiting:
            return "swap", waiting
        return None
    mixed = mixed_up.fitting(job, moves)
    if mixed:
        return "swap", mixed
    if fitting.left_over(job):
        return "swap", fitting.put_back(job, fitting.left_over(job))
    bare = fitting.label(job)
    if bare:
        return "swap", bare
    empty = fixing.empty_position(job)
    return ("swap", fixing.fill(job, empty)) if empty else None


def needs_test(job: Job) -> bool:
    """Tell whether anything was done since the last test that the last test does not speak of."""
    if not job.tests:
        return True
    if job.cleaned_since_test or job.repaired_since_test:
        return True
    if job.move and job.move["move"] in ("retest", "unplug"):
        return True
    last = job.last_test()
    holds = job.holds
    for position in job.positions:
        if holds.get(position["id"]) != last["fitted"].get(position["id"]):
            return True
    return False


def proving(job: Job, result: dict | None) -> bool:
    """Tell whether the cause is known and dealt with, so that tests are now proof."""
    if not result or not result["verdict"]:
        return False
    live = [c for c in result["verdict"]["causes"] if causes.is_live(job, c)]
    return not live


def _retest(job: Job, result) -> tuple:
    again = job.move and job.move["move"] == "retest" and _clean_in_a_row(job, result)
    proof_of_repair = proving(job, result)
    if proof_of_repair and not again and job.hanging():
        # What hangs is pushed home before the proof, so that the proof speaks of the last fitting.
        return "prove", fitting.seat(job, job.hanging())
    stage = "prove" if again or proof_of_repair else "swap"
    return stage, testing.test_step(job, job.sort.says("guide-test-run"))


def _after_test(job: Job, result, moves: list | None) -> tuple:
    if len(result["ignored"]) == len(job.tests):
        return "test", testing.test_step(job, job.sort.says("guide-test-again"))
    suspects = [e for e in result["explanations"] if e["causes"]]
    clear = verdict.is_clear(job, result)
    if (clear or not suspects) and mixups.doubtful(job, result):
        return "prove", testing.test_step(job, message("guide-test-mixed-up"))
    if not suspects:
        return ending.nothing_shown(job, result)
    if clear:
        told = tried_spare.told_by_its_place(job, result, moves)
        return ("swap", told) if told else ending.ending(job, result)
    if proving(job, result):
        return "prove", testing.test_step(job, message("guide-test-prove"))
    if result["verdict"]:
        live = [c for c in sorted(result["verdict"]["causes"]) if causes.is_live(job, c)]
        return "prove", fixing.fix_step(job, live[0], moves)
    shared = fixing.shared_suspects(job, result, repeats.says_the_same(job))
    if shared:
        return "prove", fixing.shared_step(job, shared)
    if moves is None:
        return "swap", moving.thinking()
    # Of the moves as a person sees them: a bare test that would say the same again stands last there.
    if moves and moves[0]["move"] == "repair":
        likeliest = next(entry["cause"] for entry in result["next"] if entry["move"] == "repair")
        made = fixing.fix_step(job, likeliest, moves)
        made["second"] = made["second"] or (action(message("guide-moves-other")) if len(moves) > 1 else None)
        return "prove", made
    counting = moves and moves[0]["move"] == "retest" and _clean_in_a_row(job, result)
    # No hand comes to a position for one more clean test.
    pictures = None if counting else opening.photo_step(job, moves)
    if pictures:
        return "label", pictures
    return "prove" if counting else "swap", moving.choose(job, moves)


def _clean_in_a_row(job, result) -> int:
    """Return how many clean tests count so far; a test added to them is proof, not search."""
    return proof.proof(job, result)["clean_in_a_row"]
