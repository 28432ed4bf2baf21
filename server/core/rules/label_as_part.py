"""A label's code is not taken for the part number printed on a sensor, unless a reason is given."""

from ..codes import labels
from ..messages import message
from .refusal import refusal

_NOTED = ("part_noted", "unit_added")


def refuse(fold, draft, job):
    """Ask about a part number that reads as the code of a label, where it is new for that unit."""
    data = draft["data"]
    if draft["kind"] not in _NOTED or data.get("override", "").strip():
        return None
    unit, part = fold.state.units.get(data["unit"]), data["part"]
    if not part or (unit and unit["part"] == part):
        return None
    read = labels.parse(part)
    if "code" not in read:
        return None
    return refusal(
        "label_as_part",
        message("rules-label-part-title"),
        message("rules-label-part", part=part, code=labels.shown(read["code"])),
        message("rules-label-part-do"),
        override=True,
    )
