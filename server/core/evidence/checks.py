"""The checks of a circuit, round by round: to go through them once more, moving the wires, is a new round.

A repair of the circuit ends what was read before; what is read after all checks were made is a new round.
Each round is read for itself, as if it were independent of the one before: an assumption, common practice
without a source, which moving the wires makes good.

What is read while a fault that comes and goes is brought out, warm, is a round of its own beside those read
without: what a circuit shows only warm is weighed from the first such reading on.

Where the circuit is a chain (`harness/`), a round is complete once the chain names a segment or no check is
left that is worth making. Checks know since when there are: a round recorded before there was a chain, or
before the chain had a check, was complete with the checks of then, and stays it.
"""

from collections import namedtuple

from ..harness.chain import WARM
from ..harness.chain import Chain
from ..state.job import Job

# A round: of which circuit of its position it is (1, and one more for each repair), check -> what it reads,
# which list of checks it goes through, and whether it is read warm.
Round = namedtuple("Round", ("generation", "reads", "since", "warm"))
# How the chain of a position stands: the chain, its weights, what was read in the present round under the ids
# of its checks, the checks by index that are left in it, and those that nobody made, worth it now or not.
Standing = namedtuple("Standing", ("chain", "weights", "reads", "left", "unmade"))

# A step asks again and again how a chain stands after the same readings; so many answers are kept of each.
_MOST_KEPT = 200

# A check whose answer says which side of it has the fault, the channel or what is wired to it. The unit is
# wired to it too: only where the fault stayed when its unit was exchanged has the circuit one either way.
EITHER_SIDE = "channels"


def rounds(job: Job) -> dict:
    """Return position -> its rounds, the first one first; positions that nobody measured are not there."""
    found: dict = {}
    has_chain = job.sort.harness is not None
    for entry in job.measurements:
        place = entry["position"]
        before = [each for each in job.repairs[: entry["repairs_before"]] if "again" not in each]
        generation = len([each for each in before if each["cause"] == "circuit:" + place]) + 1
        of_place, warm = found.setdefault(place, []), "provoked" in entry
        last = of_place[-1] if of_place else None
        if not last or last.generation != generation or last.warm != warm or is_complete(job, of_place):
            last = Round(generation, {}, 1, warm)
            of_place.append(last)
        since = entry.get("since", 1) if has_chain else 1
        last.reads[entry["check"]] = entry["reads"]
        of_place[-1] = Round(generation, last.reads, max(last.since, since), warm)
    return found


def is_complete(job: Job, of_place: list) -> bool:
    """Tell whether the last of some rounds was gone through."""
    last = of_place[-1]
    if last.since == 1:
        return not [check for check in _of_old(job) if check not in last.reads]
    found = _standing(job, of_place, last.reads, last.warm)
    return named(found) is not None or not [n for n in found.left if _since(job, found, n) <= last.since]


def _since(job: Job, found: Standing, n: int) -> int:
    """Return with which list a check of a chain came."""
    probe = found.chain.probes[n].id
    check = job.sort.circuit_check(probe.replace(WARM, ""))
    if not check:
        return 1
    return check["since_warm"] if probe.endswith(WARM) else check["since"]


def _of_old(job: Job) -> list[str]:
    return [check["id"] for check in job.sort.circuit_checks if check.get("since", 1) == 1]


def reading(job: Job, position: str, of_place: list) -> str | None:
    """Return what the last of some rounds says: bad once one check does, good once all do, else None."""
    last = of_place[-1]
    reads = [last.reads[check] for check in sorted(last.reads)]
    if "bad" in reads or (last.reads.get(EITHER_SIDE) == "good" and _stayed(job, position)):
        return "bad"
    if last.since == 1:
        return None if [each for each in _of_old(job) if last.reads.get(each) != "good"] else "good"
    open_ones = [each for each in last.reads if last.reads[each] != "good" and each != EITHER_SIDE]
    if open_ones or not is_complete(job, of_place):
        return None
    return None if named(_standing(job, of_place, last.reads, last.warm)) else "good"


def _stayed(job: Job, position: str) -> bool:
    """Tell whether a fault showed at a position with more than one unit there."""
    showed = [test for test in job.tests if test["heard"] and position in test["faulted"]]
    return len({test["fitted"].get(position) for test in showed}) > 1


def now(job: Job, position: str) -> tuple:
    """Return (what was read in the present round, how many rounds of the present circuit are complete)."""
    of_place = _of_present(job, position)
    complete = len([n for n in range(len(of_place)) if is_complete(job, of_place[: n + 1])])
    return _reads_now(job, position, of_place), complete


def warmed(job: Job, position: str) -> str:
    """Return by what the present round of checks at a position is brought out, "" for one that is not."""
    move = _measuring(job, position)
    if move:
        return move.get("provoked", "")
    of_place = _last(job, position, _of_present(job, position))
    if not of_place or not of_place[-1].warm:
        return ""
    return [
        each["provoked"] for each in job.measurements if each["position"] == position and "provoked" in each
    ][-1]


def standing(job: Job, position: str) -> Standing:
    """Return how the chain of a position stands by all that was read of its present circuit."""
    of_place = _of_present(job, position)
    return _standing(job, of_place, _reads_now(job, position, of_place), bool(warmed(job, position)))


def _reads_now(job: Job, position: str, of_place: list) -> dict:
    move = _measuring(job, position)
    if move and of_place:
        begun = move.get("round", 0)
        if (begun and begun >= len(of_place)) or ("provoked" in move) != of_place[-1].warm:
            return {}
    last = _last(job, position, of_place)
    return last[-1].reads if last else {}


def _measuring(job: Job, position: str) -> dict | None:
    """Return the move that measures the circuit of a position, None without one."""
    move = job.move
    return move if move and move["move"] == "meter" and move["position"] == position else None


def _last(job: Job, position: str, of_place: list) -> list:
    """Return the rounds up to the last one that stands: one that was begun warm may be given up."""
    if of_place and of_place[-1].warm and not _measuring(job, position) and not is_complete(job, of_place):
        return of_place[:-1]
    return of_place


def _of_present(job: Job, position: str) -> list:
    generation = job.repairs_of("circuit:" + position) + 1
    return [each for each in rounds(job).get(position, []) if each.generation == generation]


def _standing(job: Job, of_place: list, reads: dict, warm: bool) -> Standing:
    harness = job.sort.harness
    assert harness
    present = [each for each in of_place if each.generation == of_place[-1].generation]
    chain: Chain = harness.warm if warm or [each for each in present if each.warm] else harness.chain
    # A round that stands is weighed by the list it was made by, one that begins by that of now.
    since = of_place[-1].since if reads else harness.since
    before = tuple([_under_ids(each.reads, each.warm) for each in present])
    asked = (before, _under_ids(reads, warm), warm, since)
    kept = chain.kept
    if asked not in kept:
        if len(kept) == _MOST_KEPT:
            kept.clear()
        kept[asked] = _after(chain, *asked)
    return Standing(chain, *kept[asked])


def _after(chain: Chain, present: tuple, reads: tuple, warm: bool, since: int) -> tuple:
    """Return what a Standing says of a chain, without the chain, which keeps it."""
    weights = chain.shares(since)
    for each in present:
        weights = chain.read(weights, dict(each), since)
    unmade = chain.unmade(dict(reads), warm)
    return weights, dict(reads), chain.worthwhile(weights, unmade), unmade


def _under_ids(reads: dict, warm: bool) -> tuple:
    """Return (id of the check in the chain, what it reads) of each, in order."""
    return tuple([(check + WARM if warm else check, reads[check]) for check in sorted(reads)])


def named(found: Standing) -> str | None:
    """Return the segment that a chain names, if it is sure enough of one."""
    suspects = found.chain.suspects(found.weights)
    return found.chain.segments[suspects[0]].id if len(suspects) == 1 else None


def again(job: Job, position: str) -> dict:
    """Return what a move that measures a circuit says besides: after which round it begins, none before."""
    _, complete = now(job, position)
    return {"round": complete} if complete else {}


def is_done(job: Job, position: str) -> bool:
    """Tell whether the present round at a position was gone through."""
    of_place = _of_present(job, position)
    return bool(_reads_now(job, position, of_place)) and is_complete(job, _last(job, position, of_place))


def impossible(job: Job, position: str) -> list[str]:
    """Return the checks that nobody could make at a position, of those still worth making.

    The exchange of two channels is none of them: many a vehicle has no two that can be exchanged.
    """
    of_place = _of_present(job, position)
    told = {check for each in of_place for check in each.reads if each.reads[check] != "unclear"}
    reads = _reads_now(job, position, of_place)
    found = [check for check in sorted(reads) if check not in told and check != EITHER_SIDE]
    if not found or job.sort.harness is None:
        return found
    now = standing(job, position)
    ids = [probe.id for probe in now.chain.probes]
    warm = WARM if warmed(job, position) else ""
    return [check for check in found if now.chain.worthwhile(now.weights, [ids.index(check + warm)])]


def gave_nothing(job: Job, position: str) -> bool:
    """Tell whether the latest round at a position was gone through and left the question open."""
    of_place = _last(job, position, _of_present(job, position))
    return is_done(job, position) and reading(job, position, of_place) is None
