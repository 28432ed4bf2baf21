"""Which unit each part may be that got mixed up: the ways that the reasoning goes through, one by one."""

from ..state.job import Job

# More assignments of identities to the bodies than this are not gone through one by one.
_MOST_ASSIGNMENTS = 30


def open_sets(job: Job) -> list[dict]:
    """Return the mix-ups of a job that are not settled, in order of time."""
    return [each for each in job.state.mixed if each["job"] == job.id and each["open"]]


def loose(job: Job) -> list[str]:
    """Return the bodies that lie in the hand while a position is empty and no move is under way."""
    holds = job.holds
    if job.move or not [each for each in job.positions if not holds.get(each["id"])]:
        return []
    found = []
    for entry in open_sets(job):
        for body in entry["bodies"]:
            unit = job.unit(body)
            if unit.is_in_hand_here() and not unit.is_disputed():
                found.append(body)
    return found


def assignments(job: Job, case: dict) -> list[list]:
    """Return every assignment of identities to the bodies of a job, each a list of {body: identity}.

    One a mix-up, in the order of time. Identities of which the tests say the same, none of them blamed, are
    not told apart: one way stands for all in which only they change places. Empty when nothing is
    mixed up, or there are more ways than can be gone through: then a body stays the fresh unknown that the
    case has.
    """
    found = [[]]
    for entry in open_sets(job):
        ways = _ways(entry["bodies"], _groups(job, case, entry))
        if len(found) * len(ways) > _MOST_ASSIGNMENTS:
            return []
        found = [before + [way] for before in found for way in ways]
    return found if found != [[]] else []


def alike(job: Job, case: dict) -> dict:
    """Return, for each unit whose body is not known, those that `assignments` does not tell from it."""
    found = {}
    for entry in open_sets(job):
        for group in _groups(job, case, entry):
            for identity in group:
                found[identity] = group
    return found


def _groups(job: Job, case: dict, entry: dict) -> list[list]:
    groups = {}
    for identity in entry["open"]:
        key = _told_of(case, identity) if job.unit(identity).mixup() is None else identity
        groups[key] = groups.get(key, []) + [identity]
    return [groups[key] for key in sorted(groups)]


def _ways(bodies: list, groups: list) -> list[dict]:
    """Return the ways to give the bodies the identities of these groups, in each in its own order."""
    if not bodies:
        return [{}]
    found = []
    for n, group in enumerate(groups):
        if group:
            others = groups[:n] + [group[1:]] + groups[n + 1 :]
            for way in _ways(bodies[1:], others):
                way[bodies[0]] = group[0]
                found.append(way)
                if len(found) > _MOST_ASSIGNMENTS:
                    return found
    return found


def _told_of(case: dict, identity: str) -> str:
    """Return all that a case says of a unit no test blames, as text; the unit itself where one does."""
    said = [unit for unit in case["units"] if unit["id"] == identity]
    told = [str(unit.get("prior", "")) + "/" + (unit["part"] or "") for unit in said]
    if "unit:" + identity in [each["cause"] for each in case.get("likelihoods", [])]:
        return identity
    for n, test in enumerate(case["tests"]):
        for place in sorted(test["fitted"]):
            if test["fitted"][place] == identity:
                if place in test["faulted"]:
                    return identity
                told.append(str(n) if place not in test["silent"] else "")
    return " ".join(told)
