"""What belongs to a job as a whole: opening, what stays, closing."""

from ..messages import message
from ..messages import sentences
from ..state.kept_facts import new_job
from ..state.kept_facts import new_unit
from ..state.kept_facts import new_vehicle
from ..state.state import EMPTY
from .conflicts import conflict
from .fields import Choice
from .fields import Names
from .fields import NewPositions
from .fields import Reason
from .fields import Text
from .fields import Vehicle
from .kind import KEPT
from .kind import OPENS_JOB
from .kind import Kind
from .naming import Position
from .naming import Unit

# Why a job ends without a repair.
UNREPAIRED = ("customer", "no_part", "elsewhere", "not_worth", "not_found", "other")


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
    if data["vehicle"].get("plate"):
        vehicle["plate"] = data["vehicle"]["plate"]
    if data["vehicle"].get("model"):
        vehicle["model"] = data["vehicle"]["model"]
    job = new_job(event["job"], data, event["at"])
    state.jobs[job["id"]] = job
    vehicle["jobs"].append(job["id"])
    for position in data["positions"]:
        place = position["id"]
        if place not in vehicle["holds"]:
            unit = new_unit("{}.{}".format(vehicle["id"], place), position.get("part") or data["part"])
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
    job.pop("paused", None)
    job["closed"] = {"at": event["at"], "actor": event["actor"], "note": event["data"]["note"]}
    if event["data"].get("why"):
        job["closed"]["why"] = event["data"]["why"]


def _tell_job_opened(names, data) -> dict:
    vehicle = data["vehicle"]["name"]
    if not data["complaint"]:
        return message("facts-job-opened-without-complaint", vehicle=vehicle)
    return message("facts-job-opened", vehicle=vehicle, complaint=data["complaint"])


def _tell_left_deliberately(names, data) -> dict:
    place = names.position(data["position"])
    if data["unit"] == EMPTY:
        return message("facts-left-empty", position=place, reason=names.noted(data["reason"]))
    unit = names.unit(data["unit"])
    return message("facts-left-fitted", unit=unit, position=place, reason=names.noted(data["reason"]))


def _tell_job_closed(names, data) -> dict:
    if "why" not in data:
        return message("facts-job-closed")
    return sentences([message("facts-job-closed-unrepaired", why=data["why"]), data["note"]])


KINDS = (
    Kind(
        "job_opened",
        Vehicle("vehicle"),
        Text("complaint"),
        Text("layout"),
        Text("part"),
        NewPositions("positions"),
        does=_job_opened,
        tells=_tell_job_opened,
        job=OPENS_JOB,
        after_closing=KEPT,
    ),
    Kind(
        "left_deliberately",
        Unit("unit", besides=EMPTY),
        Position("position"),
        Reason("reason"),
        does=_left_deliberately,
        tells=_tell_left_deliberately,
    ),
    Kind(
        "job_closed",
        Text("note"),
        Choice("why", UNREPAIRED, later=True),
        # The last entry of each phone on the job that this one knew of.
        Names("knows", later=True),
        does=_job_closed,
        tells=_tell_job_closed,
        after_closing=KEPT,
    ),
)
