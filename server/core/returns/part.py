"""The part in the clerk's hand is the one that the record claims: part number and serial.

What was read off the part or its bag counts; where nothing can be read, a look at the pictures.
"""

from ..codes import labels
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
            "Not the {} in the pictures".format(Unit(state, unit["id"], case["job"]).sort.unit),
            "Compared by eye: it is another one.",
        )
    for field, word in (("serial", "serial number"), ("part", "part number")):
        if read[field] and unit[field] and _plain(read[field]) != _plain(unit[field]):
            sentence = "Read off it: {} {}. The record of {} says {}.".format(
                word, read[field], case["shown"], unit[field]
            )
            owner = _with_serial(state, unit, read["serial"])
            if owner:
                sentence += " That serial number is on record as {}.".format(owner)
            return check("fail", "The label is on another part", sentence)
    same = [field for field in ("part", "serial") if read[field] and unit[field]]
    if "serial" in same or (same and not unit["serial"]):
        numbers = " and ".join([_WORDS[field] + " " + unit[field] for field in same])
        return check("pass", "It is the part claimed", "Read off it: {}, as on record.".format(numbers))
    if read["compared"] == "same":
        return check("pass", "It is the part claimed", "Compared with its pictures by eye.")
    if not unit["part"] and not unit["serial"]:
        return check(
            "hold", "No part number on record", "Nothing says which part is claimed. Compare the pictures."
        )
    wanted = "serial number" if same else "part number"
    return check(
        "hold",
        "Is it the part claimed?",
        "No {} read off it yet. Scan the maker's symbol on the part or its bag, or compare the "
        "pictures.".format(wanted),
    )


_WORDS = {"part": "part", "serial": "serial"}


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
