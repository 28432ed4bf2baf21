"""Folding of mix-ups: identities lose their bodies, and get them back by a scan or by elimination.

What follows from a settled mix-up is as if the body had been that unit all along: its tests, its
moves and its place become the unit's. State shared with a trial copy is replaced, never changed.
"""

import hashlib

from ..log import envelope
from ..state.kept_facts import new_unit
from ..state.state import MIXED
from . import labelling

# So many never lie in hand on one job: no vehicle has as many positions.
_MOST = 64


def mix(state, event, job, identities: list) -> None:
    """Take the bodies of these units (two or more, all in hand) from them."""
    data = event["data"]
    index = len(state.mixed)
    identity = envelope.identity(event)
    count = len(identities)
    parts = []
    for each in identities:
        if state.units[each]["part"] not in parts:
            parts.append(state.units[each]["part"])
    bodies = []
    for number in range(count):
        body = new_unit(body_id(identity, number + 1))
        body["part"] = parts[0] if len(parts) == 1 else ""
        body["job"] = job["id"]
        body["jobs"].append(job["id"])
        bodies.append(body["id"])
        state.add_unit(body)
    for each in identities:
        unit = state.units[each]
        state.place_unit(unit, MIXED, unit["vehicle"], unit["position"], job["id"])
        state.join_unit(unit, job["id"])
    for each in identities + bodies:
        unit = state.units[each]
        unit["mixed"] = index
        unit["lost"].append({"at": event["at"], "count": count, "set": index, "settled": ""})
        note(event, unit, "mixed")
    state.mixed.append(
        {
            "event": identity,
            "job": job["id"],
            "at": event["at"],
            "count": count,
            "units": identities,
            "open": list(identities),
            "bodies": bodies,
            "tests": len(job["tests"]),
            "move": job["move"],
            "note": data["note"],
        }
    )
    job["move"] = None


def in_hand(state, entry: dict) -> str | None:
    """Return the body that an old label read in the hand must be on, None when it may be several."""
    out = [body for body in entry["bodies"] if state.units[body]["place"] == "out"]
    bare = [body for body in out if not state.units[body]["code"]]
    if bare:
        return bare[-1]  # without labels they are all alike
    return out[0] if len(out) == 1 else None


def settle(state, event, identity: str) -> bool:
    """Give a unit that was seen its body back; False when no body can be meant.

    A body that lies unlabelled is any of them. Otherwise it is the one at the place where the unit
    was seen, if only one is there.
    """
    index = state.units[identity]["mixed"]
    entry = state.mixed[index]
    body = _body(state, event, entry)
    if body is None:
        return False
    _bind(state, event, index, identity, body, "scan")
    entry = state.mixed[index]
    if len(entry["open"]) == 1 and len(entry["bodies"]) == 1:
        _bind(state, event, index, entry["open"][0], entry["bodies"][0], "left")
        entry = state.mixed[index]
    job = state.jobs[entry["job"]]
    if not entry["open"] and job["move"] is None and len(job["tests"]) == entry["tests"]:
        job["move"] = entry["move"]  # what was under way goes on
    return True


def _body(state, event, entry) -> str | None:
    data = event["data"]
    if data["place"] == "out":
        return in_hand(state, entry)
    there = []
    for body in entry["bodies"]:
        unit = state.units[body]
        if unit["place"] == data["place"] and (
            data["place"] != "fitted" or unit["position"] == data["position"]
        ):
            there.append(body)
    if len(there) == 1:
        return there[0]
    return in_hand(state, entry) if data["place"] != "fitted" else None


def body_id(event: str, number: int) -> str:
    """Return an id as units have it, the same on every phone that folds the event."""
    return "u" + hashlib.sha256("{} body {}".format(event, number).encode()).digest().hex()[:12]


def body_ids(event: str, count: int) -> list[str]:
    """Return the ids of the first bodies of a mix-up, in order."""
    return [body_id(event, number + 1) for number in range(count)]


def is_body(unit: str, identity: str) -> bool:
    """Tell whether an id is that of a body of the mix-up of this entry, whatever it says by now."""
    return unit in body_ids(identity, _MOST)


def _bind(state, event, index, identity, body, how) -> None:
    """Let a unit and a body be one: the body's record goes over to the unit, its id becomes an alias."""
    unit, other = state.units[identity], state.units[body]
    state.place_unit(unit, other["place"], other["vehicle"], other["position"], other["job"])
    state.settle_unit(unit, other["claims"])
    unit["pulled_from"] = other["pulled_from"] or unit["pulled_from"]
    unit["part"] = unit["part"] or other["part"]
    unit["serial"] = unit["serial"] or other["serial"]
    for name in ("noted", "corrected_apart"):
        if name in other and name not in unit:
            unit[name] = renamed(other[name], body, identity)
    # Nobody found its label when the others were told apart by theirs, or a new one was asked for.
    if other["code"] or how == "left":
        for code in labelling.carried(unit):
            labelling.void(state, unit, code)
    if other["code"]:
        unit["code"] = other["code"]
        unit["also"] = list(other["also"])
        for code in labelling.carried(other):
            state.codes[code] = identity
    unit["old_codes"].extend(other["old_codes"])
    for code in other["old_codes"]:
        state.codes[code] = identity
    for each in other["jobs"]:
        state.join_unit(unit, each)
    unit["moves"].extend(other["moves"][1:])
    unit["lost"].extend(other["lost"][1:])
    unit["returns"].extend(other["returns"])
    state.note_serials(unit)
    for lost in unit["lost"]:
        if lost["set"] == index:
            lost["settled"] = how
    # A body may have been mixed up once more; then the unit is what got lost there.
    unit["mixed"] = other["mixed"] if other["mixed"] != index else None
    note(event, unit, "told apart")
    state.aliases[body] = identity
    state.remove_unit(body)
    for each in other["jobs"]:
        state.jobs[each] = renamed(state.jobs[each], body, identity, "history")
        vehicle = state.jobs[each]["vehicle"]
        state.vehicles[vehicle] = renamed(state.vehicles[vehicle], body, identity)
    state.renew_conflicts(renamed(state.conflicts, body, identity))
    entry = state.mixed[index]
    entry["open"].remove(identity)
    entry["bodies"].remove(body)
    state.mixed = renamed(state.mixed, body, identity)


def renamed(value, old: str, new: str, but: str = ""):
    """Return a deep copy of plain data with one id in place of another; the field `but` is left alone."""
    if isinstance(value, dict):
        return {key: value[key] if but and key == but else renamed(value[key], old, new) for key in value}
    if isinstance(value, list):
        return [renamed(item, old, new) for item in value]
    return new if value == old else value


def note(event, unit, what: str) -> None:
    """Put a mix-up, or its end, on the trail of a unit."""
    unit["moves"].append(
        {
            "event": envelope.identity(event),
            "what": what,
            "position": None,
            "job": event["job"],
            "how": event["data"].get("how", "tapped"),
            "at": event["at"],
            "actor": event["actor"],
        }
    )
