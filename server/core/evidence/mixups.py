"""Units that got mixed up: which is which is not known, where they are is.

From that moment there are two lists: the identities (what is on record, with their old labels) and
the bodies (the parts in the hand, each a unit of its own with an id of its own and no label). A body
is reasoned over as a fresh unknown until a scan, or that only one is left, says which one it is.
"""

from ..infer.case import MINUTES
from ..infer.figures import hundredths
from ..messages import all_of
from ..messages import any_of
from ..messages import message
from ..messages import minutes
from ..messages import sentences
from ..state.job import Job
from ..state.unit import Unit
from ..words import words
from . import readings
from . import unit_history

# More assignments of identities to the bodies than this are not gone through one by one.
_MOST_ASSIGNMENTS = 24
_SETTLED = {"scan": "evidence-mixed-by-scan", "left": "evidence-mixed-as-last"}


def open_sets(job: Job) -> list[dict]:
    """Return the mix-ups of a job that are not settled, in order of time."""
    return [each for each in job.state.mixed if each["job"] == job.id and each["open"]]


def assignments(job: Job) -> list[dict]:
    """Return every assignment of identities to the tested bodies of a job, as {body: identity}.

    Empty when there is nothing to tell apart, or more assignments than can be gone through, or a body was
    mixed up once more: then a body stays the fresh unknown that the case has.
    """
    tested = {}
    for test in job.tests:
        for place in test["fitted"]:
            tested[test["fitted"][place]] = True
    found = [{}]
    for entry in open_sets(job):
        if [each for each in entry["open"] if job.unit(each).mixup()]:
            return []
        bodies = [body for body in entry["bodies"] if body in tested]
        if bodies and len(entry["bodies"]) - len(bodies) == 1:
            bodies = entry["bodies"]  # the last one is what is left
        for body in bodies:
            longer = []
            for assignment in found:
                taken = [assignment[each] for each in assignment]
                for identity in entry["open"]:
                    if identity not in taken:
                        longer.append(_with(assignment, body, identity))
            found = longer
            if len(found) > _MOST_ASSIGNMENTS:
                return []
    return found if len(found) > 1 else []


def _with(assignment, body, identity) -> dict:
    copy = dict(assignment)
    copy[body] = identity
    return copy


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
    """Return {"scan", "test"}: the cheapest way to tell them apart, and the next cheapest, in words."""
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
    if most < 1.0 - readings.confidence(job):
        test = message("evidence-mixed-fresh")
    else:
        places, cost = cheapest_test(job, entry)
        test = message(
            "evidence-mixed-test", positions=_places(job, places), count=len(places), length=minutes(cost)
        )
    return {"scan": sentences(scan), "test": test}


def cheapest_test(job: Job, entry: dict) -> tuple:
    """Return (positions, hundredths of minutes) of the test that tells the bodies apart at least cost.

    The empty positions have to be filled anyway, and every body in another position is read by the
    same test. With none empty, one body at the position that is easiest to get to.
    """
    holds = job.holds
    order = []
    for index in range(len(job.positions)):
        position = job.positions[index]
        order.append((readings.reach(job, position), index, position["id"]))
    empty = [each for each in sorted(order) if not holds.get(each[2])]
    chosen = empty[: len(entry["bodies"])] if empty else sorted(order)[:1]
    cost = MINUTES["test"]
    for reach, _, _ in chosen:
        cost += reach + MINUTES["fit"] + (0 if empty else MINUTES["pull"])
    return [each[2] for each in chosen], hundredths(cost)


def _places(job, places) -> dict:
    return all_of([words.position_name(job, place) for place in places])


def _identity(job: Job, identity):
    return words.unit_name(job.unit(identity))


def job_view(job: Job) -> list[dict]:
    """Return the mix-ups of a job that are not settled, in words."""
    shown = []
    for entry in open_sets(job):
        told = settling_words(job, entry)
        names = [_identity(job, each) for each in entry["open"]]
        shown.append(
            {
                "at": entry["at"],
                "count": entry["count"],
                "sentence": message("evidence-mixed", units=all_of(names)),
                "scan_words": told["scan"],
                "test_words": told["test"],
            }
        )
    return shown


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
