"""What a job comes to: what was replaced, and where each unit of it is."""

from . import words
from .exchange import short_name


def replaced(state, job: dict) -> list[str]:
    """Return a sentence for each unit that is new to the vehicle, and for each that left it."""
    vehicle = state.vehicles[job["vehicle"]]
    first_seen = [vehicle["home"][position] for position in sorted(vehicle["home"])]
    said = []
    for position in job["positions"]:
        unit = vehicle["holds"].get(position["id"])
        if unit and unit not in first_seen and job["id"] in state.units[unit]["jobs"]:
            name = words.sentence_case(short_name(state, job, unit))
            said.append("{} is new at {}.".format(name, position["name"]))
    for unit in first_seen:
        if state.units[unit]["place"] != "fitted" and job["id"] in state.units[unit]["jobs"]:
            name = words.sentence_case(short_name(state, job, unit))
            said.append("{} came off; it is {}.".format(name, words.place_words(state, job, unit)))
    return said


def handled(state, job: dict) -> list[str]:
    """Return the units that the job had in hand: every labelled one, and any that is still out."""
    return [
        unit
        for unit in sorted(state.units)
        if job["id"] in state.units[unit]["jobs"]
        and (state.units[unit]["code"] or state.units[unit]["place"] != "fitted")
    ]
