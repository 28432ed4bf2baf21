"""The part in the clerk's hand is the one that the record claims: part number and serial.

A serial number that was read off it and is on record tells it from all others. A part number does not, for
many sensors have the same one: where there is no more, a look at the pictures has to do, best at that of the
sensor as it was labelled at the bench. Without a picture nobody has compared anything by eye. A number that
somebody typed may have an O for a 0: that alone refuses nothing.
"""

from ..codes.numbers import by_eye
from ..codes.numbers import plain
from ..codes.numbers import tells_apart
from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..state.unit import Unit
from . import evidence
from .check import check
from .photos import of_itself
from .photos import pictures


def is_pictured(case) -> bool:
    """Tell whether there are pictures to compare the part with, here or in the file of its record."""
    kept = evidence.of(case["unit"])
    if case["unknown"]:
        return kept is not None and "photos" in kept["passes"]
    return case["unit"] is not None and bool(pictures(case["unit"], case["job"]))


def look(state, case):
    """Refuse another part number or serial; hold what nobody has compared yet."""
    unit, read = case["unit"], case["read"]
    if unit is None or (case["unknown"] and evidence.of(unit) is None):
        return None
    if read["compared"] == "other":
        return check(
            "fail",
            message("returns-part-other-title", sort=Unit(state, unit["id"], case["job"]).sort.identity),
            message("returns-part-other"),
        )
    compared = [
        field
        for field in ("serial", "part")
        if read[field] and unit[field] and (field == "part" or _are_serials(read[field], unit[field]))
    ]
    differing = [field for field in compared if plain(read[field]) != plain(unit[field])]
    for field in differing:
        if by_eye(read[field]) != by_eye(unit[field]):
            return check("fail", message("returns-part-differs-title"), _both(case, field))
    if "serial" in compared and "serial" not in differing:
        same = [field for field in ("part", "serial") if field in compared]
        numbers = all_of([message("returns-part-number", field=each, number=unit[each]) for each in same])
        return check("pass", message("returns-part-title"), message("returns-part-read", numbers=numbers))
    pictured = is_pictured(case)
    if read["compared"] == "same" and pictured:
        return check("pass", message("returns-part-title"), message("returns-part-by-eye"))
    there = "some" if pictured else "none"
    if differing:
        said = sentences([_both(case, differing[0]), message("returns-part-alike", pictures=there)])
        return check("hold", message("returns-part-unread-title"), said)
    if not unit["part"] and not unit["serial"]:
        unknown = message("returns-part-unknown", pictures=there)
        return check("hold", message("returns-part-unknown-title"), unknown)
    unproven = message(
        "returns-part-unread" if tells_apart(unit["serial"]) else "returns-part-alone", pictures=there
    )
    if of_itself(unit, case["job"]):
        return check("hold", message("returns-part-pictured-title"), unproven)
    return check("hold", message("returns-part-unread-title"), unproven)


def _are_serials(read: str, recorded: str) -> bool:
    return tells_apart(read) and tells_apart(recorded)


def _both(case, field: str) -> dict:
    """Return what was read, beside what is on record."""
    read, recorded = case["read"][field], case["unit"][field]
    return message("returns-part-differs", field=field, read=read, code=case["shown"], recorded=recorded)
