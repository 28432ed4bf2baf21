"""What phones entered apart from each other and what contradicts, on one job, until somebody settles it.

Five sorts: a unit at two places or two units at one, tests that may be one and the same, an entry that was
corrected in two ways, a job that one phone closed while another worked on, and two numbers that were read
off one unit. Asked of the facts of a job, for the fold asks it too; it looks at nothing that a server's rows
leave out, so that every host tells the same.
"""

from collections import namedtuple

from ..codes.numbers import plain
from . import stories

NUMBERS = ("part", "serial")  # what is read off a unit

# `units` are those whose label settles it: the one in dispute first, then one that sits where it is claimed.
# `stories` are all, `last` what each phone said last: what it said before it has taken further itself.
Contested = namedtuple("Contested", ("unit", "units", "stories", "last"))

# What a test depends on that was made after it.
_BEFORE_A_TEST = (
    "unit_pulled",
    "unit_fitted",
    "unit_moved",
    "unit_seen",
    "units_mixed",
    "cleaned",
    "circuit_repaired",
)


def are_there(state, job: dict) -> bool:
    """Tell whether something contradicts on a job; on a closed one it may be another job's to settle."""
    told = corrections(job) or job["reopened"] or state.disputed(job["id"]) or tests(job)
    return bool(told or of_units(state, job))


def places(state, job: dict) -> list[Contested]:
    """Return the units in dispute of a job with all that is said of them, what was contested first first."""
    found = []
    for identity in state.disputed(job["id"]):
        told = stories.told(state, identity)
        units, rivals = [identity], []
        for story in stories.last_of_each(told):
            other = _occupant(state, job, story)
            rival = stories.of_occupant(state, story.vehicle, story.position, other) if other else None
            if rival and rival not in rivals:
                rivals.append(rival)
                if is_there_or_in_hand(state.units[identity], story.vehicle, story.position):
                    units.append(rival.unit)
        if rivals and len(told) > 1 and told[0].place == "out":
            told = told[1:]  # that it was in a hand before is no contradiction
        told = _in_order(told + rivals, job)
        number = stories.number_on(told[-1], job)
        last = [story for story in told if story in stories.last_of_each(told)]
        found.append((number, len(found), Contested(identity, units, told, last)))
    return [each[2] for each in sorted(found, key=lambda each: (each[0], each[1]))]


def is_there_or_in_hand(unit: dict, vehicle: str, position: str) -> bool:
    """Tell whether nobody says of a unit in dispute that it is elsewhere than at a position or in a hand.

    Then whether another unit is at that position settles where this one is.
    """
    elsewhere = [
        claim
        for claim in unit["claims"]
        if claim["place"] != "out" and (claim["vehicle"], claim["position"]) != (vehicle, position)
    ]
    return not elsewhere


def _occupant(state, job: dict, story: stories.Story) -> str | None:
    """Return the other unit that sits on record where a story has this one."""
    if story.place != "fitted" or story.vehicle != job["vehicle"]:
        return None
    other = state.occupant(story.vehicle, story.position)
    return other if other and other != story.unit else None


def _in_order(told: list, job: dict) -> list:
    """Return stories in the order of the job's entries; those of no such entry keep their place before it."""
    keyed = []
    last = -1
    for n in range(len(told)):
        number = stories.number_on(told[n], job)
        last = max(last, number)
        keyed.append((number if number >= 0 else last, n))
    return [told[n] for _, n in sorted(keyed)]


def tests(job: dict) -> list[list[int]]:
    """Return the tests that may be one and the same, as groups of their numbers from 0.

    Of those of which a test did not know, the first of each other phone may be the same one that no other of
    its own phone is taken for; what was told apart before is not asked about again.
    """
    at = {test["event"]: n for n, test in enumerate(job["tests"])}
    taken = {}
    for test in job["tests"]:
        for other in test.get("told", []):
            _take(taken, test["event"], other)
    groups = [[n] for n in range(len(at))]
    for n, test in enumerate(job["tests"]):
        for other in test.get("apart", []):
            if other in at and _take(taken, test["event"], other):
                group = groups[at[other]]
                if group is not groups[n]:
                    group.extend(groups[n])
                    for each in groups[n]:
                        groups[each] = group
    return [sorted(groups[n]) for n in range(len(at)) if len(groups[n]) > 1 and min(groups[n]) == n]


def _take(taken: dict, test: str, other: str) -> bool:
    """Take two tests for one; False where either is taken already for another of the other one's phone."""
    mine, theirs = (test, stories.device_of(other)), (other, stories.device_of(test))
    if mine in taken or theirs in taken:
        return False
    taken[mine] = taken[theirs] = True
    return True


def waiting(state, job: dict) -> list[int]:
    """Return the numbers of the tests, from 0, that say nothing until a contradiction is settled."""
    found = {}
    for group in tests(job):
        for n in group:
            found[n] = True
    for apart in corrections(job):
        for n in waiting_for_correction(job, apart):
            found[n] = True
    for contested in places(state, job) if job["tests"] else []:
        for n in waiting_for(job, contested):
            found[n] = True
    return sorted(found)


def corrections(job: dict) -> list[dict]:
    """Return the entries that were corrected in two ways, as {"event", "kind", "n", "said", "rivals"}."""
    return job.get("corrected_apart", [])


def of_units(state, job: dict) -> list[dict]:
    """Return what of its units was entered apart beside their places; the last job of a unit settles it."""
    units = [state.units[identity] for identity in state.units_of(job["id"])]
    return [apart for unit in units if unit["jobs"][-1] == job["id"] for apart in of_unit(unit)]


def of_unit(unit: dict) -> list[dict]:
    """Return which entries of a unit outside any job were corrected apart, and its numbers read apart.

    As `corrections` has them, with the "unit"; of numbers "numbers" are the names of those that differ.
    """
    found = [dict(each, unit=unit["id"]) for each in unit.get("corrected_apart", [])]
    noted = unit.get("noted", [])
    differ = [name for name in NUMBERS if len(noted) > 1 and _differ(noted, name)]
    if differ:
        found.append({"unit": unit["id"], "numbers": differ, "said": noted[0]["was"], "rivals": noted})
    return found


def _differ(noted: list, name: str) -> bool:
    changed = {plain(each["data"][name]): True for each in noted if each["data"][name] != each["was"][name]}
    return len(changed) > 1


def waiting_for_correction(job: dict, apart: dict) -> list[int]:
    """Return the numbers of the tests, from 0, that wait until it is settled what one entry should say.

    Such a test itself, or those since, where it is about what was where.
    """
    if apart["kind"] not in _BEFORE_A_TEST:
        return [n for n, test in enumerate(job["tests"]) if test["event"] == apart["event"]]
    return [n for n, test in enumerate(job["tests"]) if test["n"] >= apart["n"]]


def waiting_for(job: dict, contested: Contested) -> list[int]:
    """Return the numbers of the tests, from 0, that wait for one unit: what was where is contested."""
    told = [story for story in contested.stories if not stories.is_told_later(story, job)]
    if len(told) < 2 or not claimed_positions(told, job["vehicle"]):
        return []
    start = begins(told, job)
    return [n for n, test in enumerate(job["tests"]) if test["n"] > start]


def disputed_positions(state, vehicle: str) -> list[str]:
    """Return the positions at which a unit sits, or is claimed to sit, whose place or name is in doubt."""
    found = {}
    for unit in state.claimed_at(vehicle):
        for claim in state.units[unit]["claims"]:
            if claim["vehicle"] == vehicle:
                found[claim["position"]] = True
    for unit in [state.units[identity] for identity in state.sharing_a_label()]:
        if unit["place"] == "fitted" and unit["vehicle"] == vehicle:
            found[unit["position"]] = True
    return sorted(found)


def claimed_positions(told: list, vehicle: str) -> list[str]:
    """Return the positions of a vehicle that stories are about, each once."""
    claimed = []
    for story in told:
        if story.place == "fitted" and story.vehicle == vehicle and story.position not in claimed:
            claimed.append(story.position)
    return claimed


def begins(told: list, job: dict) -> int:
    """Return as which entry of a job the first of the stories was told; what came after it is contested."""
    numbers = [stories.number_on(story, job) for story in told]
    numbers = [number for number in numbers if number >= 0]
    return min(numbers) if numbers else -1
