"""From the state of a job to the case that the reasoning works on."""

from ..parts import sorts
from ..state.job import Job
from ..words import words
from . import comeback
from . import learned
from . import listening
from . import priors
from . import readings
from . import unit_history
from . import ways


def case_of(job: Job) -> dict:
    """Return the case (README of the command `reason` has its form) of a job as it stands."""
    tests = readings.tests(job) + listening.since(job)
    holds = job.holds
    fitted = {each["id"]: holds[each["id"]] for each in job.positions if holds.get(each["id"])}
    case = {
        "positions": readings.positions(job),
        "units": _units(job, fitted),
        "tests": tests,
        "meter": readings.meter(job),
        "rates": readings.rates(job),
        "confidence": readings.confidence(job),
    }
    if job.sort is not sorts.PARKING_SENSOR:
        case["sort"] = job.sort.identity
    minutes = dict(job.sort.minutes)
    if job.sort.harness:
        minutes["meter"], minutes["meter_found"] = job.sort.harness.all_good, job.sort.harness.found
    minutes.update(learned.minutes(job))
    if minutes:
        case["minutes"] = minutes
    case.update(learned.doubt(job))
    if job.money:
        case["money"] = readings.money(job)
    tilts = priors.likelihoods(job)
    if tilts:
        case["likelihoods"] = tilts
    earlier = comeback.priors(job)
    if earlier:
        case["priors"] = earlier
    if tests:
        case["now"] = _now(job, fitted, tests)
    return case


def _now(job: Job, fitted: dict, tests: list) -> dict:
    """Return what was done since the last entry of the case."""
    told = [cause for test in tests[len(job.tests) :] for cause in test["repaired"]]
    # What was left empty on purpose is said to be: else the case supposes that its last unit sits there.
    empty = {each["id"]: None for each in job.positions if job.is_left_empty(each["id"])}
    now = {
        "fitted": fitted | empty,
        "cleaned": job.cleaned_since_test,
        "repaired": [cause for cause in job.repaired_since_test if cause not in told],
    }
    if job.hanging():
        now["hanging"] = job.hanging()
    loose = ways.loose(job)
    if loose:
        # They go in with the next move, wherever a position is empty.
        now["loose"] = loose
        now["fitted"] = {each["id"]: job.holds.get(each["id"]) for each in job.positions}
    return now


def _units(job: Job, fitted) -> list[dict]:
    """Return every unit that the tests saw, that sits on the vehicle now, or that is at hand."""
    wanted = {}
    for test in job.tests:
        for position in test["fitted"]:
            wanted[test["fitted"][position]] = True
    for position in fitted:
        wanted[fitted[position]] = True
    for entry in ways.open_sets(job):
        for identity in entry["open"] + entry["bodies"]:
            wanted[identity] = True
    for identity in job.at_hand():
        if not job.unit(identity).is_disputed():
            wanted[identity] = True
    here = [fitted[position] for position in fitted]
    units = []
    for identity in sorted(wanted):
        unit = job.unit(identity)
        at_hand = unit.is_in_hand() or unit.is_in_stock() or (identity in here and not _is_bought(job, unit))
        entry = {
            "id": identity,
            "name": (words.unit_name(unit),),
            "part": unit.part,
            "available": at_hand and not unit.is_disputed(),
        }
        prior = unit_history.prior(job, identity)
        if prior is not None:
            entry["prior"] = prior
        units.append(entry)
    return units


def _is_bought(job: Job, unit) -> bool:
    """Tell whether a unit came for this vehicle alone: neither its own nor ever a spare in stock."""
    home = job.vehicle["home"]
    if unit.id in [home[position] for position in home]:
        return False
    return not [1 for move in unit.transfers if move["what"] == "stock"]
