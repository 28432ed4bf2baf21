"""Plain words for units, positions, places and figures: the same sentence on every screen and on paper."""

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


def percent(ppb: int) -> str:
    """Return a probability (parts per billion) as people read it.

    Whole percent; one decimal above 95, just below it, and below 5, where it matters; never a false
    0, 95 or 100.
    """
    if ppb > 999500000:
        return "over 99.9 %"
    if ppb < 500000:
        return "under 0.1 %"
    tenths = (ppb + 500000) // 1000000
    if 945000000 <= ppb < 950000000:
        # Never 95 for what does not reach it: that is where a verdict begins.
        tenths = ppb // 1000000
    elif 50 <= tenths <= 950:
        return "{} %".format((ppb + 5000000) // 10000000)
    return "{}.{} %".format(tenths // 10, tenths % 10)


def minutes(hundredths: int) -> str:
    """Return a duration given in hundredths of a minute, rounded to whole minutes."""
    whole = (hundredths + 50) // 100
    return "1 minute" if whole == 1 else "{} minutes".format(whole)


def counted(number: int, word: str) -> str:
    """Return '1 day' or '3 days'."""
    return "1 {}".format(word) if number == 1 else "{} {}s".format(number, word)


def ago(then: int, now: int) -> str:
    """Return how long ago something was, in days; both in milliseconds, clocks that disagree make today."""
    days = max(0, now - then) // DAY_MS
    return "today" if days == 0 else counted(days, "day") + " ago"


def listed(items: list) -> str:
    """Return 'a', 'a and b' or 'a, b and c'."""
    if len(items) < 2:
        return "".join(items)
    return ", ".join(items[:-1]) + " and " + items[-1]


def sentence_case(text: str) -> str:
    """Return `text` with its first letter in upper case."""
    return text[:1].upper() + text[1:]
