"""What a job comes to: what was replaced, and where each unit of it is."""

from ..evidence import ways
from ..messages import message
from ..state.job import Job
from ..words import words
from ..words.words import unit_name


def replaced(job: Job) -> list[dict]:
    """Return a sentence for each unit that is new to the vehicle, and for each that left it."""
    sits = _left_with(job)
    came_with, unsure = _came_with(job)
    said = []
    for position in job.positions:
        unit = sits.get(position["id"])
        if unit and unit not in came_with + unsure and unit in job.state.units:
            said.append(
                message(
                    "views-summary-new", unit=unit_name(job.unit(unit)), position=words.called(job, position)
                )
            )
    for unit in came_with:
        if unit in job.state.units and unit not in sits.values():
            said.append(
                message(
                    "views-summary-off",
                    unit=unit_name(job.unit(unit)),
                    place=words.place_words(job.unit(unit)),
                )
            )
    return said


def _came_with(job: Job) -> tuple:
    """Return the units that the vehicle came with, and parts of which nobody knows whether it did.

    Of those that got mixed up, the parts are in their place; where a spare is among them, nobody knows.
    """
    found, unsure = list(job.units_at_opening), []
    for entry in ways.open_sets(job):
        if [unit for unit in entry["open"] if unit not in found]:
            unsure += entry["bodies"]
        else:
            found += entry["bodies"]
        found = [unit for unit in found if unit not in entry["open"]]
    return found, unsure


def _left_with(job: Job) -> dict:
    """Return position -> unit at the end of the job; later jobs on the vehicle change what it holds now."""
    if job.is_closed() and job.tests:
        return job.last_test()["fitted"]
    return job.holds


def handled(job: Job) -> list[str]:
    """Return the units that the job had in hand: every labelled one, and any that is still out."""
    return [unit for unit in job.units() if job.unit(unit).is_labelled() or not job.unit(unit).is_fitted()]
