"""The record is as it was written: the chain of events that the unit's facts are in has no fault."""

from .check import check

_WORDS = {
    "changed": "Entry {} was changed after it was recorded.",
    "missing": "What comes before entry {} is missing.",
    "other": "Entry {} does not continue the one before it.",
}


def look(state, case):
    """Refuse a record in which an event was changed or is missing; hold one that nobody could check."""
    if case["unit"] is None or case["unknown"]:
        return None
    faults = case["record"]
    if faults is None:
        return check("hold", "Record not checked", "This phone could not check the record for changes.")
    if faults:
        said = _WORDS[faults[0]["what"]].format(faults[0]["seq"])
        return check("fail", "The record was altered", "{} Phone {}.".format(said, faults[0]["device"]))
    return check("pass", "Record intact", "No event of it was changed, none is missing.")
