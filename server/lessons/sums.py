"""What the figures are made of, summed over the jobs of a span: one job more or less is one step.

Nothing here depends on the order in which jobs came and went, but for the last bits of a float.
"""

import json
from bisect import insort
from collections import Counter
from typing import Any

from server.lessons import minutes
from server.lessons.contribution import ANOTHER_SORT
from server.lessons.reliability import BANDS
from server.lessons.reliability import Claims
from server.lessons.reliability import band_of
from server.lessons.said import Groups
from server.lessons.said import Start
from server.lessons.showing import Base
from server.lessons.times import Timed
from server.lessons.times import Times

_PPB = 1_000_000_000

Job = dict[str, Any]


class Sums:
    """The jobs of a span and what they come to."""

    def __init__(self) -> None:
        """Starts without a job."""
        self.jobs: dict[str, Job] = {}
        self.unclocked: set[str] = set()
        self.undated: list[tuple[str, str, int]] = []  # as `names`: of any span, by a clock that was wrong
        self.late: list[tuple[str, str, int]] = []  # as `names`: sent in the span, closed before it
        # Lines of jobs, each list in order of them.
        self.names: list[tuple[str, str, int]] = []  # job, name of its vehicle, when it was closed
        self.counted: list[str] = []
        self.proven: list[str] = []
        self.repaired: list[str] = []
        self.left_out: list[tuple[str, str]] = []  # why, job
        self.found: list[tuple[str, int, str, str]] = []  # job, number of the cause in it, class, place
        self.parts: list[tuple[str, int, int]] = []  # job, bought, saved
        self.behind: dict[str, list[str]] = {}  # by rate of readings: jobs that say something of it
        self.times_out: list[tuple[str, int]] = []  # job, how many times of it are left out
        self.causes: Groups = Counter()
        self.readings: Groups = Counter()
        self.checks: dict[str, list[int]] = {}
        self.claims = [Claims() for _ in BANDS[1:]]
        self.by_action: dict[str, Times] = {}
        self.by_position: dict[tuple[str, str], Times] = {}
        self.by_model: dict[str, Times] = {}
        self.all_times: dict[str, Times] = {}
        self.layouts: Counter[str] = Counter()
        self.counted_layouts: Counter[str] = Counter()
        self.work: dict[str, tuple[int, int, int]] = {}  # job -> milliseconds, plan in hundredths, times
        self.changes = 0  # how often a job came or went
        self.rates: list[dict[str, Any]] = []
        self.rates_at: object = None  # after which changes, and with which figures of others
        self.start = Start()
        self._names: dict[str, list[tuple[int, str, str]]] = {}  # by model: when closed, job, name

    def hold(self, jobs: dict[str, Job], unclocked: set[str]) -> None:
        """Makes these the jobs of the span; `unclocked` are those of which no time counts."""
        for name in self.jobs.keys() - jobs.keys():
            self._remove(name)
        changed = {name for name, job in jobs.items() if self.jobs.get(name) is not job}
        for name in sorted(changed | (self.unclocked ^ unclocked)):
            if name in self.jobs:
                self._remove(name)
            self._add(jobs[name], name not in unclocked)

    def figures(self) -> dict[str, Any]:
        """Returns what the jobs say of the rates as plain values: each thing once, with how many say it."""
        return {
            "causes": [
                {"has": list(has), "weights": _lists(weights), "count": count}
                for (has, weights), count in sorted(self.causes.items())
            ],
            "readings": [
                {"base": list(base), "explained": _lists(explained), "count": count}
                for (base, explained), count in sorted(self.readings.items())
            ],
            "checks": {rate: list(counts) for rate, counts in self.checks.items() if counts[1]},
        }

    def name_of(self, model: str) -> str:
        """Returns the name that the model's last vehicle has."""
        return self._names[model][-1][2]

    def _add(self, job: Job, clocked: bool) -> None:
        self.changes += 1
        self.jobs[job["job"]] = job
        _count(self.layouts, _layout(job), 1)
        self._count(job, 1)
        for ordered, line in self._lines(job):
            insort(ordered, line)
        band = band_of(job)
        if band is not None:
            self.claims[band].add(job["job"], job["claimed_ppb"] / _PPB, job["right"])
        if not clocked:
            self.unclocked.add(job["job"])
            return
        insort(self._names.setdefault(job["model"], []), _named(job))
        times = self._times(job)
        for kept, key, timed in times:
            kept.setdefault(key, Times()).add(timed)
        planned = [timed for kept, _, timed in times if kept is self.all_times]
        if planned:
            took, plan = sum(each.ms for each in planned), sum(each.plan_x100 for each in planned)
            self.work[job["job"]] = (took, plan, len(planned))

    def _remove(self, name: str) -> None:
        job = self.jobs.pop(name)
        self.changes += 1
        _count(self.layouts, _layout(job), -1)
        self._count(job, -1)
        for ordered, line in self._lines(job):
            ordered.remove(line)
        band = band_of(job)
        if band is not None:
            self.claims[band].remove(name)
        if name in self.unclocked:
            self.unclocked.remove(name)
            return
        self._names[job["model"]].remove(_named(job))
        for kept, key, timed in self._times(job):
            kept[key].remove(timed)
            if not kept[key].jobs:
                del kept[key]
        self.work.pop(name, None)

    def _count(self, job: Job, sign: int) -> None:
        """Counts what a job says of the rates, or counts it no more."""
        if job["why"]:
            return
        _count(self.counted_layouts, _layout(job), sign)
        _count(self.causes, causes_of(job), sign)
        if job["readings"]:
            _count(self.readings, readings_of(job), sign)
        for rate, counts in job["checks"].items():
            total = self.checks.setdefault(rate, [0, 0])
            total[0] += sign * counts[0]
            total[1] += sign * counts[1]

    def _lines(self, job: Job) -> list[tuple[list, Any]]:
        """Returns what a job is in the lists."""
        name = job["job"]
        lines: list[tuple[list, Any]] = [(self.names, (name, job["name"], job["closed"]))]
        if job["faulted"] and not job["unrepaired"]:  # a fault was seen, and closed as done
            lines.append((self.repaired, name))
        if job["times_left_out"]:
            lines.append((self.times_out, (name, job["times_left_out"])))
        if job["bought"] or job["saved"]:
            lines.append((self.parts, (name, job["bought"], job["saved"])))
        if job["why"]:
            return [*lines, (self.left_out, (job["why"], name))]
        lines.append((self.counted, name))
        if job["proven"]:
            lines.append((self.proven, name))
        told = [
            *(Base._fields if job["readings"] else ()),
            *(r for r, (_, tries) in job["checks"].items() if tries),
        ]
        lines += [(self.behind.setdefault(rate, []), name) for rate in told]
        causes = enumerate(job["causes"])
        return lines + [(self.found, (name, n, kind, place)) for n, (kind, place) in causes]

    def _times(self, job: Job) -> list[tuple[dict, Any, Timed]]:
        """Returns where each time of a job is kept."""
        found: list[tuple[dict, Any, Timed]] = []
        reach = {each[0]: each[4] for each in job["positions"]}
        for action, position, ms in job["times"]:
            plan = minutes.planned(minutes.Taken(action, position, ms), reach)
            timed = Timed(ms, job["job"], int(plan * 100 + 0.5))
            found.append((self.all_times, action, timed))
            # These are planned with, and the hands at another sort of part are not those at this one.
            if job["why"] != ANOTHER_SORT:
                found.append((self.by_action, action, timed))
            if action == minutes.REACH:
                found.append((self.by_position, (job["layout"], position), timed))
                found.append((self.by_model, job["model"], timed))
        return found


def positions_of(layouts: Counter[str]) -> list[list]:
    """Returns every position of layouts as [id, what it is called, edge], those of the usual ones first."""
    found: dict[str, list] = {}
    for layout in sorted(layouts, key=lambda each: (-layouts[each], each)):
        for position in json.loads(layout):
            found.setdefault(position[0], position)
    return list(found.values())


def causes_of(job: Job) -> tuple:
    """Returns what a job says of the classes of causes: (causes its layout has, weights of compositions)."""
    return tuple(job["has"]), tuple((tuple(key), share) for key, share in job["weights"])


def readings_of(job: Job) -> tuple:
    """Returns what a job's readings say: (rates it was weighed at, explanations with their counts)."""
    explained = tuple((share, tuple(map(tuple, counts))) for share, counts in job["readings"])
    return tuple(job["base"]), explained


def _count(groups: Counter, said: object, sign: int) -> None:
    groups[said] += sign
    if not groups[said]:
        del groups[said]


def _lists(value: Any) -> Any:
    return [_lists(each) for each in value] if isinstance(value, tuple) else value


def _layout(job: Job) -> str:
    return json.dumps([each[:3] for each in job["positions"]], sort_keys=True)


def _named(job: Job) -> tuple[int, str, str]:
    return job["closed"], job["job"], job["name"]
