"""What a process keeps of the figures from one look to the next, so that one job more is a small step.

A cache in memory alone: contributions by their digest, and the sums over each length of span. A command
makes one for its one look; a server has one for its life.
"""

from threading import Lock
from typing import Any

from sqlite_utils import Database

from server.lessons import kept
from server.lessons.spans import has_wrong_clock
from server.lessons.sums import Sums

_MOST_SPANS = 8


class Running:
    """Contributions read and sums made before."""

    def __init__(self) -> None:
        """Starts with nothing."""
        self.lock = Lock()
        self._held: kept.Held = {}
        self._sums: dict[int, Sums] = {}
        self._vehicles: dict[str, dict[str, kept.Kept]] = {}
        self._vehicle_of: dict[str, kept.Kept] = {}

    def look(self, db: Database, now: int, since: int, seconds: float | None) -> tuple[Sums, int]:
        """Returns the sums over the jobs closed since a moment, and how many jobs are wanting."""
        waiting = kept.refresh(db, self._held, seconds)
        length = now - since if since else 0
        sums = self._sums.pop(length, None) or Sums()
        self._sums[length] = sums
        if len(self._sums) > _MOST_SPANS:
            del self._sums[next(iter(self._sums))]
        jobs, unclocked, undated = {}, set(), []
        for name, each in self._held.items():
            job = each.said
            is_wrong = has_wrong_clock(job["opened"], job["closed"], now)
            if since and is_wrong:
                undated.append((name, job["name"], job["closed"]))
            if since and (is_wrong or job["closed"] < since):
                continue
            jobs[name] = job
            if is_wrong:
                unclocked.add(name)
        sums.hold(jobs, unclocked)
        sums.undated = undated
        self._list_by_vehicle()
        return sums, waiting

    def seen_again(self) -> list[list[dict[str, Any]]]:
        """Returns the jobs of each vehicle that has more than one, of all spans."""
        return [[each.said for each in jobs.values()] for jobs in self._vehicles.values() if len(jobs) > 1]

    def _list_by_vehicle(self) -> None:
        for name, before in list(self._vehicle_of.items()):
            if self._held.get(name) is not before:
                del self._vehicles[before.said["vehicle"]][name]
                del self._vehicle_of[name]
        for name, each in self._held.items():
            if name not in self._vehicle_of:
                self._vehicles.setdefault(each.said["vehicle"], {})[name] = each
                self._vehicle_of[name] = each
