"""What the tests and the meter of a job read, in the form that the reasoning takes.

Apart from `job_case.py`, because the history of a unit looks at other jobs' readings without the
priors that such histories give: two jobs must not lean on each other in a circle.
"""

from ..infer.case import AFTER
from ..infer.case import AT_ONCE
from ..infer.case import RATES
from ..infer.cost import MOST_MONEY
from ..state import contradictions
from ..state.job import Job
from ..words import words
from . import checks
from . import learned
from . import listening

SHOWS_COMES_AND_GOES = 0.5  # design default for a fault that comes and goes; common practice
MOST_MINUTES = 600
_PPM = 1000000


def positions(job: Job) -> list[dict]:
    """Return the positions, each with the reach that was set on this job."""
    return [
        {
            "id": position["id"],
            "name": (words.called(job, position),),
            "group": position["group"],
            "reach_minutes": reach(job, position),
        }
        for position in job.positions
    ]


def reach(job: Job, position: dict) -> int:
    """Return the minutes until a hand is on the sensor: set on the job, learned, or as it was opened."""
    known = learned.reach(job, position["id"])
    if known is not None and position["id"] not in job.reach_set:
        return min(known, MOST_MINUTES)
    return _minutes(job.reach_set, position)


def as_set(line: dict, position: dict) -> dict:
    """Return a position as a next job on the vehicle starts from it; `line` tells of the last one."""
    copy = dict(position)
    copy["reach_minutes"] = _minutes(line["reach"], position)
    return copy


def _minutes(reach_set: dict, position: dict) -> int:
    return min(reach_set.get(position["id"], position["reach_minutes"]), MOST_MINUTES)


def tests(job: Job) -> list[dict]:
    """Return the tests in order of time; those that a contradiction leaves open wait."""
    heard = listening.on_tests(job) if job.listened else {}
    found = [_test(job, test, heard.get(n)) for n, test in enumerate(job.tests)]
    for n in contradictions.waiting(job.state, job.facts):
        found[n]["waits"] = True
    return found


def _test(job, test, heard: dict | None) -> dict:
    """Return one test; what is in dispute says nothing.

    An empty position is like an unplugged one where the test reported on it, and else says nothing.
    """
    unplugged, silent, fitted = [], list(test["silent"]), {}
    for position in job.positions:
        place = position["id"]
        if place in test["disputed"] and place not in silent:
            silent.append(place)
            continue
        if place not in test["fitted"] and place not in test["faulted"] + test["unplugged"]:
            if place not in silent:
                silent.append(place)
        elif place in test["unplugged"] or place not in test["fitted"]:
            unplugged.append(place)
        else:
            fitted[place] = test["fitted"][place]
    faulted = [place for place in test["faulted"] if place not in silent]
    found = {
        "fitted": fitted,
        "faulted": faulted,
        "cleaned": test["cleaned"],
        "repaired": test["repaired"],
        "unplugged": [place for place in unplugged if place not in silent],
        "silent": sorted(silent),
        "heard": test["heard"],
    }
    if heard:
        found["listen"] = heard
    if job.comes_and_goes and "provoked" in test:
        found["after"] = test["provoked"] if test["provoked"] in AFTER else "provoked"
    return found


def counts(test: dict) -> bool:
    """Tell whether a test in the form of a case proves anything (`infer/model.py` sets aside the rest)."""
    watching = [p for p in test["unplugged"] if p not in test["faulted"] and p not in test["silent"]]
    return test["heard"] and not watching and "waits" not in test


def repeats(test: dict, before: dict) -> bool:
    """Tell whether both count, and nothing was moved, cleaned or repaired between them."""
    same = counts(test) and counts(before) and test["fitted"] == before["fitted"]
    return same and not test["cleaned"] and not test["repaired"]


def is_at_once(test: dict) -> bool:
    """Tell whether a test followed at once, with nothing done to bring the fault out."""
    return test.get("after") == AT_ONCE


def meter(job: Job) -> list[dict]:
    """Return one reading per round of checks of a circuit that says something (`checks.py` has the rounds).

    A circuit reads bad once one of its checks does, and good once all of them do: half a check
    proves nothing. `generation` counts the circuit anew after each repair.
    """
    readings = []
    found = checks.rounds(job) if job.measurements else {}
    for position in job.positions:
        place = position["id"]
        of_place = found.get(place, [])
        for n in range(len(of_place)):
            reads = checks.reading(job, place, of_place[: n + 1])
            if reads:
                generation = of_place[n].generation
                readings.append({"position": place, "reads": reads, "generation": generation})
    return readings


def rates(job: Job) -> dict:
    """Return the rates that differ on this job; what no rate can be is left out, older phones may say it."""
    found = dict(job.sort.rates)
    found.update(learned.rates(job))
    if job.comes_and_goes:
        found["shows"] = SHOWS_COMES_AND_GOES
    for name in sorted(job.rates_ppm):
        ppm = job.rates_ppm[name]
        if name in RATES and not rate_problem(name, ppm):
            found[name] = ppm / _PPM
    return found


def money(job: Job) -> dict:
    """Return labour and prices as far as they were given."""
    return {name: min(job.money[name], MOST_MONEY) for name in sorted(job.money)}


def all_rates(job: Job) -> dict:
    """Return every rate as it stands on this job."""
    found = dict(RATES)
    found.update(rates(job))
    return found


def rate_problem(name: str, ppm: int) -> str:
    """Return what is wanted of a rate that can't be this, or ""; at these ends a reading says nothing."""
    if ppm > _PPM:
        return "at most 100 %"
    if name == "shows" and ppm == 0:
        return "above 0 %"
    if name == "false_alarm" and ppm == _PPM:
        return "below 100 %"
    return ""


def confidence(job: Job) -> float:
    """Return the confidence asked for; out of range (an older phone's fact) it is as far as it can be."""
    return min(max(job.confidence_ppm, 1), _PPM - 1) / _PPM
