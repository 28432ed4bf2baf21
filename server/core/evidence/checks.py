"""The checks of a circuit, round by round: to go through them once more, moving the wires, is a new round.

A repair of the circuit ends what was read before; what is read after all checks were made is a new round.
Each round is read for itself, as if it were independent of the one before: an assumption, common practice
without a source, which moving the wires makes good.
"""

from collections import namedtuple

from ..state.job import Job

# A round: of which circuit of its position it is (1, and one more for each repair), check -> what it reads.
Round = namedtuple("Round", ("generation", "reads"))


def rounds(job: Job) -> dict:
    """Return position -> its rounds, the first one first; positions that nobody measured are not there."""
    wanted = [check["id"] for check in job.sort.circuit_checks]
    found: dict = {}
    for entry in job.measurements:
        place = entry["position"]
        before = [each for each in job.repairs[: entry["repairs_before"]] if "again" not in each]
        generation = len([each for each in before if each["cause"] == "circuit:" + place]) + 1
        of_place = found.setdefault(place, [])
        if not of_place or of_place[-1].generation != generation or is_complete(of_place[-1], wanted):
            of_place.append(Round(generation, {}))
        of_place[-1].reads[entry["check"]] = entry["reads"]
    return found


def is_complete(last: Round, wanted: list) -> bool:
    """Tell whether every check was gone through in a round."""
    return not [check for check in wanted if check not in last.reads]


def reading(last: Round, wanted: list) -> str | None:
    """Return what a round says of its circuit: bad once one check does, good once all do, else None."""
    if "bad" in [last.reads[check] for check in sorted(last.reads)]:
        return "bad"
    if not [check for check in wanted if last.reads.get(check) != "good"]:
        return "good"
    return None


def now(job: Job, position: str) -> tuple:
    """Return (what was read in the present round, how many rounds of the present circuit are complete)."""
    wanted = [check["id"] for check in job.sort.circuit_checks]
    generation = job.repairs_of("circuit:" + position) + 1
    of_place = [each for each in rounds(job).get(position, []) if each.generation == generation]
    complete = len([each for each in of_place if is_complete(each, wanted)])
    move = job.move
    begun = move and move["move"] == "meter" and move["position"] == position and move.get("round", 0)
    if not of_place or (begun and begun >= len(of_place)):
        return {}, complete
    return of_place[-1].reads, complete


def again(job: Job, position: str) -> dict:
    """Return what a move that measures a circuit says besides: after which round it begins, none before."""
    _, complete = now(job, position)
    return {"round": complete} if complete else {}


def gave_nothing(job: Job, position: str) -> bool:
    """Tell whether the latest round at a position was gone through and left the question open."""
    wanted = [check["id"] for check in job.sort.circuit_checks]
    reads, complete = now(job, position)
    last = Round(0, reads)
    return bool(complete) and is_complete(last, wanted) and reading(last, wanted) is None
