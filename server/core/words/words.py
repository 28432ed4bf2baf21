"""Plain words for units, positions, places and figures: the same sentence on every screen and on paper."""

from .. import phrases
from ..codes.labels import shown
from ..state.job import Job
from ..state.state import MIXED
from ..state.unit import Unit

PLACE_WORDS = {
    "stock": "in your stock",
    "counter": "at the parts counter",
    "customer": "with the customer",
    "scrapped": "scrapped",
}

DAY_MS = 86400000
DECIDED = {"accept": "accepted", "hold": "held", "refuse": "refused"}  # at the parts counter


def position_name(job: Job, position: str) -> str:
    """Return the name of a position of the job; its id where the job does not know it."""
    found = job.position(position)
    return found["name"] if found else position


def unit_name(unit: Unit) -> str:
    """Return how a unit is called: its code, else by where it sits or was pulled from."""
    if not unit.is_on_record():
        return unit.sort.a_unit + " that is not on record"
    if unit.is_labelled():
        return shown(unit.code)
    mixup = unit.mixup()
    if mixup:
        return "one of the {} that got mixed up".format(mixup["count"])
    position = unit.position or unit.pulled_from
    if unit.job and position:
        return "the {} from {}".format(unit.sort.unit, position_name(unit.job, position))
    return unit.sort.a_unit + " without a label"


def place_words(unit: Unit) -> str:
    """Return where a unit is, as the end of 'it is ...'."""
    job = unit.job
    if unit.is_disputed():
        return "in dispute: two places are on record"
    if unit.is_fitted():
        if job and unit.position and unit.is_fitted_here():
            return "fitted at " + position_name(job, unit.position)
        return "fitted on {}".format(unit.vehicle()["name"])
    if unit.is_in_hand():
        if job and unit.pulled_from and unit.is_in_hand_here():
            return "in your hand, pulled from " + position_name(job, unit.pulled_from)
        if job and unit["job"] != job.id and unit["job"]:
            return "out on another job"
        return "in your hand"
    if unit["place"] == MIXED:
        return "one of {} in hand that got mixed up".format(unit.state.mixed[unit["mixed"]]["count"])
    return PLACE_WORDS[unit["place"]]


def ago(then: int, now: int) -> str:
    """Return how long ago something was, in days; both in milliseconds, clocks that disagree make today."""
    days = max(0, now - then) // DAY_MS
    return "today" if days == 0 else phrases.counted(days, "day") + " ago"
