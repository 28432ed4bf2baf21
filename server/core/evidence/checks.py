"""The checks of a circuit, round by round: to go through them once more, moving the wires, is a new round.

A repair of the circuit ends what was read before; what is read after all checks were made is a new round.
Each round is read for itself, as if it were independent of the one before: an assumption, common practice
without a source, which moving the wires makes good.

Where the circuit is a chain (`harness/`), a round is complete once the chain names a segment or no check is
left that is worth making. Checks know since when there are: a round recorded before the chain was complete
with the checks of then, and stays it.
"""

from collections import namedtuple

from ..harness.chain import Chain
from ..state.job import Job

# A round: of which circuit of its position it is (1, and one more for each repair), check -> what it reads,
# and which list of checks it goes through.
Round = namedtuple("Round", ("generation", "reads", "since"))

# A check whose answer says which side of it has the fault: either way the circuit has one.
_EITHER_SIDE = "channels"


def rounds(job: Job) -> dict:
    """Return position -> its rounds, the first one first; positions that nobody measured are not there."""
    found: dict = {}
    has_chain = job.sort.harness is not None
    for entry in job.measurements:
        place = entry["position"]
        before = [each for each in job.repairs[: entry["repairs_before"]] if "again" not in each]
        generation = len([each for each in before if each["cause"] == "circuit:" + place]) + 1
        of_place = found.setdefault(place, [])
        if not of_place or of_place[-1].generation != generation or is_complete(job, of_place):
            of_place.append(Round(generation, {}, 1))
        last, since = of_place[-1], entry.get("since", 1) if has_chain else 1
        last.reads[entry["check"]] = entry["reads"]
        of_place[-1] = Round(generation, last.reads, max(last.since, since))
    return found


def is_complete(job: Job, of_place: list) -> bool:
    """Tell whether the last of some rounds was gone through."""
    last = of_place[-1]
    if last.since == 1:
        return not [check for check in _of_old(job) if check not in last.reads]
    weights = _weights(job, of_place)
    return named(job, weights) is not None or not chain_of(job).unread(weights, last.reads)


def _of_old(job: Job) -> list[str]:
    return [check["id"] for check in job.sort.circuit_checks if check.get("since", 1) == 1]


def reading(job: Job, of_place: list) -> str | None:
    """Return what the last of some rounds says: bad once one check does, good once all do, else None."""
    last = of_place[-1]
    reads = [last.reads[check] for check in sorted(last.reads)]
    if "bad" in reads or last.reads.get(_EITHER_SIDE) == "good":
        return "bad"
    if last.since == 1:
        return None if [each for each in _of_old(job) if last.reads.get(each) != "good"] else "good"
    open_ones = [each for each in last.reads if last.reads[each] != "good" and each != _EITHER_SIDE]
    if open_ones or not is_complete(job, of_place):
        return None
    return None if named(job, _weights(job, of_place)) else "good"


def now(job: Job, position: str) -> tuple:
    """Return (what was read in the present round, how many rounds of the present circuit are complete)."""
    of_place = _of_present(job, position)
    complete = len([n for n in range(len(of_place)) if is_complete(job, of_place[: n + 1])])
    move = job.move
    begun = move and move["move"] == "meter" and move["position"] == position and move.get("round", 0)
    if not of_place or (begun and begun >= len(of_place)):
        return {}, complete
    return of_place[-1].reads, complete


def _of_present(job: Job, position: str) -> list:
    generation = job.repairs_of("circuit:" + position) + 1
    return [each for each in rounds(job).get(position, []) if each.generation == generation]


def weights(job: Job, position: str) -> list[float]:
    """Return how the faults of a chain stand by all that was read of the present circuit of a position."""
    return _weights(job, _of_present(job, position))


def _weights(job: Job, of_place: list) -> list[float]:
    chain = chain_of(job)
    found = chain.shares()
    for each in of_place:
        if each.generation == of_place[-1].generation:
            found = chain.read(found, each.reads)
    return found


def chain_of(job: Job) -> Chain:
    """Return the chain of the circuits of a job whose sort has one."""
    assert job.sort.harness
    return job.sort.harness.chain


def named(job: Job, found: list[float]) -> str | None:
    """Return the segment that weights name, if they are sure enough of one."""
    chain = chain_of(job)
    suspects = chain.suspects(found)
    return chain.segments[suspects[0]].id if len(suspects) == 1 else None


def again(job: Job, position: str) -> dict:
    """Return what a move that measures a circuit says besides: after which round it begins, none before."""
    _, complete = now(job, position)
    return {"round": complete} if complete else {}


def is_done(job: Job, position: str) -> bool:
    """Tell whether the present round at a position was gone through."""
    reads, _ = now(job, position)
    return bool(reads) and is_complete(job, _of_present(job, position))


def gave_nothing(job: Job, position: str) -> bool:
    """Tell whether the latest round at a position was gone through and left the question open."""
    return is_done(job, position) and reading(job, _of_present(job, position)) is None
