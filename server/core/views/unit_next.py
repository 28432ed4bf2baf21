"""What may be done with a unit next: one thing first, then the places it can go to."""

from ..facts.draft import draft
from ..state.job import find_job
from ..state.state import MIXED

_PLACES = (
    ("stock", "Into my stock"),
    ("counter", "To the parts counter"),
    ("customer", "The customer keeps it"),
    ("scrapped", "Scrapped"),
)


def next_of(state, unit: dict, found: list, returns: list, how: str) -> dict:
    """Return {"sentence", "words", "to", "places"}: what to do first, and where else the unit can go.

    `to` is what the button opens: "find", "job", "slip" or "jobs"; a place carries the fact to record.
    """
    sentence, said, to = _first(state, unit, found, returns)
    return {"sentence": sentence, "words": said, "to": to, "places": _places(unit, how)}


def _first(state, unit, found, returns) -> tuple:
    if unit["claims"]:
        return "Two places are on record. Scan its label where it really is.", "Scan its label", "find"
    if unit["place"] == MIXED:
        return (
            "It is one of several that got mixed up. The job says how to tell them apart.",
            "Go to the job",
            "job",
        )
    if not unit["code"] and unit["old_codes"]:
        return "Put a fresh label on it and scan that.", "Scan a fresh label", "find"
    job = find_job(state, unit["job"])
    if unit["place"] in ("fitted", "out") and job and not job.is_closed():
        return "Its job is open.", "Go to the job", "job"
    bad = [entry for entry in found if entry["standing"] == "bad"]
    if returns and returns[-1]["decision"]:
        return "The counter has decided on it.", "Show the return slip", "slip"
    if unit["place"] == "counter":
        return "The slip says what was found.", "Show the return slip", "slip"
    if bad and unit["place"] in ("out", "stock"):
        return "It was found bad. Take it to the parts counter with its slip.", "Show the return slip", "slip"
    if unit["place"] == "stock":
        return "It can be used on a job.", "Show the jobs", "jobs"
    if unit["jobs"]:
        return "Nothing has to be done with it.", "Go to its last job", "job"
    return "Nothing has to be done with it.", "Show the jobs", "jobs"


def _places(unit, how) -> list:
    """Return where a unit that is fitted nowhere can go, each with the fact that says so."""
    if unit["claims"] or unit["place"] in ("fitted", MIXED):
        return []
    return [
        {"place": place, "words": said,
         "events": [draft("unit_moved", unit=unit["id"], place=place, how=how, note="")]}
        for place, said in _PLACES
        if place != unit["place"]
    ]  # fmt: skip
