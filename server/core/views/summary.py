"""What a job comes to: what was replaced, and where each unit of it is."""

from .. import phrases
from ..words import words
from ..words.words import unit_name


def replaced(state, job: dict) -> list[str]:
    """Return a sentence for each unit that is new to the vehicle, and for each that left it."""
    sits = _left_with(state, job)
    said = []
    for position in job["positions"]:
        unit = sits.get(position["id"])
        if unit and unit not in job["at_opening"] and unit in state.units:
            name = phrases.sentence_case(unit_name(state, job, unit))
            said.append("{} is new at {}.".format(name, position["name"]))
    for unit in job["at_opening"]:
        if unit in state.units and unit not in sits.values():
            name = phrases.sentence_case(unit_name(state, job, unit))
            said.append("{} came off; it is {}.".format(name, words.place_words(state, job, unit)))
    return said


def _left_with(state, job) -> dict:
    """Return position -> unit at the end of the job; later jobs on the vehicle change what it holds now."""
    if job["closed"] and job["tests"]:
        return job["tests"][-1]["fitted"]
    return state.vehicles[job["vehicle"]]["holds"]


def handled(state, job: dict) -> list[str]:
    """Return the units that the job had in hand: every labelled one, and any that is still out."""
    return [
        unit
        for unit in state.units_of(job["id"])
        if state.units[unit]["code"] or state.units[unit]["place"] != "fitted"
    ]
