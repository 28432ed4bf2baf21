"""How the work came out: comebacks, causes by position, minutes beside the plan, parts, returns."""

import json
from collections.abc import Callable
from typing import Any

from sqlite_utils import Database

from server.folded.rows import Rows
from server.lessons import minutes
from server.lessons.spans import DAY_MS

COMEBACK_DAYS = 90
_MS = 60_000
#: The least jobs of which a figure is more than its count.
ENOUGH = 10


def comebacks(jobs: list[dict[str, Any]], known: list[dict[str, Any]]) -> list[tuple[str, str]]:
    """Returns (job, the one that came back) where a repaired position of a vehicle faulted again in time.

    `known` are all jobs: what comes back may be in a later span.
    """
    by_vehicle: dict[str, list[dict[str, Any]]] = {}
    for job in known:
        by_vehicle.setdefault(job["vehicle"], []).append(job)
    found = []
    for job in jobs:
        for later in sorted(by_vehicle[job["vehicle"]], key=lambda each: (each["opened"], each["job"])):
            soon = 0 <= later["opened"] - job["closed"] <= COMEBACK_DAYS * DAY_MS
            if soon and later["job"] != job["job"] and set(later["faulted"]) & set(job["faulted"]):
                found.append((job["job"], later["job"]))
                break
    return found


def repaired(jobs: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Returns the jobs that saw a fault and were closed as done."""
    return [job for job in jobs if job["faulted"] and not job["unrepaired"]]


def causes(jobs: list[dict[str, Any]]) -> list[tuple[str, str, str]]:
    """Returns (class, position or group, job) of every cause: proven, or else the likeliest."""
    return [(kind, place, job["job"]) for job in jobs for kind, place in job.get("causes", [])]


class Times:
    """Times in milliseconds of one kind, and the jobs that they are of."""

    def __init__(self) -> None:
        """Starts with none."""
        self.ms: list[int] = []
        self.jobs: list[str] = []

    def add(self, job: str, ms: int) -> None:
        """Adds a time of a job; those of one job come together."""
        self.ms.append(ms)
        if self.jobs[-1:] != [job]:
            self.jobs.append(job)


def times_by(jobs: list[dict[str, Any]], key: Callable[[dict, str, str], Any]) -> dict[Any, Times]:
    """Returns key -> times; `key(job, action, position)` is None for what is left out."""
    found: dict[Any, Times] = {}
    for job in jobs:
        for action, position, ms in job["times"]:
            name = key(job, action, position)
            if name is not None:
                found.setdefault(name, Times()).add(job["job"], ms)
    return found


def beside_plan(jobs: list[dict[str, Any]]) -> list[tuple[str, float, float]]:
    """Returns (job, minutes that its timed work took, minutes that the plan reckons for the same work)."""
    fences = {
        action: minutes.fence(times.ms)
        for action, times in times_by(jobs, lambda job, action, position: action).items()
    }
    found = []
    for job in jobs:
        taken = [minutes.Taken(*each) for each in job["times"] if each[2] <= fences[each[0]]]
        if taken:
            reach = {each[0]: each[4] for each in job["positions"]}
            plan = sum(minutes.planned(each, reach) for each in taken)
            found.append((job["job"], sum(each.ms for each in taken) / _MS, plan))
    return found


def returns(db: Database, since: int) -> dict[tuple[str, str], list[str]]:
    """Returns (decision, reason) -> the last job of each unit of which such a decision stands.

    "" is for no reason, and for a unit without a job.
    """
    found: dict[tuple[str, str], list[str]] = {}
    rows = Rows(db)
    units = db.conn.execute("SELECT DISTINCT id FROM folded_links WHERE link LIKE 'decided:%' ORDER BY id")
    for (unit,) in units.fetchall():
        facts = json.loads(rows.read("unit", unit) or '{"returns": [], "jobs": []}')
        for entry in facts["returns"]:
            made = entry["decision"]
            if made is None or made["at"] < since:
                continue
            for reason in made["reasons"] or [""]:
                found.setdefault((made["decision"], reason), []).append((facts["jobs"] or [""])[-1])
    return found
