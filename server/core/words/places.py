"""Where a unit could be, for whoever has to say it: the places on record, and all others."""

from ..codes.labels import shown
from ..messages import message
from ..state.job import find_job
from ..state.job import known_job
from ..state.unit import Unit
from . import words


def claims(state, unit: dict) -> list[dict]:
    """Return the places on record of a disputed unit, each once: {"place", "position", "job", "words"}."""
    lines = []
    for claim in unit["claims"]:
        line = place_line(state, claim["place"], claim["vehicle"], claim["position"])
        if line not in lines:
            lines.append(line)
    return lines


def elsewhere(state, unit: dict) -> list[dict]:
    """Return the other places where a disputed unit could turn out to be, in the same form."""
    vehicles = [claim["vehicle"] for claim in unit["claims"] if claim["vehicle"]]
    vehicles.extend([known_job(state, job).vehicle_id for job in unit["jobs"]])
    lines = []
    for vehicle in sorted({name: True for name in vehicles}):
        for position in sorted(state.vehicles[vehicle]["holds"]):
            lines.append(place_line(state, "fitted", vehicle, position))
    for place in ("out", "stock", "counter", "customer", "scrapped"):
        lines.append(place_line(state, place, None, None))
    known = claims(state, unit)
    return [line for line in lines if line not in known]


def without_label(state) -> list[dict]:
    """Return the units whose label was taken out of use and that have no other, as a list to choose from."""
    found = []
    for identity in sorted(state.units):
        unit = state.units[identity]
        if unit["old_codes"] and not unit["code"]:
            job = find_job(state, unit["jobs"][-1]) if unit["jobs"] else None
            found.append(
                {
                    "id": identity,
                    "was": shown(unit["old_codes"][-1]),
                    "where": words.place_words(Unit(state, identity, job)),
                    "job": unit["job"],
                }
            )
    return found


def place_line(state, place, vehicle, position) -> dict:
    """Return one place in words, with the job at which a scan could record it."""
    line = {"place": place, "position": position or "", "job": None}
    line["words"] = message("custody-place", place=place)
    if place == "fitted":
        for job in state.vehicles[vehicle]["jobs"]:  # the last one that knows the position
            if known_job(state, job).position(position):
                line["job"] = job
        name = words.position_name(known_job(state, line["job"]), position) if line["job"] else position
        line["words"] = message(
            "custody-place-fitted", position=name, vehicle=state.vehicles[vehicle]["name"]
        )
    return line
