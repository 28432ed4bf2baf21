"""Folding of the parts counter: a unit in the clerk's hand, and what the clerk decided.

Each unit keeps its returns in order. A return is open until it is accepted or refused; a unit that is
received while one is open belongs to that one. A decision that was made not knowing of an earlier one,
as at two counters without a network, stays on record beside it: the return is `twice`, a conflict open.
"""

from ..log import envelope
from ..state.state import new_unit
from .fold_custody import claim_of
from .fold_custody import contradict
from .fold_custody import disputed
from .fold_custody import flag
from .fold_custody import put

_HANDED_OVER = ("out", "stock", "customer", "counter")  # places that a unit comes to the counter from


def open_return(unit: dict) -> dict | None:
    """Return the return of a unit that is not accepted or refused yet, or None."""
    if unit["returns"] and not is_final(unit["returns"][-1]):
        return unit["returns"][-1]
    return None


def is_final(entry: dict) -> bool:
    """Tell whether a return was accepted or refused."""
    return entry["decision"] is not None and entry["decision"]["decision"] != "hold"


def _return_received(state, event, job):
    data = event["data"]
    unit = state.units.get(data["unit"])
    if unit is None:  # its label is on no record here: the counter is the first to see it
        unit = new_unit(data["unit"])
        state.add_unit(unit)
    entry = open_return(unit)
    if entry is None:
        entry = {
            "event": envelope.identity(event),
            "at": event["at"],
            "actor": event["actor"],
            "job": event["job"],
            "decision": None,
            "decisions": [],
            "twice": False,
        }
        unit["returns"].append(entry)
    entry["how"] = data["how"]
    for field in ("code", "part", "serial", "compared", "note"):
        entry[field] = data[field] or entry.get(field, "")
    if disputed(unit) or unit["place"] not in _HANDED_OVER:
        contradict(state, event, job, unit["id"], claim_of("counter", None, None))
    else:
        put(state, event, job, unit, "counter", None, data["how"])


def _return_decided(state, event, job):
    data = event["data"]
    unit = state.units.get(data["unit"])
    if unit is None or not unit["returns"]:
        flag(state, event, job, data["unit"] if unit else None, "return", None)
        return
    entry = unit["returns"][-1]
    made = {"event": envelope.identity(event), "at": event["at"], "actor": event["actor"]}
    for field in ("decision", "proposed", "reasons", "overrule", "signed"):
        made[field] = data[field]
    earlier = [each for each in unit["returns"] if is_final(each)]
    if earlier and "before" not in data["reasons"]:
        entry["twice"] = True
        flag(state, event, job, unit["id"], "return", None)
    if not is_final(entry):
        entry["decision"] = made
    entry["decisions"].append(made)


HANDLERS = {"return_received": _return_received, "return_decided": _return_decided}
