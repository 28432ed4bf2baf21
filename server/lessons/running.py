"""What a process keeps of the figures from one look to the next, so that one job more is a small step.

A cache in memory alone: contributions by their digest, and the sums over each length of span. A command
makes one for its one look; a server has one for its life.
"""

from threading import Lock

from sqlite_utils import Database

from server.lessons import kept
from server.lessons.sums import Sums
from server.lessons.work import Pair
from server.lessons.work import comebacks

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
        self._comebacks: dict[str, list[Pair]] = {}

    def look(self, db: Database, now: int, since: int, seconds: float | None) -> tuple[Sums, int]:
        """Returns the sums over the jobs closed since a moment, and how many jobs are wanting."""
        waiting = kept.refresh(db, self._held, seconds)
        length = now - since if since else 0
        sums = self._sums.pop(length, None) or Sums()
        self._sums[length] = sums
        if len(self._sums) > _MOST_SPANS:
            del self._sums[next(iter(self._sums))]
        jobs = {name: each.said for name, each in self._held.items()}
        wrong = {name for name, each in self._held.items() if each.right_from > now}
        if since:
            sums.undated = [(name, jobs[name]["name"], jobs[name]["closed"]) for name in sorted(wrong)]
            jobs = {n: job for n, job in jobs.items() if job["closed"] >= since and n not in wrong}
            wrong = set()
        sums.hold(jobs, wrong)
        self._list_by_vehicle()
        return sums, waiting

    def comebacks(self) -> list[Pair]:
        """Returns (job, the one in which it came back) of all spans."""
        return [pair for pairs in self._comebacks.values() for pair in pairs]

    def _list_by_vehicle(self) -> None:
        held, known = self._held, self._vehicle_of
        changed = set()
        for name in [name for name, before in known.items() if held.get(name) is not before]:
            changed.add(known[name].said["vehicle"])
            del self._vehicles[known.pop(name).said["vehicle"]][name]
        for name in held.keys() - known.keys():
            vehicle = held[name].said["vehicle"]
            changed.add(vehicle)
            self._vehicles.setdefault(vehicle, {})[name] = known[name] = held[name]
        for vehicle in changed:
            self._comebacks[vehicle] = comebacks([each.said for each in self._vehicles[vehicle].values()])
