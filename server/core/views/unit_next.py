"""What may be done with a unit next: one thing first, then the places it can go to."""

from ..evidence import unit_history
from ..facts.draft import draft
from ..messages import message
from ..state.job import find_job
from ..state.state import MIXED

_PLACES = ("stock", "counter", "customer", "scrapped")
# what to do first -> (what the button says, what it opens)
_BUTTONS = {
    "views-unit-next-dispute": ("views-unit-next-scan", "find"),
    "views-unit-next-mixed": ("views-unit-next-job", "job"),
    "views-unit-next-label": ("views-unit-next-scan-fresh", "find"),
    "views-unit-next-open": ("views-unit-next-job", "job"),
    "views-unit-next-decided": ("views-unit-next-slip", "slip"),
    "views-unit-next-counter": ("views-unit-next-slip", "slip"),
    "views-unit-next-bad": ("views-unit-next-slip", "slip"),
    "views-unit-next-stock": ("views-unit-next-jobs", "jobs"),
    "views-unit-next-last": ("views-unit-next-last-job", "job"),
    "views-unit-next-nothing": ("views-unit-next-jobs", "jobs"),
}


def next_of(state, unit: dict, found: list, returns: list, how: str) -> dict:
    """Return {"sentence", "words", "to", "places"}: what to do first, and where else the unit can go.

    `to` is what the button opens: "find", "job", "slip" or "jobs"; a place carries the fact to record.
    """
    first = _first(state, unit, found, returns)
    said, to = _BUTTONS[first]
    return {"sentence": message(first), "words": message(said), "to": to, "places": _places(state, unit, how)}


def _first(state, unit, found, returns) -> str:
    if unit["claims"]:
        return "views-unit-next-dispute"
    if unit["place"] == MIXED:
        return "views-unit-next-mixed"
    if not unit["code"] and unit["old_codes"]:
        return "views-unit-next-label"
    job = find_job(state, unit["job"])
    if unit["place"] in ("fitted", "out") and job and not job.is_closed():
        return "views-unit-next-open"
    bad = [entry for entry in found if entry["standing"] == "bad"]
    if returns and returns[-1]["decision"]:
        return "views-unit-next-decided"
    if unit["place"] == "counter":
        return "views-unit-next-counter"
    if bad and unit["place"] in ("out", "stock"):
        return "views-unit-next-bad"
    if unit["place"] == "stock":
        return "views-unit-next-stock"
    return "views-unit-next-last" if unit["jobs"] else "views-unit-next-nothing"


def _places(state, unit, how) -> list:
    """Return where a unit that is fitted nowhere can go, each with the fact that says so."""
    if unit["claims"] or unit["place"] in ("fitted", MIXED):
        return []
    bad = unit_history.condemned(state, unit["id"]) != ""
    return [
        {"place": place, "words": message("views-unit-next-place", place=place),
         "wants": "note" if bad and place == "stock" else "",
         "events": [draft("unit_moved", unit=unit["id"], place=place, how=how, note="", was=unit["place"])]}
        for place in _PLACES
        if place != unit["place"]
    ]  # fmt: skip
