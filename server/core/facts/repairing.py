"""Folding of repairs of the wiring, and of readings that were bad before one and could not be taken again."""

from ..messages import message
from ..messages import sentences
from .evidence import PROVOKED
from .evidence import brought_out
from .fields import Choice
from .fields import Name
from .fields import Reason
from .fields import Text
from .kind import Kind
from .naming import Position
from .several import RepairedCause


def _circuit_repaired(state, event, job) -> None:
    data = event["data"]
    cause, pending = data["cause"], job["pending"]["repaired"]
    job["walk"] = None
    repair = {"cause": cause, "what": data["what"], "at": event["at"]}
    if "segment" in data:
        repair["segment"] = data["segment"]
    if cause in pending:
        repair["again"] = True  # before any test: to the reasoning it is one repair
    else:
        pending.append(cause)
    job["repairs"].append(repair)
    move = job["move"]
    if not move or cause != "circuit:" + move["position"]:
        return
    if "provoked" in move:
        job["move"] = None  # found; what was bad is read again first
    elif "round" in move:
        del move["round"]  # what is measured now is another circuit


def _reading_not_retaken(state, event, job) -> None:
    data = event["data"]
    left = {"position": data["position"], "check": data["check"], "reason": data["reason"]}
    if "provoked" in data:
        left["provoked"] = data["provoked"]
    left["readings_before"], left["repairs_before"] = len(job["meter"]), len(job["repairs"])
    # Jobs from before this kind was there have no such list.
    job["not_retaken"] = job.get("not_retaken", []) + [left]


def _tell_circuit_repaired(names, data) -> dict:
    cause, what = names.cause(data["cause"]), data["what"]
    if "segment" not in data:
        return message("facts-repaired", cause=cause)
    said = message("facts-repaired-where", cause=cause, where=names.sort.segment(data["segment"]))
    if what in ("", "repaired"):
        return said
    return sentences([said, message("facts-repaired-what", what=what)])


def _tell_reading_not_retaken(names, data) -> dict:
    check = names.sort.circuit_check(data["check"])
    return message(
        "facts-reading-not-retaken",
        check=check["title"] if check else data["check"],
        position=names.position(data["position"]),
        warm=brought_out(data.get("provoked", "")),
        reason=names.noted(data["reason"]),
    )


KINDS = (
    Kind(
        "circuit_repaired",
        RepairedCause("cause"),
        Text("what"),
        # Which segment of the circuit it was: one that the sort has, or in somebody's own words.
        Name("segment", later=True),
        does=_circuit_repaired,
        tells=_tell_circuit_repaired,
    ),
    Kind(
        "reading_not_retaken",
        Position("position"),
        Name("check"),
        Reason("reason"),
        # What it came after when it was bad.
        Choice("provoked", PROVOKED, later=True),
        does=_reading_not_retaken,
        tells=_tell_reading_not_retaken,
    ),
)
