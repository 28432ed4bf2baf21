"""Folding of what belongs to a job as a whole: opening, cautions, looks, pictures, moves, closing."""

from ..log import envelope
from ..state.state import new_job
from ..state.state import new_unit
from ..state.state import new_vehicle


def _job_opened(state, event, job):
    if job is not None:  # the same job opened twice: the first opening stands
        _conflict(state, event, None, "opened twice")
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
            state.join_unit(state.units[held], job["id"])
            unit = state.units[held]
            state.place_unit(unit, unit["place"], unit["vehicle"], unit["position"], job["id"])
            job["at_opening"].append(held)


def _caution_acknowledged(state, event, job):
    job["cautions"][event["data"]["caution"]] = event["actor"]


def _lamp_checked(state, event, job):
    data = event["data"]
    job["lamps"][data["when"]] = {"result": data["result"], "note": data["note"]}


def _looked(state, event, job):
    job["looked"] = {"positions": event["data"]["positions"], "note": event["data"]["note"]}


def _photo_taken(state, event, job):
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


def _move_started(state, event, job):
    data = event["data"]
    planned = [data["fitted"][position] for position in sorted(data["fitted"])]
    if [unit for unit in planned if unit not in state.units]:
        _conflict(state, event, job["id"], "a move that names a sensor which is not on record")
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
    job["locked"] = {}
    job["fit_checks"] = {}


def _move_dropped(state, event, job):
    job["move"] = None


def _mixup_stopped(state, event, job):
    data = event["data"]
    job["stops"].append({"position": data["position"], "expected": data["expected"], "seen": data["seen"]})


def _comes_and_goes_set(state, event, job):
    job["comes_and_goes"] = event["data"]["value"]


def _rates_set(state, event, job):
    job["rates"] = event["data"]["rates_ppm"]
    if event["data"]["confidence_ppm"]:
        job["confidence_ppm"] = event["data"]["confidence_ppm"]


def _code_weight_set(state, event, job):
    job["code_weights"][event["data"]["position"]] = event["data"]["on"]


def _reach_set(state, event, job):
    job["reach"][event["data"]["position"]] = event["data"]["minutes"]


def _money_set(state, event, job):
    data = event["data"]
    job["money"] = {
        name: data[name] for name in ("labour_per_hour", "part_price", "wrong_purchase") if data[name]
    }


def _walk_checked(state, event, job):
    data = event["data"]
    job["walk"] = {"positions": data["positions"], "missed": data["missed"]}


def _left_deliberately(state, event, job):
    job["left"][event["data"]["position"]] = event["data"]["unit"]


def _job_closed(state, event, job):
    out = state.units_out(job["id"])
    if out or state.disputed(job["id"]):
        _conflict(state, event, job["id"], "closed with a sensor not accounted for")
    vehicle = state.vehicles[job["vehicle"]]
    for position in job["positions"]:
        unit = vehicle["holds"].get(position["id"])
        if unit:  # what stays here belongs here from now on, so the next job does not ask again
            vehicle["home"][position["id"]] = unit
    job["reopened"] = None
    job["closed"] = {"at": event["at"], "actor": event["actor"], "note": event["data"]["note"]}


def _conflict(state, event, job, about):
    """Flag something about the job as a whole; unlike a unit in dispute, no scan settles it."""
    state.add_conflict(
        {
            "event": envelope.identity(event),
            "job": job,
            "unit": None,
            "about": about,
            "code": None,
            "open": False,
        }
    )


HANDLERS = {
    "job_opened": _job_opened,
    "caution_acknowledged": _caution_acknowledged,
    "lamp_checked": _lamp_checked,
    "looked": _looked,
    "photo_taken": _photo_taken,
    "move_started": _move_started,
    "move_dropped": _move_dropped,
    "mixup_stopped": _mixup_stopped,
    "comes_and_goes_set": _comes_and_goes_set,
    "rates_set": _rates_set,
    "code_weight_set": _code_weight_set,
    "reach_set": _reach_set,
    "money_set": _money_set,
    "walk_checked": _walk_checked,
    "left_deliberately": _left_deliberately,
    "job_closed": _job_closed,
}
