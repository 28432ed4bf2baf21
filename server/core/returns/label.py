"""The label is one of ours, on record, in use, and the only one on one unit alone."""

from ..codes import labels
from ..messages import all_of
from ..messages import message
from ..state.unit import Unit
from . import evidence
from .check import check


def look(state, case):
    """Hold a label that is on no record, out of use, on two units, or was not read."""
    name, unit = case["shown"], case["unit"]
    kept = evidence.of(unit) if case["elsewhere"] else None
    if kept:
        return check(
            "pass",
            message("returns-label-evidence-title"),
            message("returns-label-evidence", host=case["elsewhere"], maker=kept["maker"]),
        )
    if case["elsewhere"]:
        return check(
            "hold",
            message("returns-label-elsewhere-title"),
            message("returns-label-elsewhere", host=case["elsewhere"]),
        )
    if unit is None or (case["code"] and case["code"] not in state.codes):
        return check(
            "hold",
            message("returns-label-unknown-title"),
            message("returns-label-unknown", code=name),
        )
    sort = Unit(state, unit["id"], case["job"]).sort.identity
    if unit["id"] in state.sharing_a_label():
        return check(
            "hold",
            message("returns-label-shared-title", sort=sort),
            message("returns-label-shared", code=name),
        )
    if case["code"] and case["code"] in unit["old_codes"]:
        now = labels.shown(unit["code"])
        said = message("returns-label-void", code=name, sort=sort, now=now)
        if not now:
            said = message("returns-label-void-none", code=name, sort=sort)
        return check("hold", message("returns-label-void-title"), said)
    if unit["also"]:
        both = all_of([labels.shown(code) for code in [unit["code"]] + unit["also"]])
        said = message("returns-label-two", codes=both, sort=sort)
        return check("hold", message("returns-label-two-title"), said)
    if case["how"] == "tapped":
        said = message("returns-label-unread", sort=sort)
        return check("hold", message("returns-label-unread-title"), said)
    return check("pass", message("returns-label-title"), message("returns-label", code=name, how=case["how"]))
