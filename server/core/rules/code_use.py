"""A label code is one that we issue, and belongs to one unit for good."""

from ..codes import labels
from ..messages import message
from ..state.printed import is_spoiled
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
        return _refusal(
            message("rules-code-none-title"),
            message("rules-code-none", code=code),
            message("rules-code-none-do"),
        )
    holder = state.codes.get(code)
    if holder is None and (is_spoiled(state, code) or code in fold.out_of_use):
        return _out_of_use(code)
    if holder is None:
        return _second(state, data["unit"], job) if draft["kind"] == "unit_labelled" else None
    name, sort = labels.shown(code), Unit(state, holder, job).sort.identity
    if holder == data["unit"]:
        return _refusal(
            message("rules-code-same-title"),
            message("rules-code-same", code=name, sort=sort),
            message("rules-go-on"),
        )
    if code in state.units[holder]["old_codes"]:
        return _out_of_use(code)
    return _refusal(
        message("rules-code-other-title", sort=sort),
        message("rules-unit-is", unit=name, place=words.place_words(Unit(state, holder, job))),
        message("rules-code-other-do", sort=sort),
    )


def _out_of_use(code: str) -> dict:
    return _refusal(
        message("rules-code-void-title"),
        message("rules-code-void", code=labels.shown(code)),
        message("rules-code-void-do"),
    )


def _second(state, identity, job) -> dict | None:
    """A unit gets a second label only after the first was taken out of use: nobody would know of both."""
    unit = state.units.get(identity)
    if unit is None or not unit["code"]:
        return None
    name, sort = labels.shown(unit["code"]), Unit(state, identity, job).sort.identity
    return _refusal(
        message("rules-code-second-title"),
        message("rules-code-second", code=name, sort=sort),
        message("rules-code-second-do", code=name, sort=sort),
    )


def _refusal(title, sentence, do) -> dict:
    return refusal("code_use", title, sentence, do)
