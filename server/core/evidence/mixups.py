"""Units that got mixed up: which is which is not known, where they are is.

From that moment there are two lists: the identities (what is on record, with their old labels) and
the bodies (the parts in the hand, each a unit of its own with an id of its own and no label). A body
is reasoned over as a fresh unknown until a scan, or that only one is left, says which one it is.
"""

from ..messages import any_of
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..state.unit import Unit
from ..words import words
from . import readings
from . import unit_history

# More assignments of identities to the bodies than this are not gone through one by one.
_MOST_ASSIGNMENTS = 30
_SETTLED = {"scan": "evidence-mixed-by-scan", "left": "evidence-mixed-as-last"}


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


def doubtful(job: Job, result: dict) -> list[str]:
    """Return the fitted bodies that the tests have not cleared; no reading needs to have blamed them.

    A body starts with the chance of being the bad one, unlike any other unit without a fault shown,
    so that 'nothing was shown' is not enough for it.
    """
    chances = {entry["cause"]: entry["probability"] for entry in result["causes"]}
    allowed = 1000000000 - job.confidence_ppb
    found = []
    for entry in open_sets(job):
        for body in entry["bodies"]:
            unit = job.unit(body)
            if unit.is_fitted_here():
                if chances.get("unit:" + body, 0) > allowed:
                    found.append(body)
    return found


def settling_words(job: Job, entry: dict) -> dict:
    """Return {"scan", "test"}: what tells them apart at once, and what there is without a label, in words."""
    names = [_identity(job, each) for each in entry["open"] if job.unit(each).is_labelled()]
    scan = [message("evidence-mixed-no-label")]
    if names:
        scan = [message("evidence-mixed-scan", units=any_of(names))]
        if len(entry["open"]) == 2:
            scan.append(message("evidence-mixed-other"))
    chances = unit_history.chances_before(job.state, entry)
    most = 0.0
    for each in entry["open"]:
        most = max(most, chances[each])
    suspected = most >= 1.0 - readings.confidence(job)
    test = message("evidence-mixed-tests" if suspected else "evidence-mixed-fresh")
    return {"scan": sentences(scan), "test": test}


def _identity(job: Job, identity):
    return words.unit_name(job.unit(identity))


def lost_view(state, unit: dict) -> list[dict]:
    """Return each time the identity of a unit was lost; it stays on its trail for good."""
    shown = []
    sort = Unit(state, unit["id"]).sort.identity
    for entry in unit["lost"]:
        settled = message(_SETTLED.get(entry["settled"], "evidence-mixed-open"))
        shown.append(
            {
                "at": entry["at"],
                "count": entry["count"],
                "settled": entry["settled"],
                "words": message("evidence-mixed-involved", count=entry["count"], sort=sort, settled=settled),
            }
        )
    return shown
