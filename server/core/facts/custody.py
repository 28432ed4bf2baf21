"""Where units go: pulled, fitted, taken elsewhere, seen, mixed up.

A fact that contradicts the place on record is not dropped and not believed: the unit gets a list of
claims and is in dispute until a fresh scan (`unit_seen`) settles where it is.
"""

from ..messages import message
from ..messages import sentences
from ..state import contradictions
from ..state import stories
from ..state.kept_facts import is_hanging
from ..state.kept_facts import new_unit
from ..state.state import MIXED
from . import mixups
from . import settling
from .fields import HOW
from .fields import Flag
from .fields import Names
from .fields import Place
from .fields import Text
from .kind import BOTH
from .kind import MAY_HAVE_JOB
from .kind import RECORDED
from .kind import Kind
from .naming import Position
from .naming import Unit
from .naming import Units
from .places import claim_of
from .places import contradict
from .places import disputed
from .places import known
from .places import put


def _unit_pulled(state, event, job) -> None:
    data = event["data"]
    unit = known(state, event, job)
    if disputed(unit) or not _sits(unit, job["vehicle"], data["position"]):
        contradict(state, event, job, unit["id"], claim_of("out", None, None))
        return
    unit["pulled_from"] = data["position"]
    put(state, event, job, unit, "out", None, data["how"])


def _unit_fitted(state, event, job) -> None:
    data = event["data"]
    unit = known(state, event, job)
    occupied = state.vehicles[job["vehicle"]]["holds"].get(data["position"])
    if disputed(unit) or unit["place"] != "out" or occupied:
        contradict(state, event, job, unit["id"], claim_of("fitted", job["vehicle"], data["position"]))
        return
    put(state, event, job, unit, "fitted", data["position"], data["how"])
    if data.get("hanging"):
        unit["moves"][-1]["hanging"] = True
    job["walk"] = None  # what the walk-behind check heard was another sensor
    if data["override"]:
        unit["moves"][-1]["override"] = data["override"]


def _unit_moved(state, event, job) -> None:
    data = event["data"]
    unit = known(state, event, job)
    if disputed(unit) or unit["place"] == "fitted" or _went_elsewhere(unit, event):
        contradict(state, event, job, unit["id"], claim_of(data["place"], None, None))
        return
    alone = data.get("alone") and job is not None and state.units_out(job["id"]) == [unit["id"]]
    put(state, event, job, unit, data["place"], None, data["how"])
    if alone:
        unit["moves"][-1]["alone"] = True


def _went_elsewhere(unit, event) -> bool:
    """Tell whether other phones took a unit from where this one says that it was, and never to this place.

    Who knew of its last change of custody says so by `was`, or made that change. Two hands that have it are
    two places where they are on two jobs.
    """
    was, place = event["data"].get("was"), event["data"]["place"]
    if was is None or unit["place"] == was:
        return False
    since = stories.moves_since(unit["moves"], was)
    for move in since:
        if stories.device_of(move["event"]) == event["device"]:
            return False
        if stories.leads_to(move) == place and (place != "out" or move["job"] == event["job"]):
            return False
    return bool(since)


def _unit_seen(state, event, job) -> None:
    """A fresh scan wins over every claim; whoever was recorded at that position is now in doubt.

    With `settles` it says which stories are true: then what was recorded there was not, and is in the hand.
    """
    data = event["data"]
    unit = known(state, event, job)
    settles = data.get("settles")
    if unit["place"] == MIXED:
        if not mixups.settle(state, event, unit["id"]):
            vehicle = job["vehicle"] if data["place"] == "fitted" else None
            position = data["position"] if vehicle else None
            contradict(state, event, job, unit["id"], claim_of(data["place"], vehicle, position))
            return
        job = state.jobs.get(event["job"])
    position = data["position"] if data["place"] == "fitted" else None
    told = _told(state, job, unit["id"]) if settles is not None else []
    if position and job:
        other = state.vehicles[job["vehicle"]]["holds"].get(position)
        if settles is not None:
            if other and other != unit["id"]:
                settling.displace(state, event, job, position)
            settling.disprove(state, event, job, position, unit["id"])
        elif other and other != unit["id"]:
            contradict(state, event, job, other, claim_of("fitted", job["vehicle"], position))
            state.vehicles[job["vehicle"]]["holds"][position] = None
            state.place_unit(state.units[other], "out", None, None, job["id"])
    left = unit["position"] if job and unit["vehicle"] == job["vehicle"] else None
    hung = position and unit["position"] == position and is_hanging(unit)
    state.settle_unit(unit, [])
    for conflict in state.conflicts_of(unit["id"]):
        if conflict["about"] != "return":
            conflict["open"] = False
    put(state, event, job, unit, data["place"], position, data["how"])
    if hung:
        unit["moves"][-1]["hanging"] = True  # a look at its label pushes nothing home
    if settles is not None and job:
        settling.right_tests(state, job, unit["id"], told, settles)
        if left and left != position:
            settling.believe(state, event, job, left, told)


def _told(state, job, identity: str) -> list:
    """Return the stories that a scan of a unit settles: about it, and about what was put in its place."""
    told = stories.told(state, identity)
    for contested in contradictions.places(state, job) if job else []:
        if identity in contested.units:
            told = told + [each for each in contested.stories if each not in told]
    return told


def _units_mixed(state, event, job) -> None:
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
        mixups.mix(state, event, job, hand)


def _sits(unit, vehicle, position) -> bool:
    return unit["place"] == "fitted" and unit["vehicle"] == vehicle and unit["position"] == position


_PLACES = ("out", "stock", "counter", "customer", "scrapped")


def _names_where_it_was_seen(data, job) -> dict | None:
    """Return what is missing to know at which position of which vehicle a unit was seen fitted, or None."""
    if data["place"] != "fitted":
        return None
    if job is None:
        return message("refusals-seen-without-job")
    return None if data["position"] else message("refusals-seen-without-position")


def _tell_unit_fitted(names, data) -> dict:
    said = message(
        "facts-unit-fitted",
        unit=names.unit(data["unit"]),
        position=names.position(data["position"]),
        how=HOW.told(data["how"], names),
    )
    told = [said]
    if data.get("hanging"):
        told.append(message("facts-unit-fitted-hanging"))
    if data["override"]:
        told.append(message("facts-unit-fitted-other-part", reason=data["override"]))
    return sentences(told) if len(told) > 1 else said


def _tell_unit_seen(names, data) -> dict:
    unit = names.unit(data["unit"])
    if data["place"] == "fitted":
        return message("facts-unit-seen-fitted", unit=unit, position=names.position(data["position"]))
    return message("facts-unit-seen", unit=unit, place=names.place(data["place"]))


def _tell_units_mixed(names, data) -> dict:
    return sentences([message("facts-units-mixed", units=names.units(data["units"])), data["note"]])


KINDS = (
    Kind(
        "unit_pulled",
        Unit("unit"),
        Position("position"),
        HOW,
        does=_unit_pulled,
        tells=("facts-unit-pulled", "unit", "position", "how"),
    ),
    Kind(
        "unit_fitted",
        Unit("unit"),
        Position("position"),
        HOW,
        Text("override"),
        # Plugged in with its lock closed, not pushed home: enough for a self-test, not for a closed job.
        Flag("hanging", later=True),
        does=_unit_fitted,
        tells=_tell_unit_fitted,
    ),
    Kind(
        "unit_moved",
        Unit("unit"),
        Place("place", _PLACES),
        HOW,
        Text("note"),
        # Nothing else was in hand on the job, so that it could not be taken for another.
        Flag("alone", later=True),
        # Where it was for whoever moved it: off line nobody knows where another phone put it meanwhile.
        Place("was", _PLACES, later=True),
        does=_unit_moved,
        tells=("facts-unit-moved", "unit", "place"),
        job=MAY_HAVE_JOB,
        role=BOTH,
    ),
    Kind(
        "unit_seen",
        Unit("unit"),
        Place("place", ("fitted",) + _PLACES),
        Position("position", or_none=True),
        HOW,
        # The entries that told the truth about it, "-" for what was on record before any; since stories
        # that contradict are shown side by side.
        Names("settles", later=True),
        does=_unit_seen,
        tells=_tell_unit_seen,
        fits=_names_where_it_was_seen,
        job=MAY_HAVE_JOB,
        role=BOTH,
        after_closing=RECORDED,
    ),
    Kind(
        "units_mixed",
        Units("units"),
        Text("note"),
        does=_units_mixed,
        tells=_tell_units_mixed,
    ),
)
