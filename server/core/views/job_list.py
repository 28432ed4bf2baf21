"""The list of jobs: each with its board, how it stands in a few words, and its next step.

Without the reasoning, which would take a phone a tenth of a second a job: what follows from tests is said
once the job is opened. Of a closed job there is a line only; a phone need not have it in memory. A list may
be thousands of jobs long, so only the rows that are asked for are made.
"""

from ..guide import next_step
from ..messages import message
from ..parts import sorts
from ..state.job import Job
from ..state.job import known_job
from ..state.jobs_in_part import people_of
from ..state.serials import serials_of
from ..words import results
from . import search
from .findable import means_said
from .findable import said_of
from .job import small_board
from .job import unit_line

OPEN, WAITING, CLOSED = "open", "waiting", "closed"
_LATEST = 5  # closed jobs that the list shows however long ago it was
_MOST_UNITS = _MOST_VEHICLES = 5


def jobs_view(state) -> list[dict]:
    """Return every job in short, open ones first, the latest opened first among them."""
    # A server's state takes in further jobs as it is asked about those that it has.
    lines = [state.job_line(identity) for identity in list(state.jobs)]
    lines = sorted(lines, key=lambda line: (line["closed"], -line["opened_at"], line["id"]))
    return [_row(state, line) for line in lines]


def list_view(state, findable, text: str, stands: str, most: int, since: int) -> dict:
    """Return the jobs that `text` finds and stand so (any way where that is ""), `most` rows of them.

    Open ones come first, then those that wait, then the closed ones; the newest first each. Where nothing
    is asked for, what was closed before `since` is left out but for the latest, and counted in `older`.
    """
    asked = search.Asked(text)
    order = findable.order()
    groups = {OPEN: order.open, WAITING: order.waiting, CLOSED: order.closed}
    near, jobs, units, vehicles = found_in(findable, asked)
    if not asked.is_empty():
        found = {identity: True for identity in jobs}
        groups = {name: [each for each in groups[name] if each in found] for name in groups}
    counts = {name: len(groups[name]) for name in groups}
    if asked.is_empty() and not stands:
        groups[CLOSED] = _lately(state, groups[CLOSED], since)
    listed = []
    for name in (OPEN, WAITING, CLOSED):
        if stands in ("", name):
            listed.extend([(name, identity) for identity in groups[name]])
    return {
        "jobs": [_found(state, name, identity, asked, near) for name, identity in listed[:most]],
        "units": _units(state, units),
        "vehicles": _vehicles(state, findable, vehicles),
        "near": near,
        "searched": not asked.is_empty(),
        "counts": counts,
        "more": max(0, len(listed) - most),
        "older": counts[CLOSED] - len(groups[CLOSED]),
    }


def people_at_work(state, findable) -> list[str]:
    """Return who has an entry on a job that is not closed, in order of name."""
    order, people = findable.order(), {}
    for identity in order.open + order.waiting:
        people.update({name: True for name in people_of(known_job(state, identity).facts)})
    return sorted(people)


def _lately(state, closed: list[str], since: int) -> list[str]:
    """Return the closed jobs that the list shows unasked: the latest, and what was closed since then."""
    shown = closed[:_LATEST]
    for identity in closed[_LATEST:]:
        if state.job_line(identity)["closed_at"] < since:
            break
        shown.append(identity)
    return shown


def found_in(findable, asked) -> tuple[bool, list[str], list[str], list[str]]:
    """Return (whether it only comes near, jobs, units, vehicles) that a text finds, by id and in no order."""
    if asked.is_empty():
        return False, [], [], []
    tables = (findable.jobs(), findable.numbers(), findable.vehicles())
    found = [asked.among(table) for table in tables]
    near = not (found[0] or found[1] or found[2])
    if near:
        found = [asked.nearly_among(table) for table in tables]
        near = bool(found[0] or found[1] or found[2])
    return near, found[0], found[1], found[2]


def _units(state, found: list[str]) -> list[dict]:
    """Return a few of the units that were found and have a label, in order of id."""
    labelled = [unit for unit in sorted(found) if state.units[unit]["code"]]
    return [unit_line(state, unit) for unit in labelled[:_MOST_UNITS]]


def _vehicles(state, findable, found: list[str]) -> list[dict]:
    """Return a few of the vehicles that were found, the one whose job was opened last first."""
    wanted, told = {identity: True for identity in found}, []
    for identity in findable.order().vehicles if wanted else []:
        if wanted.pop(identity, False):
            vehicle = state.vehicles[identity]
            line = {name: vehicle.get(name, "") for name in ("id", "name", "plate", "vin")}
            line["jobs"] = len(vehicle["jobs"])
            told.append(line)
            if len(told) == _MOST_VEHICLES:
                break
    return told


def _found(state, stands: str, identity: str, asked, near: bool) -> dict:
    """Return the row of a job with how it stands and, of a search, by what it was found."""
    line = state.job_line(identity)
    row = _row(state, line)
    row["stands"] = stands
    row["found_by"] = [] if asked.is_empty() else _found_by(state, line, asked, near)
    return row


def _found_by(state, line: dict, asked, near: bool) -> list[dict]:
    """Return what was found and is not in the row itself: numbers, sensors, codes, people.

    What only comes near is said of the row's own words too, for nobody sees it there at once.
    """
    people, codes = said_of(state, line)
    vehicle, said = state.vehicles[line["vehicle"]], []
    if near:
        said = [("plate", vehicle.get("plate", "")), ("vehicle", vehicle["name"])]
        said.append(("complaint", line["complaint"]))
    said.extend([("vin", vehicle["vin"]), ("part", line["part"])])
    for unit in state.units_of(line["id"]):
        said.extend([("sensor", code) for code in search.codes_of_unit(state.units[unit])])
        said.extend([("serial", serial) for serial in serials_of(state.units[unit])])
    said.extend([("code", code) for code in codes] + [("person", name) for name in people])
    said.extend([("means", means) for means in means_said(state, line)])
    return search.reasons(asked, said, near)


def _row(state, line: dict) -> dict:
    identity = line["id"]
    vehicle = state.vehicles[line["vehicle"]]
    job = None if line["closed"] else known_job(state, identity)
    return {
        "id": identity,
        "title": vehicle["name"],
        "vehicle": vehicle["id"],
        "plate": vehicle.get("plate", ""),
        "complaint": line["complaint"],
        "sort": sorts.by_layout(line["layout"]).identity,
        "opened_at": line["opened_at"],
        "closed": line["closed"],
        "closed_at": line["closed_at"],
        "tests": line["tests"],
        "out": len(state.units_out(identity)),
        "disputed": len(state.disputed(identity)),
        "paused": bool(job and job.pause),
        "handed_to": job.handed["to"] if job and job.handed else "",
        "board": small_board(job) if job else None,
        "standing_words": _standing(job) if job else "",
        "next_words": _next(job) if job else "",
    }


def _standing(job: Job) -> dict:
    """Return how a job stands, in about three words."""
    if job.pause:
        return message("ways-paused-title", why=job.pause["why"])
    if job.move:
        return message("views-list-move", move=job.move["move"])
    if not job.tests:
        return message("views-list-untested")
    last = job.last_test()
    if not last["heard"]:
        return message("views-list-not-heard")
    if not last["faulted"]:
        return message("views-list-clean")
    return message(
        "views-list-fault", positions=results.places(job, last["faulted"]), count=len(last["faulted"])
    )


def _next(job: Job):
    """Return what to do next: the heading of its step, where that does not hang on the reasoning."""
    if job.pause:
        part = job.pause["part"]
        return message("ways-order", part=part) if part else message("ways-go-on")
    step = next_step.without_reasoning(job)
    if step:
        return step["title"]
    last = job.last_test()
    if not last["heard"]:
        return job.sort.says("guide-test-again")
    return message("views-list-find" if last["faulted"] else "views-list-see")
