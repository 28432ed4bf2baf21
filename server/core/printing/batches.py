"""The batches that this phone printed, and what became of each label: on paper, on a sensor, or void."""

from ..codes import labels
from ..errors import BadInput
from ..messages import message
from .layout import layout_of

FREE, ON, VOID = "on paper", "on a sensor", "void"
MOST_LABELS = 200  # in one printing: what one entry of the log takes


def listed(state) -> list:
    """Return all batches, the newest first; their number is their place in the log."""
    found = []
    for number in range(len(state.printed), 0, -1):
        batch = state.printed[number - 1]
        counts = {FREE: 0, ON: 0, VOID: 0}
        for code in batch["codes"]:
            counts[_standing(state, batch, code)[0]] += 1
        found.append(
            {
                "id": number,
                "batch": batch["id"],
                "made_at": batch["at"],
                "layout": _words(batch["layout"]),
                "counts": counts,
                "printed": batch["printed"],
                "finished": True,
            }
        )
    return found


def one(state, number: int) -> dict | None:
    """Return a batch with its labels in the order of their codes, or None."""
    if not 1 <= number <= len(state.printed):
        return None
    batch = state.printed[number - 1]
    found = []
    for code in sorted(batch["codes"]):
        standing, unit = _standing(state, batch, code)
        reason = None if unit else _reason(batch, code)
        found.append(
            {"code": code, "shown": labels.shown(code), "state": standing, "unit": unit, "reason": reason}
        )
    return {
        "id": number,
        "batch": batch["id"],
        "options": batch["layout"],
        "layout": _words(batch["layout"]),
        "labels": found,
    }


def _words(options: dict) -> dict:
    try:
        return layout_of(options).words
    except BadInput:  # a later version of the app may lay out more than this one
        return message("printing-layout-other")


def _reason(batch: dict, code: str) -> str | None:
    """Return why a label went out of use before anything carried it, or None."""
    return batch.get("void", {}).get(code)


def _standing(state, batch: dict, code: str) -> tuple:
    """Return what became of a label, and the unit whose label it is or was, or None."""
    unit = state.codes.get(code)
    if unit is None:
        return (FREE if _reason(batch, code) is None else VOID), None
    return (VOID if code in state.units[unit]["old_codes"] else ON), unit
