"""What the self-tests of a job have shown up to now: which count, where faults were, how one went away."""

from ..messages import all_of
from ..messages import message
from ..state.job import Job
from ..words import words


def counted(job: Job, result: dict | None) -> list:
    """Return the numbers of the tests that count, from 0; without a result none is set aside."""
    ignored = {entry["test"]: True for entry in result["ignored"]} if result else {}
    return [index for index in range(len(job.tests)) if index not in ignored]


def last_was_clean(job: Job, result: dict) -> bool:
    """Tell whether the last test that counts showed no fault."""
    those = counted(job, result)
    return bool(those) and not job.tests[those[-1]]["faulted"]


def last_shows_a_fault(job: Job, result: dict) -> bool:
    """Tell whether the last test that counts shows a fault where a unit sits with its plug on."""
    those = counted(job, result)
    if not those:
        return False
    last = job.tests[those[-1]]
    for place in last["faulted"]:
        off = place in last["unplugged"] or place in last["disputed"]
        if last["fitted"].get(place) and not off:
            return True
    return False


def only_unplugged(job: Job, result: dict) -> bool:
    """Tell whether faults were shown, and each where the plug was off or the position empty."""
    shown = False
    for index in counted(job, result):
        test = job.tests[index]
        for position in test["faulted"]:
            if position in test["fitted"] and position not in test["unplugged"]:
                return False
            shown = True
    return shown


def how_it_went(job: Job, result: dict) -> dict:
    """Say what was done between the last fault and the first clean test after it."""
    those = counted(job, result)
    showed = [index for index in those if job.tests[index]["faulted"]]
    if not showed:
        return message("evidence-went-meter")
    after = [index for index in those if index > showed[-1]]
    if not after:
        return message("evidence-went-away")
    before, now = job.tests[showed[-1]], job.tests[after[0]]
    fresh = [
        position
        for position in before["faulted"]
        if now["fitted"].get(position) not in before["fitted"].values() and position in now["fitted"]
    ]
    if fresh:
        names = [words.position_name(job, position) for position in fresh]
        return message("evidence-went-fresh", sort=job.sort.identity, positions=all_of(names))
    if before["fitted"] != now["fitted"]:
        return message("evidence-went-handled", sort=job.sort.identity)
    if now["repaired"]:
        return message("evidence-went-repair")
    if now["cleaned"]:
        names = [words.position_name(job, position) for position in sorted(now["cleaned"])]
        return message("evidence-went-cleaned", positions=all_of(names), count=len(names))
    return message("evidence-went-stayed", count=len(after))


def faulted_places(job: Job, unit: str) -> list:
    """Return the positions at which a unit showed a fault, in the order in which it did."""
    places = []
    for test in job.tests:
        for position in sorted(test["fitted"]):
            if test["fitted"][position] == unit and position in test["faulted"] and test["heard"]:
                if position not in places:
                    places.append(position)
    return places


def faulted_units(job: Job, position: str) -> list:
    """Return the units that showed a fault at a position, in the order in which they did."""
    units = []
    for test in job.tests:
        unit = test["fitted"].get(position)
        if position in test["faulted"] and test["heard"] and unit not in units:
            units.append(unit)
    return units
