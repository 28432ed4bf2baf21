"""All figures over the closed jobs of a yard, as plain values: what the command prints and the page draws.

Chances are in parts per million, minutes in hundredths, so that JSON and CSV hold whole numbers.
"""

from typing import Any

from sqlite_utils import Database

from server.core.infer.case import MINUTES
from server.lessons import minutes
from server.lessons import rates
from server.lessons import shares
from server.lessons import weighed_in
from server.lessons import work
from server.lessons.maximum import maximum_of
from server.lessons.reliability import BANDS
from server.lessons.running import Running
from server.lessons.said import Said
from server.lessons.said import Start
from server.lessons.showing import Base
from server.lessons.sums import Sums
from server.lessons.sums import positions_of
from server.lessons.times import Times
from server.log import events

_PPM = 1_000_000
WRONG_CLOCK, SENT_LATE = "wrong_clock", "sent_late"


def figures(
    db: Database, now: int, since: int = 0, seconds: float | None = None, running: Running | None = None
) -> dict[str, Any]:
    """Returns all figures over the jobs closed since a moment in ms, 0 for all; see `kept.refresh`.

    A server hands in what it keeps from one look to the next.
    """
    running = running or Running()
    with running.lock:
        sums, waiting = running.look(db, now, since, seconds)
        repaired = set(sums.repaired)
        # Of the jobs that were repaired in the span; what comes back may be in a later one.
        came_back = sorted(pair for pair in running.comebacks() if pair[0] in repaired)
        still_open = running.still_open(second for _, second in came_back)
        found = _figures(db, since, sums, waiting, came_back, still_open)
        return found | {"counted_in_all": running.counted()}


def _figures(
    db: Database,
    since: int,
    sums: Sums,
    waiting: int,
    came_back: list[work.Pair],
    still_open: list[tuple[str, str, int]],
) -> dict[str, Any]:
    return {
        "upto": events.last_n(db),
        "since": since,
        "closed": len(sums.names),
        "counted": list(sums.counted),
        "proven": list(sums.proven),
        "repaired": list(sums.repaired),
        "waiting": waiting,
        "left_out": _left_out(sums),
        "times_left_out": sum(number for _, number in sums.times_out),
        "times_left_out_of": [job for job, _ in sums.times_out],
        "rates": _rates(db, sums),
        "behind_rates": {rate: list(jobs) for rate, jobs in sorted(sums.behind.items()) if jobs},
        "yards": [yard._asdict() for yard in weighed_in.yards(db)],
        "minutes": _minutes(sums.by_action),
        "reach": [
            {"layout": layout, "position": position, **each}
            for (layout, position), each in _spreads(sums.by_position)
        ],
        "models": [{"name": sums.name_of(model), **each} for model, each in _spreads(sums.by_model)],
        "reliability": _reliability(sums),
        "comebacks": [list(pair) for pair in came_back],
        "comebacks_open": [job for job, _, _ in still_open],
        "causes": [(kind, place, job) for job, _, kind, place in sums.found],
        "work": work.beside_plan(sums),
        "parts": list(sums.parts),
        "returns": [
            [*key, len(behind), sorted(set(behind))]
            for key, behind in sorted(work.returns(db, since).items())
        ],
        # Of one that is still open, when it was opened.
        "names": {job: (name, at) for job, name, at in [*sums.names, *sums.undated, *sums.late, *still_open]},
        "positions": positions_of(sums.layouts),
        # Causes are drawn where jobs that count have positions, and no wheel of another sort of part.
        "board": positions_of(sums.counted_layouts),
    }


def _left_out(sums: Sums) -> dict[str, list[str]]:
    """Returns why -> the jobs that do not count towards rates, or whose times do not count."""
    found = _by_first(sums.left_out)
    wrong = sums.unclocked.union(name for name, _, _ in sums.undated)
    if wrong:
        found[WRONG_CLOCK] = sorted(wrong)
    if sums.late:
        found[SENT_LATE] = [name for name, _, _ in sums.late]
    return found


def _by_first(pairs: list[tuple[str, str]]) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for first, second in pairs:
        found.setdefault(first, []).append(second)
    return found


def _rates(db: Database, sums: Sums) -> list[dict[str, Any]]:
    now = sums.changes, weighed_in.mark(db)
    if sums.rates_at == now:
        return sums.rates
    said = weighed_in.others(db)
    behind = {rate: len(jobs) for rate, jobs in sums.behind.items()}
    said.add_own(sums.causes, sums.readings, sums.checks, behind, len(sums.counted))
    sums.rates, sums.rates_at = rates_of(said, sums.start), now
    return sums.rates


def rates_of(said: Said, start: Start) -> list[dict[str, Any]]:
    """Returns the rates that jobs teach; the search for them begins at `start`, which is left at its end."""
    found = []
    learned = rates.learned(said.readings, said.checks, start.base)
    if "shows" in learned:
        start.base = Base(learned["shows"].value, learned["false_alarm"].value)
    maximum = maximum_of(said.causes, start.odds, start.base.false_alarm / start.base.shows)
    start.odds = maximum.odds
    for name, share in shares.learned_at(maximum).items():
        found.append(_rate(name, share, share.found, said.jobs, said.jobs))
    read = sum(number for _, _, number in said.readings)
    for name, rate in learned.items():
        found.append(_rate(name, rate, rate.hits, rate.tries, said.jobs_of.get(name, read)))
    return found


def _rate(
    name: str, rate: shares.Share | rates.Rate, hits: float, tries: float, jobs: float
) -> dict[str, Any]:
    bounds = {"value_ppm": rate.value, "low_ppm": rate.low, "high_ppm": rate.high,
              "default_ppm": rate.default}  # fmt: skip
    return {"id": name, **_in_ppm(bounds), "hits_x100": _hundredths(hits), "tries": int(tries + 0.5),
            "jobs": int(jobs + 0.5)}  # fmt: skip


def _minutes(by_action: dict[str, Times]) -> list[dict[str, Any]]:
    spreads = dict(_spreads(by_action))
    found = []
    for action in minutes.ACTIONS:
        if action in spreads:
            planned = MINUTES[action] + (MINUTES["pull"] if action == minutes.REACH else 0.0)
            found.append({"id": action, **spreads[action], "default_x100": _hundredths(planned)})
    return found


def _spreads(times: dict[Any, Times]) -> list[tuple[Any, dict[str, Any]]]:
    """Returns how times spread, by what they are of."""
    shown = [(key, each.shown(_spread)) for key, each in sorted(times.items())]
    return [(key, row) for key, row in shown if row]


def _spread(times: Times, spread: minutes.Spread) -> dict[str, Any]:
    return {
        "median_x100": _hundredths(spread.median),
        "low_x100": _hundredths(spread.low),
        "high_x100": _hundredths(spread.high),
        "count": spread.number,
        "cut": spread.cut,
        "jobs": times.jobs,
        "plan_x100": times.plan_x100,
    }


def _reliability(sums: Sums) -> list[dict[str, Any]]:
    found = []
    for start, end, claims in zip(BANDS, BANDS[1:], sums.claims, strict=False):
        if claims.chances:
            low, high = claims.band()
            expected = _hundredths(sum(claims.chances.values()))
            found.append({"start": start, "end": end, "number": len(claims.chances),
                          "right": len(claims.right), "expected": expected, "low": low, "high": high,
                          "jobs": sorted(claims.chances)})  # fmt: skip
    return found


def _in_ppm(bounds: dict[str, float]) -> dict[str, int]:
    return {name: int(value * _PPM + 0.5) for name, value in bounds.items()}


def _hundredths(value: float) -> int:
    return int(value * 100 + 0.5)
