"""A label code is one that we issue, and belongs to one unit for good."""

from ..codes import labels
from ..state.unit import Unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse a code that no label has, one that another unit carries or carried, a second label."""
    if draft["kind"] not in ("unit_labelled", "unit_added"):
        return None
    data = draft["data"]
    code = data["code"]
    if draft["kind"] == "unit_added" and not code:
        return None
    state = fold.state
    if not labels.may_be_issued(code):
        return refusal("code_use", "Not a label code", "{} is no label code.".format(code), "Read it again.")
    holder = state.codes.get(code)
    if holder is None:
        return _second(state, data["unit"], job) if draft["kind"] == "unit_labelled" else None
    name, sort = labels.shown(code), Unit(state, holder, job).sort
    if holder == data["unit"]:
        return refusal(
            "code_use", "It has this label", "{} is on this {} already.".format(name, sort.unit), "Go on."
        )
    if code in state.units[holder]["old_codes"]:
        return refusal(
            "code_use",
            "This label is void",
            "{} was taken out of use.".format(name),
            "Take a fresh label.",
        )
    return refusal(
        "code_use",
        "This label is on another " + sort.unit,
        "{} is {}.".format(name, words.place_words(Unit(state, holder, job))),
        "Take a fresh label, and check that you hold the {} you think you hold.".format(sort.unit),
    )


def _second(state, identity, job) -> dict | None:
    """A unit gets a second label only after the first was taken out of use: nobody would know of both."""
    unit = state.units.get(identity)
    if unit is None or not unit["code"]:
        return None
    name, sort = labels.shown(unit["code"]), Unit(state, identity, job).sort
    return refusal(
        "code_use",
        "It has a label already",
        "{} is on this {}.".format(name, sort.unit),
        "If {} is torn or lost, take it out of use first, on the page of the {}.".format(name, sort.unit),
    )
