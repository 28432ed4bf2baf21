"""What belongs to a job as a whole: opening, cautions, looks, pictures, what stays, closing, taking back."""

from ..parts import sorts
from ..state.state import EMPTY
from ..state.state import new_job
from ..state.state import new_unit
from ..state.state import new_vehicle
from .conflicts import conflict
from .fields import Choice
from .fields import Count
from .fields import Name
from .fields import NewPositions
from .fields import Photo
from .fields import Reason
from .fields import Text
from .fields import Vehicle
from .kind import BOTH
from .kind import KEPT
from .kind import MAY_HAVE_JOB
from .kind import OPENS_JOB
from .kind import RECORDED
from .kind import Kind
from .naming import Position
from .naming import Positions
from .naming import Unit
from .several import Findings


def first_units(data: dict) -> list[str]:
    """Return the units that sit on a vehicle when its job is opened; no event adds them."""
    vehicle, positions = data.get("vehicle"), data.get("positions")
    if not isinstance(vehicle, dict) or not isinstance(positions, list):
        return []
    return [
        "{}.{}".format(vehicle.get("id"), position.get("id"))
        for position in positions
        if isinstance(position, dict)
    ]


def _job_opened(state, event, job) -> None:
    if job is not None:  # the same job opened twice: the first opening stands
        conflict(state, event, None, "opened twice")
        return
    data = event["data"]
    vehicle = state.vehicles.get(data["vehicle"]["id"])
    if vehicle is None:
        vehicle = new_vehicle(data["vehicle"])
        state.vehicles[vehicle["id"]] = vehicle
    vehicle["name"] = data["vehicle"]["name"]
    vehicle["vin"] = data["vehicle"]["vin"] or vehicle["vin"]
    job = new_job(event["job"], data, event["at"])
    state.jobs[job["id"]] = job
    vehicle["jobs"].append(job["id"])
    for position in data["positions"]:
        place = position["id"]
        if place not in vehicle["holds"]:
            unit = new_unit("{}.{}".format(vehicle["id"], place), data["part"])
            unit["place"] = "fitted"
            unit["vehicle"] = vehicle["id"]
            unit["position"] = place
            state.add_unit(unit)
            vehicle["holds"][place] = unit["id"]
            vehicle["home"][place] = unit["id"]
        held = vehicle["holds"][place]
        if held:
            unit = state.units[held]
            state.join_unit(unit, job["id"])
            state.place_unit(unit, unit["place"], unit["vehicle"], unit["position"], job["id"])
            job["at_opening"].append(held)


def _caution_acknowledged(state, event, job) -> None:
    job["cautions"][event["data"]["caution"]] = event["actor"]


def _lamp_checked(state, event, job) -> None:
    data = event["data"]
    job["lamps"][data["when"]] = {"result": data["result"], "note": data["note"]}


def _looked(state, event, job) -> None:
    job["looked"] = {"positions": event["data"]["positions"], "note": event["data"]["note"]}


def _photo_taken(state, event, job) -> None:
    data = event["data"]
    job["photos"].append(
        {
            "sha256": data["sha256"],
            "shows": data["shows"],
            "position": data["position"],
            "unit": data["unit"],
            "sat": state.occupant(job["vehicle"], data["position"]) or "",
            "at": event["at"],
        }
    )


def _walk_checked(state, event, job) -> None:
    data = event["data"]
    job["walk"] = {"positions": data["positions"], "missed": data["missed"]}


def _left_deliberately(state, event, job) -> None:
    job["left"][event["data"]["position"]] = event["data"]["unit"]


def _job_closed(state, event, job) -> None:
    out = state.units_out(job["id"])
    if out or state.disputed(job["id"]):
        conflict(state, event, job["id"], "closed with a sensor not accounted for")
    vehicle = state.vehicles[job["vehicle"]]
    for position in job["positions"]:
        unit = vehicle["holds"].get(position["id"])
        if unit:  # what stays here belongs here from now on, so the next job does not ask again
            vehicle["home"][position["id"]] = unit
    job["reopened"] = None
    job["closed"] = {"at": event["at"], "actor": event["actor"], "note": event["data"]["note"]}


_LAMP_RESULTS = {
    "as_it_should": "as it should be",
    "not_as_it_should": "not as it should be",
    "not_sure": "not sure",
}
_FOUND = dict(sorts.findings())


def _tell_looked(names, data) -> str:
    seen = [
        "{} at {}".format(
            names.sort.finding(item["found"]) or _FOUND[item["found"]], names.position(item["position"])
        )
        for item in data["positions"]
        if item["found"] != "nothing"
    ]
    return "Looked: {}.".format(names.listed(seen) if seen else "nothing to see")


def _tell_photo_taken(names, data) -> str:
    if data["position"]:
        return "Picture of {}.".format(names.position(data["position"]))
    return "Picture of the {}.".format(names.sort.unit if data["shows"] == "unit" else data["shows"])


def _tell_walk_checked(names, data) -> str:
    walk = names.sort.walk
    heard = walk.missed.format(names.positions(data["missed"])) if data["missed"] else walk.all_well
    return "{}: {}.".format(walk.name, heard)


def _tell_left_deliberately(names, data) -> str:
    place = names.position(data["position"])
    if data["unit"] == EMPTY:
        return "{} stays empty: {}.".format(place, data["reason"])
    return "{} stays at {}: {}.".format(names.unit(data["unit"]), place, data["reason"])


def _corrected(state, event, job) -> None:
    """Do nothing: a correction has done its work before the fold began."""


KINDS = (
    Kind(
        "job_opened",
        "A job begins on a vehicle.",
        Vehicle("vehicle"),
        Text("complaint"),
        Text("layout"),
        Text("part"),
        NewPositions("positions"),
        does=_job_opened,
        tells=lambda names, data: "Job opened on {}: {}".format(
            data["vehicle"]["name"], data["complaint"] or "no complaint"
        ),
        job=OPENS_JOB,
        after_closing=KEPT,
    ),
    Kind(
        "caution_acknowledged",
        "A caution was read.",
        Name("caution"),
        does=_caution_acknowledged,
        tells="Caution read: {caution}.",
    ),
    Kind(
        "lamp_checked",
        "What the lamps showed at key-on or in reverse.",
        Choice("when", ("key_on", "reverse"), {"key_on": "key-on"}),
        Choice("result", ("as_it_should", "not_as_it_should", "not_sure"), _LAMP_RESULTS),
        Text("note"),
        does=_lamp_checked,
        tells="Lamp at {when}: {result}.",
    ),
    Kind(
        "looked",
        "What could be seen from outside.",
        Findings("positions"),
        Text("note"),
        does=_looked,
        tells=_tell_looked,
    ),
    Kind(
        "photo_taken",
        "A picture, named by its digest.",
        Photo("sha256"),
        Text("mime"),
        Count("bytes"),
        Count("width"),
        Count("height"),
        Choice("shows", ("position", "screen", "unit", "work")),
        Position("position", or_none=True),
        Unit("unit", or_none=True),
        does=_photo_taken,
        tells=_tell_photo_taken,
        role=BOTH,
        after_closing=RECORDED,
    ),
    Kind(
        "walk_checked",
        "The walk-behind check with a test pole.",
        Positions("positions", kept=True),
        Positions("missed", kept=True),
        does=_walk_checked,
        tells=_tell_walk_checked,
    ),
    Kind(
        "left_deliberately",
        "A good unit stays where the exchange put it.",
        Unit("unit", besides=EMPTY),
        Position("position"),
        Reason("reason"),
        does=_left_deliberately,
        tells=_tell_left_deliberately,
    ),
    Kind(
        "corrected",
        "An earlier event was a mistake.",
        Name("device"),
        Count("seq"),
        Reason("reason"),
        does=_corrected,
        tells="Taken back entry {seq}: {reason}",
        job=MAY_HAVE_JOB,
        after_closing=RECORDED,
    ),
    Kind(
        "job_closed",
        "The job is done.",
        Text("note"),
        does=_job_closed,
        tells="Job closed.",
        after_closing=KEPT,
    ),
)
