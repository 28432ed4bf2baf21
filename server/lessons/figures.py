"""All figures over the closed jobs of a yard, as plain values: what the command prints and the page draws.

Chances are in parts per million, minutes in hundredths, so that JSON and CSV hold whole numbers.
"""

from typing import Any

from sqlite_utils import Database

from server.core.infer.case import MINUTES
from server.lessons import kept
from server.lessons import minutes
from server.lessons import rates
from server.lessons import reliability
from server.lessons import shares
from server.lessons import work
from server.lessons.contribution import ANOTHER_SORT
from server.lessons.spans import has_wrong_clock
from server.lessons.spans import within
from server.log import events

_PPM = 1_000_000
_PPB = 1_000_000_000
WRONG_CLOCK = "wrong_clock"


def figures(db: Database, now: int, since: int = 0, seconds: float | None = None) -> dict[str, Any]:
    """Returns all figures over the jobs closed since a moment in ms, 0 for all; see `kept.contributions`."""
    known, waiting = kept.contributions(db, seconds)
    jobs = within(known, since, now)
    clocked = [job for job in jobs if not has_wrong_clock(job, now)]
    counted = [job for job in jobs if not job["why"]]
    repaired = work.repaired(jobs)
    return {
        "upto": events.last_n(db),
        "since": since,
        "closed": len(jobs),
        "counted": [job["job"] for job in counted],
        "proven": [job["job"] for job in counted if job["proven"]],
        "repaired": [job["job"] for job in repaired],
        "waiting": waiting,
        "left_out": _left_out(jobs, now),
        "times_left_out": sum(job["times_left_out"] for job in jobs),
        "rates": _rates(counted),
        # These are planned with, and the hands at another sort of part are not those at this one.
        "minutes": _minutes([job for job in clocked if job["why"] != ANOTHER_SORT]),
        "reach": _reach(clocked),
        "models": _models(clocked),
        "reliability": [
            each._asdict() | {"expected": _hundredths(each.expected)} for each in reliability.claims(counted)
        ],
        "comebacks": [list(pair) for pair in work.comebacks(repaired, known)],
        "causes": [list(each) for each in work.causes(counted)],
        "work": [
            [job, _hundredths(took), _hundredths(plan)] for job, took, plan in work.beside_plan(clocked)
        ],
        "parts": [[job["job"], job["bought"], job["saved"]] for job in jobs if job["bought"] or job["saved"]],
        "returns": [
            [*key, len(behind), sorted(set(behind))]
            for key, behind in sorted(work.returns(db, since).items())
        ],
        "names": {job["job"]: [job["name"], job["closed"]] for job in jobs},
        "positions": _positions(jobs),
    }


def composed(job: dict[str, Any]) -> shares.Composed:
    """Returns what a contribution says of the classes of causes."""
    weights = [(tuple(key), share / _PPB) for key, share in job["weights"]]
    return shares.Composed(tuple(job["has"]), weights)


def _left_out(jobs: list[dict[str, Any]], now: int) -> dict[str, list[str]]:
    """Returns why -> the jobs that do not count towards rates, or whose times do not count."""
    found: dict[str, list[str]] = {}
    for job in jobs:
        if job["why"]:
            found.setdefault(job["why"], []).append(job["job"])
        if has_wrong_clock(job, now):
            found.setdefault(WRONG_CLOCK, []).append(job["job"])
    return found


def _rates(jobs: list[dict[str, Any]]) -> list[dict[str, Any]]:
    found = []
    for name, share in shares.learned([composed(job) for job in jobs]).items():
        bounds = {"value_ppm": share.value, "low_ppm": share.low, "high_ppm": share.high,
                  "default_ppm": share.default}  # fmt: skip
        found.append({"id": name, **_in_ppm(bounds), "hits_x100": _hundredths(share.found),
                      "tries": len(jobs)})  # fmt: skip
    counts = rates.together([job["readings"] for job in jobs])
    for name, rate in rates.learned(counts).items():
        bounds = {"value_ppm": rate.value, "low_ppm": rate.low, "high_ppm": rate.high,
                  "default_ppm": rate.default}  # fmt: skip
        found.append({"id": name, **_in_ppm(bounds), "hits_x100": _hundredths(rate.hits),
                      "tries": int(rate.tries)})  # fmt: skip
    return found


def _minutes(jobs: list[dict[str, Any]]) -> list[dict[str, Any]]:
    times = work.times_by(jobs, lambda job, action, position: action)
    found = []
    for action in minutes.ACTIONS:
        spread = minutes.spread(times[action].ms) if action in times else None
        if spread:
            planned = MINUTES[action] + (MINUTES["pull"] if action == minutes.REACH else 0.0)
            found.append(
                {
                    "id": action,
                    **_spread(spread),
                    "jobs": times[action].jobs,
                    "default_x100": _hundredths(planned),
                }
            )
    return found


def _reach(jobs: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Returns the times until a unit is in the hand, by layout and position."""

    def opened(job: dict[str, Any], action: str, position: str) -> tuple[str, str] | None:
        return (job["layout"], position) if action == minutes.REACH else None

    return _grouped(work.times_by(jobs, opened))


def _models(jobs: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Returns the same by model of vehicle, with the name that the model's last vehicle has."""

    def opened(job: dict[str, Any], action: str, position: str) -> tuple[str, str] | None:
        return (job["model"], "") if action == minutes.REACH else None

    names = {job["model"]: job["name"] for job in sorted(jobs, key=lambda each: each["closed"])}
    return [each | {"name": names[each["layout"]]} for each in _grouped(work.times_by(jobs, opened))]


def _grouped(times: dict[tuple[str, str], work.Times]) -> list[dict[str, Any]]:
    found = []
    for (layout, position), each in sorted(times.items()):
        spread = minutes.spread(each.ms)
        if spread:
            found.append({"layout": layout, "position": position, **_spread(spread), "jobs": each.jobs})
    return found


def _spread(spread: minutes.Spread) -> dict[str, int]:
    return {
        "median_x100": _hundredths(spread.median),
        "low_x100": _hundredths(spread.low),
        "high_x100": _hundredths(spread.high),
        "count": spread.number,
        "cut": spread.cut,
    }


def _positions(jobs: list[dict[str, Any]]) -> list[list]:
    """Returns every position that the jobs have, as [id, what it is called, edge], each id once."""
    found: dict[str, list] = {}
    for job in jobs:
        for identity, called, edge, _, _ in job["positions"]:
            found.setdefault(identity, [identity, called, edge])
    return list(found.values())


def _in_ppm(bounds: dict[str, float]) -> dict[str, int]:
    return {name: int(value * _PPM + 0.5) for name, value in bounds.items()}


def _hundredths(value: float) -> int:
    return int(value * 100 + 0.5)
