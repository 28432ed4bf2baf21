"""The record is as it was written: the chain of events that the unit's facts are in has no fault."""

from .check import check


def look(state, case):
    """Refuse a record in which an event was changed or is missing; hold one that nobody could check."""
    if case["unit"] is None or case["unknown"]:
        return None
    faults = case["record"]
    if faults is None:
        return check("hold", "Record not checked", "This phone could not check the record for changes.")
    if faults:
        return check(
            "fail",
            "The record was altered",
            "Of device {}, {}.".format(faults[0]["device"], faults[0]["reason"]),
        )
    return check("pass", "Record intact", "No event of it was changed, none is missing.")
