"""Folding of custody: each unit at exactly one place, each position with at most one unit.

A fact that contradicts the place on record is not dropped and not believed: the unit gets a list of
claims and is in dispute until a fresh scan (`unit_seen`) settles where it is.
"""

from ..log import envelope
from ..state.state import MIXED
from ..state.state import new_unit
from . import fold_labels
from . import fold_mixed
from .fields import HOW
from .fields import Place
from .fields import Reason
from .fields import Text
from .kind import BOTH
from .kind import KEPT
from .kind import MAY_HAVE_JOB
from .kind import RECORDED
from .kind import Kind
from .naming import LabelCode
from .naming import LabelCodeOrNone
from .naming import NewUnit
from .naming import Position
from .naming import Unit
from .naming import Units


def _unit_added(state, event, job):
    data = event["data"]
    if data["unit"] in state.units:
        contradict(state, event, job, data["unit"], claim_of(data["place"], None, None))
        return
    unit = new_unit(data["unit"], data["part"], data["serial"])
    state.add_unit(unit)
    put(state, event, job, unit, data["place"], None, data["how"])
    if data["code"]:
        _label(state, event, job, unit, data["code"])


def _unit_labelled(state, event, job):
    unit = _known(state, event, job)
    _label(state, event, job, unit, event["data"]["code"])
    _note_move(event, unit, "labelled", event["data"]["how"])


def _label_voided(state, event, job):
    unit = _known(state, event, job)
    fold_labels.void(state, unit, event["data"]["code"])
    _note_move(event, unit, "label void", "tapped")


def _part_noted(state, event, job):
    unit = _known(state, event, job)
    unit["part"] = event["data"]["part"] or unit["part"]
    unit["serial"] = event["data"]["serial"] or unit["serial"]


def _unit_pulled(state, event, job):
    data = event["data"]
    unit = _known(state, event, job)
    here = claim_of("out", None, None)
    if disputed(unit) or not _sits(unit, job["vehicle"], data["position"]):
        contradict(state, event, job, unit["id"], here)
        return
    unit["pulled_from"] = data["position"]
    put(state, event, job, unit, "out", None, data["how"])


def _unit_fitted(state, event, job):
    data = event["data"]
    unit = _known(state, event, job)
    claim = claim_of("fitted", job["vehicle"], data["position"])
    occupied = state.vehicles[job["vehicle"]]["holds"].get(data["position"])
    if disputed(unit) or unit["place"] != "out" or occupied:
        contradict(state, event, job, unit["id"], claim)
        return
    put(state, event, job, unit, "fitted", data["position"], data["how"])
    job["walk"] = None  # what the walk-behind check heard was another sensor
    if data["override"]:
        unit["moves"][-1]["override"] = data["override"]


def _unit_moved(state, event, job):
    data = event["data"]
    unit = _known(state, event, job)
    if disputed(unit) or unit["place"] == "fitted":
        contradict(state, event, job, unit["id"], claim_of(data["place"], None, None))
        return
    put(state, event, job, unit, data["place"], None, data["how"])


def _unit_seen(state, event, job):
    """A fresh scan wins over every claim; whoever was recorded at that position is now in doubt."""
    data = event["data"]
    unit = _known(state, event, job)
    if unit["place"] == MIXED:
        if not fold_mixed.settle(state, event, unit["id"]):
            vehicle = job["vehicle"] if data["place"] == "fitted" else None
            position = data["position"] if vehicle else None
            contradict(state, event, job, unit["id"], claim_of(data["place"], vehicle, position))
            return
        job = state.jobs.get(event["job"])
    position = data["position"] if data["place"] == "fitted" else None
    if position and job:
        other = state.vehicles[job["vehicle"]]["holds"].get(position)
        if other and other != unit["id"]:
            contradict(state, event, job, other, claim_of("fitted", job["vehicle"], position))
            state.vehicles[job["vehicle"]]["holds"][position] = None
            state.place_unit(state.units[other], "out", None, None, job["id"])
    state.settle_unit(unit, [])
    for conflict in state.conflicts_of(unit["id"]):
        if conflict["about"] != "return":
            conflict["open"] = False
    put(state, event, job, unit, data["place"], position, data["how"])


def _units_mixed(state, event, job):
    """Only what is in hand can be mixed up; what is on record elsewhere is in dispute."""
    hand = []
    for identity in event["data"]["units"]:
        if identity in hand:
            continue
        if identity not in state.units:
            state.add_unit(new_unit(identity))
        unit = state.units[identity]
        if disputed(unit) or unit["place"] not in ("out", "stock"):
            contradict(state, event, job, identity, claim_of("out", None, None))
        else:
            hand.append(identity)
    if len(hand) > 1:
        fold_mixed.mix(state, event, job, hand)


def _known(state, event, job):
    """Return the unit an event names; one that nobody introduced is kept, with a flag."""
    identity = event["data"]["unit"]
    if identity not in state.units:
        state.add_unit(new_unit(identity))
        contradict(state, event, job, identity, claim_of("out", None, None))
    return state.units[identity]


def put(state, event, job, unit, place, position, how):
    """Take the unit from where it was and put it where the fact says."""
    if unit["place"] == "fitted" and unit["vehicle"]:
        holds = state.vehicles[unit["vehicle"]]["holds"]
        if holds.get(unit["position"]) == unit["id"]:
            holds[unit["position"]] = None
    vehicle = job["vehicle"] if job and place == "fitted" else None
    state.place_unit(
        unit, place, vehicle, position, job["id"] if job and place in ("fitted", "out") else None
    )
    if vehicle:
        state.vehicles[vehicle]["holds"][position] = unit["id"]
    if job:
        state.join_unit(unit, job["id"])
    _note_move(event, unit, place, how)


def _note_move(event, unit, what, how):
    unit["moves"].append(
        {
            "event": envelope.identity(event),
            "what": what,
            "position": event["data"].get("position"),
            "code": event["data"].get("code", ""),
            "note": event["data"].get("reason", event["data"].get("note", "")),
            "job": event["job"],
            "how": how,
            "at": event["at"],
            "actor": event["actor"],
        }
    )


def _label(state, event, job, unit, code):
    """Bind a code to a unit, and flag what needs a person to look at it."""
    about = fold_labels.put_on(state, unit, code)
    if about:
        flag(state, event, job, unit["id"], about, code)


def disputed(unit):
    """Tell whether two places are on record of a unit."""
    return len(unit["claims"]) > 0


def _sits(unit, vehicle, position):
    return unit["place"] == "fitted" and unit["vehicle"] == vehicle and unit["position"] == position


def claim_of(place, vehicle, position):
    """Return a place that someone says a unit is at."""
    return {"place": place, "vehicle": vehicle, "position": position}


def contradict(state, event, job, identity, claim):
    """Put both claims on record: what the state said, and what this fact says."""
    unit = state.units[identity]
    if not unit["claims"]:
        state.claim_unit(unit, claim_of(unit["place"], unit["vehicle"], unit["position"]))
    state.claim_unit(unit, claim)
    if job:
        state.join_unit(unit, job["id"])
    _note_move(event, unit, "disputed", event["data"].get("how", "tapped"))
    flag(state, event, job, identity, "place", None)


def flag(state, event, job, identity, about, code):
    """Put a conflict on record, to be settled."""
    state.add_conflict(
        {
            "event": envelope.identity(event),
            "job": job["id"] if job else None,
            "unit": identity,
            "about": about,
            "code": code,
            "open": True,
        }
    )


_PLACES = ("out", "stock", "counter", "customer", "scrapped")


def _names_where_it_was_seen(data, job):
    """Return what is missing to know at which position of which vehicle a unit was seen fitted, or None."""
    if data["place"] != "fitted":
        return None
    if job is None:
        return "It names no job, whose vehicle the sensor would be fitted on."
    return None if data["position"] else "It names no position."


def _tell_unit_added(names, data):
    name = names.code(data["code"]) or "A sensor"
    return "{} added{}.".format(name, ", part " + data["part"] if data["part"] else "")


def _tell_unit_fitted(names, data):
    said = "{} fitted at {} ({}).".format(
        names.unit(data["unit"]), names.position(data["position"]), HOW.told(data["how"], names)
    )
    if data["override"]:
        said += " Another part number, because: {}".format(data["override"])
    return said


def _tell_unit_seen(names, data):
    fitted = data["place"] == "fitted"
    where = "at " + names.position(data["position"]) if fitted else names.place(data["place"])
    return "{} seen {}.".format(names.unit(data["unit"]), where)


def _tell_units_mixed(names, data):
    said = "{} got mixed up: which is which is not known.".format(names.units(data["units"]))
    return said + (" " + data["note"] if data["note"] else "")


KINDS = (
    Kind(
        "unit_added",
        "A unit that was not on a vehicle before.",
        NewUnit("unit"),
        Text("part"),
        Text("serial"),
        LabelCodeOrNone("code"),
        HOW,
        Place("place", ("out", "stock")),
        does=_unit_added,
        tells=_tell_unit_added,
        job=MAY_HAVE_JOB,
    ),
    Kind(
        "unit_labelled",
        "A label was put on a unit.",
        Unit("unit"),
        LabelCode("code"),
        HOW,
        does=_unit_labelled,
        tells="Label {code} put on ({how}).",
        job=MAY_HAVE_JOB,
        after_closing=KEPT,
    ),
    Kind(
        "label_voided",
        "A label is torn or lost.",
        Unit("unit"),
        LabelCode("code"),
        Reason("reason"),
        does=_label_voided,
        tells="Label {code} void: {reason}",
        job=MAY_HAVE_JOB,
        after_closing=KEPT,
    ),
    Kind(
        "part_noted",
        "The part number or serial was read off a unit.",
        Unit("unit"),
        Text("part"),
        Text("serial"),
        does=_part_noted,
        tells=lambda names, data: (
            "{}: part {} {}".format(names.unit(data["unit"]), data["part"], data["serial"]).strip() + "."
        ),
        job=MAY_HAVE_JOB,
        after_closing=KEPT,
    ),
    Kind(
        "unit_pulled",
        "A unit left its position.",
        Unit("unit"),
        Position("position"),
        HOW,
        does=_unit_pulled,
        tells="{unit} pulled from {position} ({how}).",
    ),
    Kind(
        "unit_fitted",
        "A unit was put into a position.",
        Unit("unit"),
        Position("position"),
        HOW,
        Text("override"),
        does=_unit_fitted,
        tells=_tell_unit_fitted,
    ),
    Kind(
        "unit_moved",
        "A unit went to another place.",
        Unit("unit"),
        Place("place", _PLACES),
        HOW,
        Text("note"),
        does=_unit_moved,
        tells="{unit} is now {place}.",
        job=MAY_HAVE_JOB,
        role=BOTH,
    ),
    Kind(
        "unit_seen",
        "A fresh scan says where a unit is; it settles a dispute.",
        Unit("unit"),
        Place("place", ("fitted",) + _PLACES),
        Position("position", or_none=True),
        HOW,
        does=_unit_seen,
        tells=_tell_unit_seen,
        fits=_names_where_it_was_seen,
        job=MAY_HAVE_JOB,
        role=BOTH,
        after_closing=RECORDED,
    ),
    Kind(
        "units_mixed",
        "Units got mixed up; which is which is not known.",
        Units("units"),
        Text("note"),
        does=_units_mixed,
        tells=_tell_units_mixed,
    ),
)
