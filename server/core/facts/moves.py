"""What was planned next: moves begun and given up, and the wrong unit that was stopped on the way."""

from ..log import envelope
from ..messages import message
from .amounts import Count
from .conflicts import conflict
from .evidence import PROVOKED
from .fields import HOW
from .fields import Choice
from .fields import Reason
from .fields import Text
from .kind import KEPT
from .kind import Kind
from .naming import LabelCodeOrNone
from .naming import Position
from .naming import Positions
from .naming import Unit
from .several import Fitted


def _move_started(state, event, job) -> None:
    data = event["data"]
    planned = [data["fitted"][position] for position in sorted(data["fitted"])]
    if [unit for unit in planned if unit not in state.units]:
        conflict(state, event, job["id"], "a move that names a sensor which is not on record")
        return
    job["move"] = {
        "move": data["move"],
        "fitted": data["fitted"],
        "position": data["position"],
        "positions": data.get("positions") or ([data["position"]] if data["position"] else []),
        "reason": data["reason"],
        "from_stock": [
            unit for unit in planned if unit in state.units and state.units[unit]["place"] == "stock"
        ],
        "before": dict(state.vehicles[job["vehicle"]]["holds"]),
        "event": envelope.identity(event),
    }
    if data.get("round"):
        job["move"]["round"] = data["round"]
    if "provoked" in data:
        job["move"]["provoked"] = data["provoked"]
    job["locked"] = {}
    job["fit_checks"] = {}


def _move_dropped(state, event, job) -> None:
    job["move"] = None


def _mixup_stopped(state, event, job) -> None:
    data = event["data"]
    job["stops"].append({"position": data["position"], "expected": data["expected"], "seen": data["seen"]})


_MOVES = ("retest", "clean", "exchange", "unplug", "meter", "replace", "home")
_EXCHANGES = ("exchange", "replace", "home")


def _tell_move_started(names, data) -> dict:
    if data["move"] in _EXCHANGES:
        return message(
            "facts-exchange-begun", move=data["move"], positions=names.positions(sorted(data["fitted"]))
        )
    if not data["position"]:
        return message("facts-move-begun", move=data["move"])
    positions = names.positions(data.get("positions") or [data["position"]])
    return message("facts-move-begun-at", move=data["move"], positions=positions)


KINDS = (
    Kind(
        "mixup_stopped",
        Position("position", or_none=True),
        Unit("expected", or_none=True),
        LabelCodeOrNone("seen"),
        HOW,
        does=_mixup_stopped,
        tells=("facts-mixup-stopped", "seen", "expected"),
        after_closing=KEPT,
    ),
    Kind(
        "move_started",
        Choice("move", _MOVES),
        Position("position", or_none=True),
        Fitted("fitted"),
        # What is to be cleaned before one test when it is more than `position`, which is the first of them.
        Positions("positions", later=True),
        # Of a move that measures a circuit whose checks were all made before: how often.
        Count("round", later=True),
        # Of one that measures while a fault that comes and goes is brought out: by what.
        Choice("provoked", PROVOKED, later=True),
        Text("reason"),
        does=_move_started,
        tells=_tell_move_started,
    ),
    Kind(
        "move_dropped",
        Reason("reason"),
        does=_move_dropped,
        tells=("facts-move-dropped", "reason"),
    ),
)
