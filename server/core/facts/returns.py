"""Folding of the parts counter: a unit in the clerk's hand, and what the clerk decided.

Each unit keeps its returns in order. A return is open until it is accepted or refused; a unit that is
received while one is open belongs to that one. A decision that was made not knowing of an earlier one,
as at two counters without a network, stays on record beside it: the return is `twice`, a conflict open.
"""

from ..log import envelope
from ..messages import message
from ..messages import sentences
from ..state.kept_facts import new_unit
from .conflicts import flag
from .conflicts import remark
from .fields import HOW
from .fields import Choice
from .fields import Digest
from .fields import Name
from .fields import Names
from .fields import Text
from .kind import COUNTER
from .kind import MAY_HAVE_JOB
from .kind import RECORDED
from .kind import Kind
from .naming import LabelCodeOrNone
from .naming import NewUnit
from .naming import Unit
from .places import claim_of
from .places import contradict
from .places import disputed
from .places import put

_HANDED_OVER = ("out", "stock", "customer", "counter")  # places that a unit comes to the counter from


def open_return(unit: dict) -> dict | None:
    """Return the return of a unit that is not accepted or refused yet, or None."""
    if unit["returns"] and not is_final(unit["returns"][-1]):
        return unit["returns"][-1]
    return None


def is_final(entry: dict) -> bool:
    """Tell whether a return was accepted or refused."""
    return entry["decision"] is not None and entry["decision"]["decision"] != "hold"


def _return_received(state, event, job) -> None:
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
    state.note_serials(unit)
    if disputed(unit) or unit["place"] not in _HANDED_OVER:
        contradict(state, event, job, unit["id"], claim_of("counter", None, None))
    else:
        put(state, event, job, unit, "counter", None, data["how"])


def _return_decided(state, event, job) -> None:
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
    if made["signed"] != made["actor"]:  # no phone records that any more, and none ever should have
        remark(state, event, job, unit["id"], "signed")
    if not is_final(entry):
        entry["decision"] = made
    entry["decisions"].append(made)


def _record_received(state, event, job) -> None:
    data = event["data"]
    unit = state.units.get(data["unit"])
    if unit is None:
        flag(state, event, job, None, "return", None)
        return
    fields = ("maker", "fingerprint", "file", "passes", "holds", "fails")
    unit["evidence"] = {field: data[field] for field in fields}
    # As the record has them: the part in hand is held against these.
    unit["part"] = data["part"] or unit["part"]
    unit["serial"] = data["serial"] or unit["serial"]
    state.note_serials(unit)


_DECISIONS = ("accept", "hold", "refuse")


def _tell_return_received(names, data) -> dict:
    said = [message("facts-return-received", unit=names.unit(data["unit"]), how=HOW.told(data["how"], names))]
    if data["part"] or data["serial"]:
        numbers = [text for text in (data["part"], data["serial"]) if text]
        said.append(message("facts-return-numbers", numbers=" ".join(numbers)))
    return sentences(said)


def _tell_return_decided(names, data) -> dict:
    said = [
        message(
            "facts-return-decided",
            unit=names.unit(data["unit"]),
            decision=data["decision"],
            signed=data["signed"],
        )
    ]
    if data["overrule"]:
        said.append(message("facts-return-overruled", reason=data["overrule"]))
    return sentences(said)


KINDS = (
    Kind(
        "return_received",
        NewUnit("unit"),
        HOW,
        LabelCodeOrNone("code"),
        Text("part"),
        Text("serial"),
        # The part in hand beside its pictures, by eye; "" is not compared.
        Choice("compared", ("", "same", "other")),
        Text("note"),
        does=_return_received,
        tells=_tell_return_received,
        job=MAY_HAVE_JOB,
        role=COUNTER,
        after_closing=RECORDED,
    ),
    Kind(
        "record_received",
        Unit("unit"),
        Name("maker"),
        Name("fingerprint"),
        Digest("file"),
        Text("part"),
        Text("serial"),
        # What the record passes, leaves open and fails of what a counter looks at.
        Names("passes"),
        Names("holds"),
        Names("fails"),
        does=_record_received,
        tells=("facts-record-received", "unit", "maker"),
        job=MAY_HAVE_JOB,
        role=COUNTER,
        after_closing=RECORDED,
    ),
    Kind(
        "return_decided",
        Unit("unit"),
        Choice("decision", _DECISIONS),
        Choice("proposed", _DECISIONS),
        Names("reasons"),
        Text("overrule"),
        Name("signed"),
        does=_return_decided,
        tells=_tell_return_decided,
        job=MAY_HAVE_JOB,
        role=COUNTER,
        after_closing=RECORDED,
    ),
)
