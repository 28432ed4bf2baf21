"""The label is one of ours, on record, in use, and the only one on one unit alone."""

from .. import phrases
from ..codes import labels
from ..state.unit import Unit
from .check import check


def look(state, case):
    """Hold a label that is on no record, out of use, on two units, or was not read."""
    name, unit = case["shown"], case["unit"]
    if case["elsewhere"]:
        return check(
            "hold",
            "A label from elsewhere",
            "Its record is at {}. Ask for the record as a file.".format(case["elsewhere"]),
        )
    if unit is None or (case["code"] and case["code"] not in state.codes):
        return check(
            "hold",
            "No sensor on record has this label",
            "{} is on no record here. The phone that put it on may not have sent its work yet.".format(name),
        )
    unit_of = Unit(state, unit["id"], case["job"])
    if unit["id"] in state.sharing_a_label():
        return check(
            "hold",
            "Two {} carry this label".format(unit_of.sort.units),
            "{} does not say which of the two this is.".format(name),
        )
    if case["code"] and case["code"] in unit["old_codes"]:
        now = labels.shown(unit["code"]) or "no label"
        return check(
            "hold",
            "This label is void",
            "{} was taken out of use; the {} that had it has {} now.".format(name, unit_of.sort.unit, now),
        )
    if unit["also"]:
        both = phrases.listed([labels.shown(code) for code in [unit["code"]] + unit["also"]])
        return check(
            "hold", "Two labels on it", "{} are on record for one {}.".format(both, unit_of.sort.unit)
        )
    if case["how"] == "tapped":
        return check(
            "hold",
            "Label not read",
            "Only its label says for sure which {} this is.".format(unit_of.sort.unit),
        )
    return check("pass", "Label known", "{} is on record, {}.".format(name, case["how"]))
