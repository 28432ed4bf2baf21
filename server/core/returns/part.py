"""The part in the clerk's hand is the one that the record claims: part number and serial.

What was read off the part or its bag counts; where nothing can be read, a look at the pictures.
"""

from ..codes import labels
from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..state.unit import Unit
from .check import check


def look(state, case):
    """Refuse another part number or serial; hold what nobody has compared yet."""
    unit, read = case["unit"], case["read"]
    if unit is None or case["unknown"]:
        return None
    if read["compared"] == "other":
        return check(
            "fail",
            message("returns-part-other-title", sort=Unit(state, unit["id"], case["job"]).sort.identity),
            message("returns-part-other"),
        )
    for field in ("serial", "part"):
        if read[field] and unit[field] and _plain(read[field]) != _plain(unit[field]):
            said = [
                message(
                    "returns-part-differs",
                    field=field,
                    read=read[field],
                    code=case["shown"],
                    recorded=unit[field],
                )
            ]
            owner = _with_serial(state, unit, read["serial"])
            if owner:
                said.append(message("returns-part-owner", code=owner))
            return check("fail", message("returns-part-differs-title"), sentences(said))
    same = [field for field in ("part", "serial") if read[field] and unit[field]]
    if "serial" in same or (same and not unit["serial"]):
        numbers = all_of([message("returns-part-number", field=each, number=unit[each]) for each in same])
        return check("pass", message("returns-part-title"), message("returns-part-read", numbers=numbers))
    if read["compared"] == "same":
        return check("pass", message("returns-part-title"), message("returns-part-by-eye"))
    if not unit["part"] and not unit["serial"]:
        return check("hold", message("returns-part-unknown-title"), message("returns-part-unknown"))
    unread = message("returns-part-unread", field="serial" if same else "part")
    return check("hold", message("returns-part-unread-title"), unread)


def _plain(text: str) -> str:
    """Return a number as it is compared: separators and case are printed differently here and there."""
    return "".join([chr(ord(c) - 32) if "a" <= c <= "z" else c for c in text if c not in " -./_"])


def _with_serial(state, unit, serial: str) -> str:
    """Return the label of another unit that has this serial on record, or ""."""
    if not serial:
        return ""
    for identity in sorted(state.units):
        other = state.units[identity]
        if identity != unit["id"] and other["serial"] and _plain(other["serial"]) == _plain(serial):
            return labels.shown(other["code"])
    return ""
