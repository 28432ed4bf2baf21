"""What a unit did on other jobs, and what that makes of its prior for the next one.

Bayes' rule on the odds, with the noisy-OR of the design (`infer/noisy_or.py`) and the rates of the
job that each reading belongs to. Only the unit's own readings are used: at each position it sat
at, the other causes of that position are summed out. A clean reading then multiplies its odds by
exactly (1 - shows), one that repeats another at once by (1 - shows * again). A faulted reading on a job
whose verdict names something else was explained by that and does not count against it; a verdict that
names the unit condemns it. Readings of the job that is asked about are left out, they are tests of that
job's own case.

Between two jobs a good unit may break. Of a spare that is small; of a unit that was driven about
until its vehicle came in again it is the rate of any unit, because that rate is the one of units
that all worked once. So passes make a spare trusted, and never make a unit safe from failing on
the road. Rates: common practice, no source.
"""

from ..infer.belief import Belief
from ..infer.case import RATES
from ..infer.case_form import read
from ..infer.figures import WHOLE
from ..infer.figures import parts
from ..infer.model import Model
from ..infer.noisy_or import at_once
from ..infer.noisy_or import chances_clean
from ..infer.noisy_or import power
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..state.job import Job
from ..state.job import known_job
from ..state.state import MIXED
from ..state.unit import Unit
from ..words.words import unit_name
from . import job_alone
from . import readings

SOURCE = message("evidence-bayes")
# The chance that a good unit breaks on the shelf or in the hand between two jobs.
_BREAKS = 0.001
_TRUSTED = WHOLE // 100

_NO_COUNTS = {"tests": 0, "passed": 0, "faulted": 0, "explained": 0}


def prior(job: Job, identity: str) -> float | None:
    """Return the chance that a unit is bad before the first test of `job`; None without a record."""
    told = _record(job.state, identity, job)
    return told["chance"] if told["vehicles"] or job.unit(identity).mixup() else None


def history(state, identity: str, job: Job | None = None) -> dict:
    """Return the record of a unit on jobs other than `job`, the chance that it is bad, and a sentence."""
    told = _record(state, identity, job)
    chance = parts(told["chance"])
    known = len(told["vehicles"]) > 0
    trusted = not told["condemned"] and told["counts"]["passed"] > 0 and chance <= _TRUSTED
    found = dict(told["counts"])
    found["vehicles"] = len(told["vehicles"])
    found["known"] = known
    found["trusted"] = trusted
    found["condemned"] = told["condemned"] != ""
    found["chance"] = chance
    found["sentence"] = _sentence(Unit(state, identity, job), told, chance, trusted)
    found["source"] = SOURCE
    return found


def condemned(state, identity: str) -> str:
    """Return the vehicle on which a verdict names a unit, "" where none does."""
    for job_id in reversed(state.units[identity]["jobs"]):
        job = known_job(state, job_id)
        if _blamed(job, identity, _seen(job, identity))[0]:
            return job.vehicle["name"]
    return ""


def tell_of_spares(job: Job, moves: list) -> None:
    """Add to each move (as the app shows it) what is known of the units that come from elsewhere."""
    holds = job.holds
    here = [holds[place] for place in holds if holds[place]]
    for move in moves:
        planned = move["events"][0]["data"].get("fitted", {}) if move["events"] else {}
        spares = [planned[place] for place in sorted(planned) if planned[place] not in here]
        told = [history(job.state, unit, job) for unit in spares]
        move["spares"] = [each["sentence"] for each in told if each["known"]]


def _record(state, identity, asked) -> dict:
    """Go through the jobs of a unit in their order, carrying the weights of good and bad along."""
    base = RATES["unit"]
    if asked:
        base = readings.all_rates(asked)["unit"]
    if state.mixup(identity):
        base = body_prior(state, state.mixup(identity))
    counts, vehicles, condemned, driven = dict(_NO_COUNTS), [], "", False
    good, bad = 1.0 - base, base
    worst = 0.0
    for job_id in state.units[identity]["jobs"]:
        if asked and job_id == asked["id"]:
            continue
        job = known_job(state, job_id)
        seen = _seen(job, identity)
        if vehicles:
            breaks = base if identity in job.units_at_opening else _BREAKS
            good, bad = good * (1.0 - breaks), bad + good * breaks
        if not seen:
            continue
        title = job.vehicle["name"]
        if job.vehicle_id not in vehicles:
            vehicles.append(job.vehicle_id)
        blamed, explained = _blamed(job, identity, seen)
        if blamed:
            condemned = title
            worst = max(worst, blamed)
        good, bad = _weighed(counts, seen, explained, readings.all_rates(job), good, bad)
    if vehicles:
        driven = asked is not None and identity in asked["at_opening"]
        breaks = base if driven else _BREAKS
        good, bad = good * (1.0 - breaks), bad + good * breaks
    # Passes before or after do not talk a verdict away: what was found bad once is not fitted again.
    chance = max(bad / (good + bad), worst)
    return {
        "counts": counts,
        "vehicles": vehicles,
        "condemned": condemned,
        "driven": driven,
        "chance": chance,
    }


def body_prior(state, entry: dict) -> float:
    """Return the chance that a body of a mix-up is bad: the mean of the posteriors of those it may be.

    Whoever picks one of n look-alikes off the ground picks each with the same chance 1/n, so
    P(it is bad) is the sum over them of 1/n times P(that one is bad), given all tests before. That
    is exact for one body alone. What the mean leaves out is that only one body is each of them (if
    this is the bad one, that is not); `identity_assignments.py` keeps that too, on the job where it happened.
    """
    chances = chances_before(state, entry)
    total = 0.0
    for each in entry["open"]:
        total += chances[each]
    return total / len(entry["open"])


def chances_before(state, entry: dict) -> dict:
    """Return identity -> chance that it is bad, from history and the tests before the mix-up."""
    job = known_job(state, entry["job"])
    return job_alone.kept(job, "mixed:" + entry["event"], lambda: _chances_before(job, entry))


def _chances_before(job: Job, entry: dict) -> dict:
    rates = readings.all_rates(job)
    case = job_alone.bare_case(job)
    case["tests"] = case["tests"][: entry["tests"]]
    case["meter"] = []
    case["likelihoods"] = []
    case["units"] = []
    for each in entry["units"]:
        known = prior(job, each) if each in job.state.units else None
        case["units"].append({"id": each, "prior": rates["unit"] if known is None else known})
    belief = Belief(Model(read(case)))
    chances = belief.marginals()
    names = belief.model.names
    return {each: chances[names.index("unit:" + each)] for each in entry["units"]}


def _seen(job, identity) -> list:
    """Return (position, clean readings, those of them that repeat one at once, faulted readings)."""
    clean, again, faulted = {}, {}, {}
    before, was_clean = None, []
    for test in readings.tests(job):
        if not readings.counts(test):
            continue
        at_once = before and readings.is_at_once(test) and readings.repeats(test, before)
        now_clean = []
        for place in test["fitted"]:
            if test["fitted"][place] != identity or place in test["silent"]:
                continue
            if place in test["faulted"]:
                faulted[place] = faulted.get(place, 0) + 1
                continue
            clean[place] = clean.get(place, 0) + 1
            now_clean.append(place)
            if at_once and place in was_clean:
                again[place] = again.get(place, 0) + 1
        before, was_clean = test, now_clean
    return [
        (place["id"], clean.get(place["id"], 0), again.get(place["id"], 0), faulted.get(place["id"], 0))
        for place in job.positions
        if place["id"] in clean or place["id"] in faulted
    ]


def _blamed(job: Job, identity, seen) -> tuple:
    """Return (how sure a verdict against the unit is, else 0, whether one explains its faults)."""
    if not [each for each in seen if each[-1]]:
        return 0.0, False
    if job.state.units[identity]["place"] == MIXED:
        return 0.0, False  # the verdict speaks of the parts, and which one it is is not known
    verdict = job_alone.verdict(job)
    if verdict is None:
        return 0.0, False
    if "unit:" + identity in verdict["causes"]:
        return verdict["probability"] / WHOLE, False
    return 0.0, True


def _weighed(counts, seen, explained, rates, good, bad) -> tuple:
    """Return the weights of good and bad after a job's readings, counting them on the way."""
    for _, clean, again, faulted in seen:
        counts["tests"] += clean + faulted
        counts["passed"] += clean
        counts["explained" if explained else "faulted"] += faulted
        against = 0 if explained else faulted
        if_good = _likelihood(rates, clean - again, again, against, 0)
        if_bad = _likelihood(rates, clean - again, again, against, 1)
        if if_good == 0 and if_bad == 0:
            continue  # readings that rule each other out at these rates say nothing
        good, bad = good * if_good, bad * if_bad
        good, bad = good / (good + bad), bad / (good + bad)
    return good, bad


def _likelihood(rates, clean: int, again: int, faulted: int, unit: int) -> float:
    """Return the chance of these readings at one position, its other causes summed out."""
    others = [1.0]  # others[k]: the chance that k of circuit, blocked, feed, control are present
    for name in ("circuit", "blocked", "feed", "control"):
        more = [0.0] * (len(others) + 1)
        for k in range(len(others)):
            more[k] += others[k] * (1.0 - rates[name])
            more[k + 1] += others[k] * rates[name]
        others = more
    quiet = chances_clean(len(others), rates)
    quiet_again = chances_clean(len(others), at_once(rates))
    total = 0.0
    for k in range(len(others)):
        weight = others[k] * power(quiet[k + unit], clean) * power(1.0 - quiet[k + unit], faulted)
        total += weight * power(quiet_again[k + unit], again)
    return total


def _sentence(unit: Unit, told, chance, trusted) -> dict:
    name, bad, sort = unit_name(unit), percent(chance), unit.sort.identity
    if told["condemned"]:
        return message("evidence-unit-condemned", unit=name, vehicle=told["condemned"], share=bad)
    if not told["vehicles"]:
        return message("evidence-unit-untested", unit=name, share=bad, sort=sort)
    counts = told["counts"]
    said = []
    if counts["passed"]:
        said.append(message("evidence-unit-passed", count=counts["passed"]))
    if counts["faulted"]:
        said.append(message("evidence-unit-faulted", count=counts["faulted"]))
    if not said:
        said.append(message("evidence-unit-bystander"))
    return message(
        "evidence-unit-trusted" if trusted else "evidence-unit",
        unit=name,
        said=all_of(said),
        vehicles=len(told["vehicles"]),
        driven="yes" if told["driven"] else "no",
        share=bad,
    )
