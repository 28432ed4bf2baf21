"""The page of one vehicle: what is on it since when, what each job found and where, the warranty on work."""

from ..codes import labels
from ..evidence import job_alone
from ..messages import message
from ..state import stories
from ..state.job import Job
from ..state.job import known_job
from ..words import causes
from ..words import words
from . import job as view
from .returning import outcome


def vehicle_page(state, identity: str, now: int, warranty_days: int) -> dict:
    """Return what is known of a vehicle; `now` in milliseconds, `warranty_days` 0 where none is given."""
    vehicle = state.vehicles[identity]
    jobs = [known_job(state, each) for each in vehicle["jobs"]]
    last = jobs[-1]
    found = {}
    for job in jobs:
        for position, entry in _found(job):
            found.setdefault(position, []).append(entry)
    return {
        "id": identity,
        "name": vehicle["name"],
        "vin": vehicle["vin"],
        "board": view.board(last, None),
        "positions": [_position(last, each, found.pop(each["id"], [])) for each in last.positions],
        # Of a feed, of the control unit, and of positions that the last job did not have.
        "elsewhere": [entry for place in sorted(found) for entry in found[place]],
        "jobs": [_line(job, now, warranty_days) for job in reversed(jobs)],
    }


def _position(job: Job, position: dict, found: list) -> dict:
    """Return a position: what sits there, since when (0: since before its first job), what was found."""
    unit, since = job.fitted_at(position["id"]), 0
    told = message("views-vehicle-empty")
    if unit:
        since = _since(job.unit(unit).transfers, position["id"])
        told = words.unit_name(job.unit(unit))
    return {
        "id": position["id"],
        "name": words.called(job, position),
        "unit": unit or "",
        "shown": labels.shown(job.unit(unit).code) if unit else "",
        "words": told,
        "since": since,
        "found": found,
    }


def _since(transfers: list, position: str) -> int:
    """Return when a unit was fitted where it sits, 0 where it was there before its first job.

    One that a job pulled there and put back, as for a test, was there all along.
    """
    before = [each for each in transfers if stories.leads_to(each)]
    while True:
        fitted = [each for each in before if each["what"] == "fitted"]
        if not fitted:
            return 0
        jobs = [each["job"] for each in before]
        first = jobs.index(fitted[-1]["job"])
        if before[first]["what"] != "out" or before[first]["position"] != position:
            return fitted[-1]["at"]
        before = before[:first]


def _found(job: Job) -> list:
    """Return (position, {"job", "at", "sentence"}) for each cause that a job concluded."""
    concluded = job_alone.verdict(job)
    said = []
    for cause in concluded["causes"] if concluded else []:
        kind, what, _ = causes.split(cause)
        place = what if kind in ("circuit", "blocked") else kind
        if kind == "unit":
            places = [each for each in job.tests[0]["fitted"] if job.tests[0]["fitted"][each] == what]
            if what not in job.units_at_opening or not places:
                continue  # a spare that turned out bad is nothing that was found on the vehicle
            place = places[0]
        name = message("evidence-cause", cause=causes.phrase(job, cause))
        said.append((place, {"job": job.id, "at": job.opened_at, "sentence": name}))
    return said


def _line(job: Job, now: int, warranty_days: int) -> dict:
    """Return a job as the page lists it."""
    closing = job.closing
    return {
        "id": job.id,
        "at": job.opened_at,
        "closed": closing["at"] if closing else 0,
        "complaint": job.complaint,
        "sentence": outcome(job) if closing else message("views-vehicle-open"),
        "warranty": _warranty(job, now, warranty_days),
    }


def _warranty(job: Job, now: int, days: int):
    """Return how long the warranty on the work of a job runs, or ran; "" where there is none."""
    if not job.closing or "why" in job.closing or not days:
        return ""
    left = days - max(0, now - job.closing["at"]) // words.DAY_MS
    if left > 0:
        return message("views-vehicle-warranty", days=left)
    return message("views-vehicle-warranty-over", days=-left)
