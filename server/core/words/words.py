"""Plain words for units, positions, places and figures: the same sentence on every screen and on paper."""

from .. import phrases
from ..codes.labels import shown
from ..state.state import MIXED
from ..state.state import position_of

PLACE_WORDS = {
    "stock": "in your stock",
    "counter": "at the parts counter",
    "customer": "with the customer",
    "scrapped": "scrapped",
}

DAY_MS = 86400000
DECIDED = {"accept": "accepted", "hold": "held", "refuse": "refused"}  # at the parts counter


def position_name(job: dict, position: str) -> str:
    """Return the name of a position of the job; its id where the job does not know it."""
    found = position_of(job, position)
    return found["name"] if found else position


def unit_name(state, job: dict | None, unit: str) -> str:
    """Return how a unit is called: its code, else by where it sits or was pulled from."""
    known = state.units.get(state.now(unit))
    if known is None:
        return "a sensor that is not on record"
    if known["code"]:
        return shown(known["code"])
    if state.mixup(unit):
        return "one of the {} that got mixed up".format(state.mixup(unit)["count"])
    position = known["position"] or known["pulled_from"]
    if job and position:
        return "the sensor from " + position_name(job, position)
    return "a sensor without a label"


def place_words(state, job: dict | None, unit: str) -> str:
    """Return where a unit is, as the end of 'it is ...'."""
    known = state.units[unit]
    if known["claims"]:
        return "in dispute: two places are on record"
    if known["place"] == "fitted":
        vehicle = state.vehicles[known["vehicle"]]
        if job and job["vehicle"] == vehicle["id"]:
            return "fitted at " + position_name(job, known["position"])
        return "fitted on {}".format(vehicle["name"])
    if known["place"] == "out":
        if job and known["pulled_from"] and known["job"] == job["id"]:
            return "in your hand, pulled from " + position_name(job, known["pulled_from"])
        if job and known["job"] != job["id"] and known["job"]:
            return "out on another job"
        return "in your hand"
    if known["place"] == MIXED:
        return "one of {} in hand that got mixed up".format(state.mixed[known["mixed"]]["count"])
    return PLACE_WORDS[known["place"]]


def ago(then: int, now: int) -> str:
    """Return how long ago something was, in days; both in milliseconds, clocks that disagree make today."""
    days = max(0, now - then) // DAY_MS
    return "today" if days == 0 else phrases.counted(days, "day") + " ago"
