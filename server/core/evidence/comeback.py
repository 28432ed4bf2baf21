"""What the earlier jobs of a vehicle make of the priors when it comes back.

A sensor that was replaced on a verdict, and the next one fails at the same position within months: that
speaks for the circuit there, or for something in the way, which may have been it all along. So the prior
odds of both are multiplied, by 6 on the day of the repair; of what that is above 1, half goes every six
months. Several such sensors at one position multiply one after the other.

A cause that the last job left unrepaired starts with the chance that it had there; of what that is above
the rate, half goes every six months too. What was proven starts with the rate of any: the vehicle was driven
since, which is how a unit is counted that was driven (`unit_history.py`, which also has the record of
the one fitted then). After a repair in the new job nothing of this counts: that circuit is another.

Model and figures are ours, no source. A job counts its vehicle's past when `comeback_set` says how: that is
recorded with the opening, so a job of before that is concluded as it was. Earlier jobs are reasoned
over without their own histories, so that no two jobs lean on each other in a circle.
"""

from ..facts.draft import draft
from ..infer.belief import Belief
from ..infer.case_form import read
from ..infer.figures import WHOLE
from ..infer.likelihoods import tilted
from ..infer.model import Model
from ..messages import decimal
from ..messages import message
from ..messages import percent
from ..state.job import Job
from ..state.job import known_job
from ..words import causes
from ..words import words
from . import job_alone
from . import readings

FACTOR, MONTHS = 6, 6
MOST_FACTOR, MOST_MONTHS = 100, 120
# What is offered in their place; 1 leaves it out.
FACTORS, HALVES = (1, 3, FACTOR, 12), (3, MONTHS, 12, 24)
SOURCE = message("evidence-comeback-source")
_MONTH_DAYS = 30
_PPM = 1000000
_MOST = 1000 * _PPM  # a factor beyond this is none
_GONE = 20  # after so many halvings nothing is left


def before(job: Job) -> list[Job]:
    """Return the closed jobs of its vehicle that were opened before it, the first one first."""
    found = []
    for identity in job.vehicle["jobs"]:
        if identity == job.id:
            break
        if job.state.job_line(identity)["closed"]:
            found.append(known_job(job.state, identity))
    return found


def setting(job: Job) -> tuple:
    """Return (factor, months until half of it is gone) as set on a job; a factor of 1 counts nothing."""
    factor, months = job.comeback or (1, MONTHS)
    return min(max(factor, 1), MOST_FACTOR), min(max(months, 1), MOST_MONTHS)


def opens_with(lines: list[dict]) -> list[dict]:
    """Return what is recorded with the opening of a job on a vehicle that has had these, by their lines."""
    closed = [line for line in lines if line["closed"]]
    return [draft("comeback_set", factor=FACTOR, months=MONTHS)] if closed else []


def share_left(days: int, months: int) -> int:
    """Return what is left after some days, in parts per million: halves, and a straight line between them."""
    period = months * _MONTH_DAYS
    whole, rest = days // period, days % period
    if whole >= _GONE:
        return 0
    return _PPM * (2 * period - rest) // (2 * period * (1 << whole))


def days_between(earlier: Job, job: Job) -> int:
    """Return the whole days from the end of one job to the opening of another; 0 where clocks disagree."""
    closing = earlier.closing
    return max(0, job.opened_at - closing["at"]) // words.DAY_MS if closing else 0


def replaced(job: Job) -> list[dict]:
    """Return {"position", "unit", "days", "factor_ppm"}: units that earlier jobs replaced on a verdict."""
    factor, months = setting(job)
    found = []
    for earlier in before(job) if factor > 1 else []:
        days = days_between(earlier, job)
        more = (factor - 1) * share_left(days, months)
        for position, unit in replaced_on_verdict(earlier):
            if job.position(position) and more:
                entry = {"position": position, "unit": unit, "days": days, "factor_ppm": _PPM + more}
                found.append(entry)
    return found


def replaced_on_verdict(job: Job) -> list:
    """Return (position, unit) of each unit that failed in service and sits there no more in the last test."""
    verdict = job_alone.verdict(job)
    if verdict is None:
        return []
    first, last = job.tests[0]["fitted"], job.last_test()["fitted"]
    found = []
    for place in job.positions:
        position = place["id"]
        unit = first.get(position)
        if unit not in job.units_at_opening or "unit:" + unit not in verdict["causes"]:
            continue
        if last.get(position) and unit not in last.values():
            found.append((position, unit))
    return found


def left(job: Job) -> list[dict]:
    """Return {"cause", "chance", "days", "was"}: what the last job of the vehicle left unrepaired."""
    earlier = [each for each in before(job) if each.tests]
    if not earlier or setting(job)[0] == 1:
        return []
    if (earlier[-1].closing or {}).get("why") == "elsewhere":
        return []
    days = days_between(earlier[-1], job)
    share = share_left(days, setting(job)[1])
    rates, known = readings.all_rates(job), _causes(job)
    found = []
    for cause, was in _live(earlier[-1]):
        rate = rates[cause.split(":")[0]]
        if cause in known and share and was >= 2 * rate:
            chance = rate + (was - rate) * share / _PPM
            found.append({"cause": cause, "chance": chance, "days": days, "was": was})
    return found


def priors(job: Job) -> list[dict]:
    """Return the priors that the earlier jobs give, in the form of a case."""
    chances, rates = {}, readings.all_rates(job)
    for entry in left(job):
        chances[entry["cause"]] = entry["chance"]
    factors = {}
    for entry in replaced(job):
        place = entry["position"]
        factors[place] = min(factors.get(place, _PPM) * entry["factor_ppm"] // _PPM, _MOST)
    for place in factors:
        for kind in ("circuit", "blocked"):
            cause = kind + ":" + place
            chances[cause] = tilted(chances.get(cause, rates[kind]), factors[place] / _PPM)
    return [{"cause": cause, "prior": int(chances[cause] * WHOLE + 0.5) / WHOLE} for cause in sorted(chances)]


def sentences(job: Job) -> list[dict]:
    """Return what the earlier jobs change of the priors, a sentence each."""
    said = []
    for entry in replaced(job):
        tenths = (entry["factor_ppm"] * 10 + _PPM // 2) // _PPM
        factor = decimal(tenths // 10, 0) if tenths % 10 == 0 else decimal(tenths, 1)
        said.append(
            message(
                "evidence-comeback-replaced",
                position=words.position_name(job, entry["position"]),
                days=entry["days"],
                factor=factor,
                sort=job.sort.identity,
                blocked=job.sort.obstruction.words,
            )
        )
    for entry in left(job):
        said.append(
            message(
                "evidence-comeback-left",
                cause=causes.phrase(job, entry["cause"]),
                days=entry["days"],
                was=percent(int(entry["was"] * WHOLE + 0.5)),
                share=percent(int(entry["chance"] * WHOLE + 0.5)),
            )
        )
    return said


def _causes(job: Job) -> list[str]:
    """Return every cause of a job that is no unit."""
    found = ["control"]
    for position in job.positions:
        found.extend(["circuit:" + position["id"], "blocked:" + position["id"]])
        if position["group"] is not None:
            found.append("feed:" + position["group"])
    return found


def _live(job: Job) -> list:
    """Return (cause, chance that it was there at the end) of all but units."""
    return job_alone.kept(job, "left:" + job.id, lambda: _left_live(job))


def _left_live(job: Job) -> list:
    case = job_alone.bare_case(job)
    case["now"] = {"cleaned": job.cleaned_since_test, "repaired": job.repaired_since_test}
    belief = Belief(Model(read(case)))
    chances, live, found = belief.marginals(), belief.model.live(), []
    for number in range(len(chances)):
        name = belief.model.names[number]
        if live[number] and belief.model.kinds[number] != "unit":
            found.append((name.partition("#")[0], chances[number]))
    return sorted(found)
