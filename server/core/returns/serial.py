"""The serial number is of this sensor alone: no other one has it on record, and none came back with it.

Two sensors of one part number never share one; those of two makers may. Where the record has it twice, a
label sits on another part than it was put on, or one part comes back under two labels. A part that was here
under a label not its own, and was not accepted so, may well come back under its own; who moved that label is
then to be found out. A number that differs from another sensor's in an O for a 0 alone may be that one,
mistyped: it is held, unless it is on record for this sensor and the other one never came back.
"""

from ..codes import labels
from ..codes.numbers import plain
from ..codes.numbers import tells_apart
from ..facts.labelling import carried
from ..facts.returns import is_final
from ..messages import all_of
from ..messages import message
from ..state.serials import serials_of
from ..state.unit import Unit
from ..words import words
from .check import check


def look(state, case):
    """Refuse a serial number that was ever read off another unit; hold one that was under a moved label."""
    unit = case["unit"]
    typed, recorded = case["read"]["serial"], unit["serial"] if unit else ""
    given = [serial for serial in (typed, recorded) if tells_apart(serial)]
    if not given:
        return None
    serial = given[0]
    part = case["read"]["part"] or (unit["part"] if unit else "")
    looking_so = [state.units[name] for name in state.with_serial_by_eye(serial)]
    looking_so = [other for other in looking_so if not _is_the_same(state, case, other)]
    others = [other for other in looking_so if _has(other, serial)]
    alike = [other for other in others if not _is_another_part(other, part)]
    if not alike:
        mistaken = [
            other for other in looking_so if other not in others and not _is_another_part(other, part)
        ]
        if unit and plain(unit["serial"]) == plain(serial):
            mistaken = [other for other in mistaken if other["returns"]]
        if mistaken:
            return _looks_like(state, serial, mistaken)
        if others:
            return _of_another_part(state, case, serial, others)
        return check("pass", message("returns-serial-title"), message("returns-serial", serial=serial))
    others = alike
    if not [other for other in others if not _had_a_moved_label(unit, other, serial)]:
        codes = all_of([_name(state, each) for each in others])
        said = message("returns-serial-under", serial=serial, codes=codes)
        return check("hold", message("returns-serial-under-title"), said)
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


def _has(unit, serial: str) -> bool:
    """Tell whether this very number was ever read off a unit."""
    return plain(serial) in [plain(each) for each in serials_of(unit)]


def _looks_like(state, serial: str, others: list) -> dict:
    """Hold a number that may be another sensor's, read or typed with a sign that looks the same."""
    said = message(
        "returns-serial-alike", serial=serial, codes=all_of([_name(state, each) for each in others])
    )
    return check("hold", message("returns-serial-alike-title"), said)


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


def _is_another_part(other, part: str) -> bool:
    """Tell whether a unit is known to have another part number."""
    parts = [entry["part"] for entry in other["returns"] if entry["part"]]
    known = other["part"] or (parts[-1] if parts else "")
    return bool(part and known) and plain(part) != plain(known)


def _of_another_part(state, case, serial, others) -> dict:
    """Pass where this one's part number was read; hold it else: what a record says anybody may have typed."""
    settled = bool(case["read"]["part"])
    said = message(
        "returns-serial-apart",
        serial=serial,
        codes=all_of([_name(state, each) for each in others]),
        settled="yes" if settled else "no",
    )
    return check("pass" if settled else "hold", message("returns-serial-apart-title"), said)


def _had_a_moved_label(unit, other, serial) -> bool:
    """Tell whether the label of another sensor was on this one at a counter, which did not accept it so."""
    if unit is None or plain(unit["serial"]) != plain(serial):
        return False
    if not other["serial"] or plain(other["serial"]) == plain(serial):
        return False
    decided = [made for entry in other["returns"] for made in entry["decisions"]]
    return not [made for made in decided if made["decision"] == "accept"]


def _name(state, unit):
    """Return the label by which people know a unit, or what it is called without one."""
    code = unit["code"] or (unit["returns"][-1]["code"] if unit["returns"] else "")
    return labels.shown(code.partition("@")[0]) or words.unit_name(Unit(state, unit["id"]))
