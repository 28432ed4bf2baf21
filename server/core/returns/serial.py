"""The serial number is of this sensor alone: no other one has it on record, and none came back with it.

Two sensors never share one. Where the record has it twice, a label sits on another part than it was put on,
or one part comes back under two labels.
"""

from ..codes import labels
from ..facts.labelling import carried
from ..facts.returns import is_final
from ..messages import all_of
from ..messages import message
from ..state.unit import Unit
from ..words import words
from .check import check


def look(state, case):
    """Refuse a serial number that was ever read off another unit, be it at the bench or at a counter."""
    unit = case["unit"]
    serial = case["read"]["serial"] or (unit["serial"] if unit else "")
    if not serial:
        return None
    others = [state.units[name] for name in state.with_serial(serial)]
    others = [other for other in others if not _is_the_same(state, case, other)]
    if not others:
        return check("pass", message("returns-serial-title"), message("returns-serial", serial=serial))
    for other in others:
        finals = [entry["decision"] for entry in other["returns"] if is_final(entry)]
        if finals:
            said = message(
                "returns-serial-before",
                serial=serial,
                code=_name(state, other),
                decision=finals[-1]["decision"],
                ago=words.ago(finals[-1]["at"], case["now"]),
                signed=finals[-1]["signed"],
            )
            return check("fail", message("returns-serial-before-title"), said)
    said = message(
        "returns-serial-other", serial=serial, codes=all_of([_name(state, each) for each in others])
    )
    return check("fail", message("returns-serial-other-title"), said)


def _is_the_same(state, case, other) -> bool:
    """Tell whether a unit on record is, or may be, the one at the counter."""
    unit, mine = case["unit"], [case["code"]]
    if unit:
        if unit["id"] == other["id"] or (unit["mixed"] is not None and unit["mixed"] == other["mixed"]):
            return True
        mine += carried(unit) + unit["old_codes"]
        for conflict in state.index.open_labels():
            sharing = (conflict["unit"], state.codes.get(conflict["code"]))
            if unit["id"] in sharing and other["id"] in sharing:
                return True  # two phones put one label on record, each for itself: `label` holds it
    # What a counter took in before the record of its label came goes by an id of its own.
    alone = not other["code"] and not other["old_codes"] and not other["jobs"]
    return alone and bool([entry for entry in other["returns"] if entry["code"] and entry["code"] in mine])


def _name(state, unit):
    """Return the label by which people know a unit, or what it is called without one."""
    code = unit["code"] or (unit["returns"][-1]["code"] if unit["returns"] else "")
    return labels.shown(code.partition("@")[0]) or words.unit_name(Unit(state, unit["id"]))
