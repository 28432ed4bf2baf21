"""What a process keeps of the figures from one look to the next, so that one job more is a small step.

A cache in memory alone: contributions by their digest, and the sums over each length of span. A command
makes one for its one look; a server has one for its life.
"""

from collections.abc import Iterable
from threading import Lock
from typing import Any

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
        # Of what is held, as `_follow` has gone through it.
        self._known: dict[str, kept.Kept] = {}
        self._closed: dict[str, dict[str, Any]] = {}
        self._right_from: dict[str, float] = {}  # of the closed ones
        self._counted = 0
        self._vehicles: dict[str, dict[str, dict[str, Any]]] = {}
        self._comebacks: dict[str, list[Pair]] = {}

    def look(self, db: Database, now: int, since: int, seconds: float | None) -> tuple[Sums, int]:
        """Returns the sums over the jobs closed since a moment, and how many jobs are wanting.

        What reached the server since then and was closed before it by the clock of its phone is in `late`:
        the clock may be behind, or the phone was without a network for so long.
        """
        waiting = kept.refresh(db, self._held, seconds)
        length = now - since if since else 0
        sums = self._sums.pop(length, None) or Sums()
        self._sums[length] = sums
        if len(self._sums) > _MOST_SPANS:
            del self._sums[next(iter(self._sums))]
        self._follow()
        jobs = self._closed
        wrong = {name for name, right_from in self._right_from.items() if right_from > now}
        if since:
            late = {n for n, job in jobs.items() if job["closed"] < since <= job["received"]} - wrong
            sums.undated, sums.late = _lines(jobs, wrong), _lines(jobs, late)
            jobs = {n: job for n, job in jobs.items() if job["closed"] >= since and n not in wrong}
            wrong = set()
        sums.hold(jobs, wrong)
        return sums, waiting

    def comebacks(self) -> list[Pair]:
        """Returns (job, the one in which it came back) of all spans; the second may still be open."""
        return [pair for pairs in self._comebacks.values() for pair in pairs]

    def counted(self) -> int:
        """Returns how many jobs count towards rates, whichever span is looked at."""
        return self._counted

    def still_open(self, jobs: Iterable[str]) -> list[tuple[str, str, int]]:
        """Returns those of some jobs that are not closed, as lines with the time at which each was opened."""
        said = [self._held[job].said for job in sorted(set(jobs))]
        return [(each["job"], each["name"], each["opened"]) for each in said if each["closed"] is None]

    def _follow(self) -> None:
        """Goes through what has changed in what is held."""
        held, known = self._held, self._known
        changed = set()
        for name in [name for name, before in known.items() if held.get(name) is not before]:
            said = known.pop(name).said
            changed.add(said["vehicle"])
            del self._vehicles[said["vehicle"]][name]
            self._counted -= _counts(said)
            if self._closed.pop(name, None):
                del self._right_from[name]
        for name in held.keys() - known.keys():
            known[name] = held[name]
            said = held[name].said
            changed.add(said["vehicle"])
            self._vehicles.setdefault(said["vehicle"], {})[name] = said
            self._counted += _counts(said)
            if said["closed"] is not None:
                self._closed[name], self._right_from[name] = said, held[name].right_from
        for vehicle in changed:
            self._comebacks[vehicle] = comebacks(list(self._vehicles[vehicle].values()))


def _counts(said: dict[str, Any]) -> bool:
    """Tells whether a job counts towards rates; one that is open does not."""
    return said.get("why") == ""


def _lines(jobs: dict[str, dict[str, Any]], names: set[str]) -> list[tuple[str, str, int]]:
    return [(name, jobs[name]["name"], jobs[name]["closed"]) for name in sorted(names)]
