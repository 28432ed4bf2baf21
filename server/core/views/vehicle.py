"""The vehicles on record, with what a next job on one of them starts from."""

from ..evidence import comeback
from ..evidence import readings
from ..parts import sorts
from . import search
from .folding import folded


def vehicles_view(state, findable, text: str = "", most: int = 0) -> list[dict]:
    """Return the vehicles that a text finds in short, the one whose job was opened last first.

    An empty text finds every one; `most` of them are told, 0 stands for all. One "is_it" whose plate or VIN
    the text is, however that is written: a name many vehicles have, these no two.
    """
    asked = search.Asked(text)
    left = state.vehicles
    if not asked.is_empty():
        left = {identity: True for identity in asked.among(findable.vehicles())}
    told, seen = [], {}
    for identity in findable.order().vehicles if left else []:
        if identity in left and identity not in seen:
            seen[identity] = True
            told.append(_told(state, state.vehicles[identity], asked.whole))
            if len(told) == most:
                break
    return told


def _told(state, vehicle: dict, typed: str) -> dict:
    lines = [state.job_line(job) for job in vehicle["jobs"]]
    last = lines[-1]
    sort = sorts.by_layout(last["layout"])
    still_open = [line["id"] for line in lines if not line["closed"]]
    numbers = [folded(vehicle["vin"], ""), folded(vehicle.get("plate", ""), "")]
    return {
        "id": vehicle["id"],
        "is_it": typed != "" and typed in numbers,
        "name": vehicle["name"],
        "vin": vehicle["vin"],
        "plate": vehicle.get("plate", ""),
        "layout": last["layout"],
        "part": last["part"],
        "positions": [readings.as_set(last, position) for position in last["positions"]],
        "called": {position["id"]: sort.called(position) for position in last["positions"]},
        "opened_at": last["opened_at"],
        "opens_with": comeback.opens_with(lines),
        "open_job": still_open[-1] if still_open else "",
    }
