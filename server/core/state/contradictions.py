"""What phones entered apart from each other and what contradicts, on one job, until somebody settles it.

Three sorts: a unit at two places or two units at one, tests that may be one and the same, and a job that
one phone closed while another worked on.
"""

from collections import namedtuple

from . import stories
from .job import Job

# `units` are those whose label settles it: the one in dispute first, then those that sit where it is claimed.
Contested = namedtuple("Contested", ("unit", "units", "stories"))


def places(job: Job) -> list[Contested]:
    """Return the units in dispute of a job with all that is said of them, what was contested first first."""
    disputed = job.disputed()
    if not disputed:
        return []
    numbers = order(job)
    found = []
    for identity in disputed:
        told = stories.told(job.state, identity)
        units, rivals = [identity], []
        for story in told:
            other = _occupant(job, story)
            if other and other not in units:
                units.append(other)
                rivals.append(stories.of_occupant(job.state, story.vehicle, story.position, other))
        if rivals and len(told) > 1 and told[0].place == "out":
            told = told[1:]  # that it was in a hand before is no contradiction
        told = _in_order(told + rivals, numbers)
        found.append((_number(told[-1], numbers), len(found), Contested(identity, units, told)))
    return [each[2] for each in sorted(found, key=lambda each: (each[0], each[1]))]


def _occupant(job: Job, story: stories.Story) -> str | None:
    """Return the other unit that sits on record where a story has this one."""
    if story.place != "fitted" or story.vehicle != job.vehicle_id:
        return None
    other = job.fitted_at(story.position)
    return other if other and other != story.unit else None


def order(job: Job) -> dict:
    """Return identity of each entry on the job -> its number in the log."""
    history = job.history
    return {"{}:{}".format(e["device"], e["seq"]): n for n, e in enumerate(history)}


def _number(story: stories.Story, numbers: dict) -> int:
    return numbers.get(stories.event_of(story), -1)


def _in_order(told: list, numbers: dict) -> list:
    """Return stories in the order of the log; those of no entry on this job keep their place before it."""
    keyed = []
    last = -1
    for n in range(len(told)):
        last = max(last, _number(told[n], numbers))
        keyed.append((_number(told[n], numbers) if _number(told[n], numbers) >= 0 else last, n))
    return [told[n] for _, n in sorted(keyed)]


def tests(job: Job) -> list[list[int]]:
    """Return the tests that may be one and the same, as groups of their numbers from 0."""
    at = {test["event"]: n for n, test in enumerate(job.tests)}
    found = []
    for n, test in enumerate(job.tests):
        apart = [at[event] for event in test.get("apart", []) if event in at]
        if apart:
            found.append(sorted(apart + [n]))
    return found


def closing(job: Job) -> tuple | None:
    """Return (closing, entry that went on) of a job that one phone closed while another worked on."""
    went_on = job.reopened
    if went_on is None or job.is_closed():
        return None
    history = job.history
    closed = [e for e in history if e["kind"] == "job_closed" and e["understood"] and not e["withdrawn"]]
    entries = [e for e in history if "{}:{}".format(e["device"], e["seq"]) == went_on]
    return (closed[-1], entries[0]) if closed and entries else None


def waiting(job: Job) -> list[int]:
    """Return the numbers of the tests, from 0, that say nothing until a contradiction is settled."""
    found = {}
    for group in tests(job):
        for n in group:
            found[n] = True
    for contested in places(job):
        for n in waiting_for(job, contested):
            found[n] = True
    return sorted(found)


def waiting_for(job: Job, contested: Contested) -> list[int]:
    """Return the numbers of the tests, from 0, that wait for one unit: what was where is contested."""
    if not claimed_positions(contested.stories, job.vehicle_id):
        return []
    numbers = order(job)
    start = begins(contested.stories, numbers)
    return [n for n, test in enumerate(job.tests) if numbers.get(test["event"], -1) > start]


def claimed_positions(told: list, vehicle: str) -> list[str]:
    """Return the positions of a vehicle that stories are about, each once."""
    claimed = []
    for story in told:
        if story.place == "fitted" and story.vehicle == vehicle and story.position not in claimed:
            claimed.append(story.position)
    return claimed


def begins(told: list, numbers: dict) -> int:
    """Return the number of the first entry that tells one of the stories; what came after it is contested."""
    known = [numbers[stories.event_of(s)] for s in told if stories.event_of(s) in numbers]
    return min(known) if known else -1
