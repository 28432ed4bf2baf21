"""The record is as it was written: the chain of events that the unit's facts are in has no fault."""

from ..messages import message
from ..messages import sentences
from .check import check

_WORDS = {
    "changed": "returns-record-changed",
    "missing": "returns-record-missing",
    "other": "returns-record-other",
}


def look(state, case):
    """Refuse a record in which an event was changed or is missing; hold one that nobody could check."""
    if case["unit"] is None or case["unknown"]:
        return None
    faults = case["record"]
    if faults is None:
        return check("hold", message("returns-record-unchecked-title"), message("returns-record-unchecked"))
    if faults:
        said = [
            message(_WORDS[faults[0]["what"]], seq=str(faults[0]["seq"])),
            message("returns-record-phone", device=faults[0]["device"]),
        ]
        return check("fail", message("returns-record-altered-title"), sentences(said))
    return check("pass", message("returns-record-title"), message("returns-record"))
