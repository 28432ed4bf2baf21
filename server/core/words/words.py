"""Plain words for units, positions, places and figures: the same sentence on every screen and on paper."""

from ..codes.labels import shown
from ..messages import message
from ..state.job import Job
from ..state.state import MIXED
from ..state.unit import Unit

# Where a unit is that is neither fitted nor in hand: the id of the end of 'it is ...'.
PLACES = {
    "stock": "names-place-stock",
    "counter": "names-place-counter",
    "customer": "names-place-customer",
    "scrapped": "names-place-scrapped",
}
# Whose hand and stock is meant: of those who read it, or of another installation.
YOURS, THEIRS = "yours", "theirs"

DAY_MS = 86400000


def position_name(job: Job, position: str):
    """Return what a position of the job is called; its id where the job does not know it."""
    found = job.position(position)
    return called(job, found) if found else position


def called(job: Job, position: dict):
    """Return what a position is called: as the layout of its sort has it, or as a person named it."""
    return job.sort.called(position)


def unit_name(unit: Unit):
    """Return what a unit is called: its code, else by where it sits or was pulled from."""
    if not unit.is_on_record():
        return message("names-unit-unknown", sort=unit.sort.identity)
    if unit.is_labelled():
        return shown(unit.code)
    mixup = unit.mixup()
    if mixup:
        return message("names-unit-mixed", count=mixup["count"])
    position = unit.position or unit.pulled_from
    if unit.job and position:
        return message(
            "names-unit-from",
            sort=unit.sort.identity,
            position=position_name(unit.job, position),
            count=1,
        )
    return message("names-unit-unlabelled", sort=unit.sort.identity)


def place_words(unit: Unit) -> dict:
    """Return where a unit is, as the end of 'it is ...'."""
    job = unit.job
    if unit.is_disputed():
        return message("names-place-disputed")
    if unit.is_fitted():
        if job and unit.position and unit.is_fitted_here():
            return message("names-place-fitted-at", position=position_name(job, unit.position))
        return message("names-place-fitted-on", vehicle=unit.vehicle()["name"])
    if unit.is_in_hand():
        if job and unit.pulled_from and unit.is_in_hand_here():
            pulled_from = position_name(job, unit.pulled_from)
            return message("names-place-hand-from", position=pulled_from, whose=YOURS)
        if job and unit["job"] != job.id and unit["job"]:
            return message("names-place-other-job")
        return message("names-place-hand", whose=YOURS)
    if unit["place"] == MIXED:
        return message("names-place-mixed", count=unit.state.mixed[unit["mixed"]]["count"])
    return place_name(unit["place"])


def place_name(place: str) -> dict:
    """Return what a place is called at which a unit is neither fitted nor sure to be in hand."""
    return message(PLACES.get(place, "names-place-in-hand"), whose=YOURS)


def ago(then: int, now: int) -> dict:
    """Return how long ago something was, in days; both in milliseconds, clocks that disagree make today."""
    return message("names-ago", days=max(0, now - then) // DAY_MS)
