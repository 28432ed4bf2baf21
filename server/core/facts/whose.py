"""Whose phone an entry is of, as its certificate says, and what of that a person should see.

`state.phones` has of each device what is said of its phone, in order: {"from", "role", "name", "people"},
from the entry with this number on. `people` are those who share it with the one in whose name it was paired.
Of a phone without a certificate, and of what it recorded before it had one, nothing is said or flagged.
"""

from .conflicts import remark
from .corrections import KINDS_OF_CORRECTION
from .roles import against

ROLE = "role"  # what a conflict is about when a phone recorded what its role may not


def phones_of(rows: list) -> dict:
    """Return {device: [...]} of rows {"device", "from", "role", "name", "people"}, the earlier ones first."""
    found = {}
    for row in rows:
        found.setdefault(row["device"], []).append(row)
    return found


def phone_of(state, device: str, seq: int) -> dict | None:
    """Return what is said of the phone that recorded an entry, or None."""
    said = None
    for each in state.phones.get(device, ()):
        if each["from"] <= seq:
            said = each
    return said


def flag_role(state, event, kind, job) -> None:
    """Flag a well-formed entry that phones of its phone's role do not record; it counts all the same."""
    phone = phone_of(state, event["device"], event["seq"])
    if phone is None:
        return
    data, target = event["data"], None
    if kind.name in KINDS_OF_CORRECTION:
        target = _target(state, event, phone)
        if target is None:
            return
    # Of a decision in another's name `returns` tells.
    entry = {"kind": kind.name, "data": data, "actor": data.get("signed", event["actor"])}
    if against(phone["role"], entry, target):
        named = [unit for unit in kind.names(data)[1] if unit in state.units]
        remark(state, event, job, named[0] if named else None, ROLE)


def _target(state, event: dict, phone: dict) -> dict | None:
    """Return what a correction names, as `against` takes it; None where that was not on record."""
    device, seq = event["data"]["device"], event["data"]["seq"]
    found = state.recorded(device, seq, event)
    if found is None:
        return None
    other = phone_of(state, device, seq)
    role, name = (other["role"], other["name"]) if other else ("", "")
    # A phone that had to take a new device id has the same name under both.
    own = device == event["device"] or (role, name) == (phone["role"], phone["name"])
    return {"kind": found, "own": own, "role": role}
