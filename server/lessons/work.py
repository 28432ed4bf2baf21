"""How the work came out: comebacks, minutes beside the plan, parts, returns."""

import json
from functools import lru_cache
from typing import Any

from sqlite_utils import Database

from server.core.words.words import DAY_MS
from server.folded.rows import Rows
from server.lessons.sums import Sums

COMEBACK_DAYS = 90
_MS = 60_000
#: The least jobs of which a figure is more than its count.
ENOUGH = 10


def tells_enough(rate: dict[str, Any]) -> bool:
    """Tells whether a rate of the figures is more than its count: by its readings, and by their jobs."""
    return min(rate["tries"], rate["jobs"]) >= ENOUGH


Pair = tuple[str, str]


def comebacks(jobs: list[dict[str, Any]]) -> list[Pair]:
    """Returns (job, the one that came back) where a position of their vehicle faulted again in time.

    That a fault is there again its first test says, whether the second job is closed by now or not.
    """
    ordered = sorted(jobs, key=lambda each: (each["opened"], each["job"]))
    found = []
    for job in ordered:
        again = [later["job"] for later in ordered if _came_back(job, later)]
        if again:
            found.append((job["job"], again[0]))
    return found


def _came_back(job: dict[str, Any], later: dict[str, Any]) -> bool:
    if job["closed"] is None:
        return False
    soon = 0 <= later["opened"] - job["closed"] <= COMEBACK_DAYS * DAY_MS
    return soon and later["job"] != job["job"] and bool(set(later["faulted"]) & set(job["faulted"]))


def beside_plan(sums: Sums) -> list[tuple[str, int, int]]:
    """Returns (job, time that its timed work took, time that the plan reckons for the same work).

    Both in hundredths of a minute; pauses are left out.
    """
    work = dict(sums.work)
    for times in sums.all_times.values():
        for pause in times.pauses():
            took, plan, number = work[pause.job]
            work[pause.job] = (took - pause.ms, plan - pause.plan_x100, number - 1)
    worked = [(job, took, plan) for job, (took, plan, number) in sorted(work.items()) if number]
    return [(job, int(took * 100 / _MS + 0.5), plan) for job, took, plan in worked]


def returns(db: Database, since: int) -> dict[tuple[str, str], list[str]]:
    """Returns (decision, reason) -> the last job of each unit of which such a decision stands.

    "" is for no reason, and for a unit without a job.
    """
    found: dict[tuple[str, str], list[str]] = {}
    rows = Rows(db)
    units = db.conn.execute("SELECT DISTINCT id FROM folded_links WHERE link GLOB 'decided:*' ORDER BY id")
    for (unit,) in units.fetchall():
        job, decisions = _decided(rows.read("unit", unit) or "")
        for decision, reason, at in decisions:
            if at >= since:
                found.setdefault((decision, reason), []).append(job)
    return found


@lru_cache(maxsize=4096)
def _decided(body: str) -> tuple[str, list[tuple[str, str, int]]]:
    """Returns the last job of a unit, and (decision, reason, when) for each that stands."""
    if not body:
        return "", []
    facts = json.loads(body)
    made = [entry["decision"] for entry in facts["returns"] if entry["decision"] is not None]
    decisions = [
        (each["decision"], reason, each["at"]) for each in made for reason in each["reasons"] or [""]
    ]
    return (facts["jobs"] or [""])[-1], decisions
