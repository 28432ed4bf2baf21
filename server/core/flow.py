"""Where the job is and what comes next: exactly one step, with the facts it would record.

The order is the trade's: cautions, lamps, a look, the baseline test, pictures, then moves and tests
until the question is settled, then proof, everything home, and the close.
"""

from . import causes
from . import exchange
from . import flow_begin
from . import flow_end
from . import flow_fix
from . import flow_mixed
from . import flow_move
from . import mixed
from . import proof
from . import verdict
from .step import step

STAGES = (
    ("look", "look"),
    ("test", "test"),
    ("label", "label"),
    ("swap", "swap"),
    ("prove", "prove"),
    ("close", "close"),
)


def next_step(state, job: dict, result: dict | None, moves: list) -> tuple:
    """Return (stage, step): the stage the job is in and the one step to do now.

    `result` is the reasoning over the job, None while there is no test; `moves` its next moves in
    words, best first.
    """
    if job["closed"]:
        return "close", step("done", "This job is closed", flow_end.closed_words(job), form="done")
    beginning = flow_begin.beginning(state, job)
    if beginning:
        return beginning
    told_apart = flow_mixed.settling(state, job)
    if told_apart:
        return "swap", told_apart
    off = flow_move.plug_back(job)
    if off:
        return "swap", off
    if job["move"]:
        impossible = flow_move.impossible(state, job)
        if impossible:
            return "swap", impossible
        under_way = exchange.current(state, job)
        if under_way:
            return "swap", flow_move.guided(state, job, under_way)
        waiting = flow_move.before_test(state, job)
        if waiting:
            return "swap", waiting
    elif flow_move.left_over(state, job):
        return "swap", flow_move.put_back(state, job, flow_move.left_over(state, job))
    else:
        empty = flow_fix.empty_position(state, job)
        if empty:
            return "swap", flow_fix.fill(state, job, empty)
    if needs_test(state, job):
        return _retest(state, job, result)
    return _after_test(state, job, result, moves)


def needs_test(state, job: dict) -> bool:
    """Tell whether anything was done since the last test that the last test does not speak of."""
    if not job["tests"]:
        return True
    if job["pending"]["cleaned"] or job["pending"]["repaired"]:
        return True
    if job["move"] and job["move"]["move"] in ("retest", "unplug"):
        return True
    last = job["tests"][-1]
    holds = state.vehicles[job["vehicle"]]["holds"]
    for position in job["positions"]:
        if holds.get(position["id"]) != last["fitted"].get(position["id"]):
            return True
    return False


def proving(state, job: dict, result: dict | None) -> bool:
    """Tell whether the cause is known and dealt with, so that tests are now proof."""
    if not result or not result["verdict"]:
        return False
    live = [c for c in result["verdict"]["causes"] if causes.is_live(state, job, c)]
    return not live


def _retest(state, job, result):
    again = job["move"] and job["move"]["move"] == "retest" and _clean_in_a_row(job, result)
    stage = "prove" if again or proving(state, job, result) else "swap"
    return stage, flow_move.test_step(state, job, "Run the self-test")


def _after_test(state, job, result, moves):
    if len(result["ignored"]) == len(job["tests"]):
        return "test", flow_move.test_step(state, job, "Run the self-test again")
    if mixed.doubtful(state, job, result) and not result["verdict"]:
        return "swap", flow_move.test_step(state, job, "Test again: they got mixed up")
    suspects = [e for e in result["explanations"] if e["causes"]]
    if not suspects:
        return flow_end.nothing_shown(state, job)
    if verdict.is_clear(job, result):
        return flow_end.ending(state, job, result)
    if proving(state, job, result):
        return "prove", flow_move.test_step(state, job, "Test again, to prove it")
    if result["verdict"]:
        live = [c for c in sorted(result["verdict"]["causes"]) if causes.is_live(state, job, c)]
        return "prove", flow_fix.fix_step(state, job, live[0])
    shared = flow_fix.shared_suspects(job, result)
    if shared:
        return "prove", flow_fix.shared_step(state, job, shared)
    unseen = flow_begin.position_without_photo(state, job)
    if unseen:
        return "label", flow_begin.photo_step(state, job, unseen, moves)
    counting = moves and moves[0]["move"] == "retest" and _clean_in_a_row(job, result)
    return "prove" if counting else "swap", flow_move.choose(state, job, moves)


def _clean_in_a_row(job, result) -> int:
    """Return how many clean tests count so far; a test added to them is proof, not search."""
    return proof.proof(job, result)["clean_in_a_row"]
