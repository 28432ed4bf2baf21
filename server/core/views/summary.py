"""What a job comes to: what was replaced, and where each unit of it is."""

from ..evidence import ways
from ..messages import message
from ..state.job import Job
from ..words import words
from ..words.words import unit_name


def replaced(job: Job) -> list[dict]:
    """Return a sentence for each change that stayed: a unit that is new, one that moved, one that left."""
    sits, was = left_with(job), _sat_at(job)
    brought, unsure = came_with(job)
    said = []
    for position in job.positions:
        unit = sits.get(position["id"])
        if not unit or unit in unsure or unit not in job.state.units:
            continue
        name, place = unit_name(job.unit(unit)), words.called(job, position)
        if unit not in brought:
            said.append(message("views-summary-new", unit=name, position=place))
        elif was.get(unit, position["id"]) != position["id"]:
            before = words.position_name(job, was[unit])
            said.append(message("views-summary-moved", unit=name, position=place, before=before))
    for unit in brought:
        if unit in job.state.units and unit not in sits.values():
            said.append(message("views-summary-off", unit=unit_name(job.unit(unit)), place=_place(job, unit)))
    return said


def _place(job: Job, unit: str) -> dict:
    """Return where a unit is that came off; in whose hand is nothing to somebody who only reads of it."""
    facts = job.unit(unit)
    return message("views-summary-loose") if facts.is_in_hand() else words.place_words(facts)


def _sat_at(job: Job) -> dict:
    """Return unit -> position where it sat when the job began, of those that it pulled."""
    was = {}
    for entry in job.entries():
        if entry["kind"] == "unit_pulled":
            unit = job.state.now(entry["data"]["unit"])
            if unit in job.units_at_opening and unit not in was:
                was[unit] = entry["data"]["position"]
    return was


def came_with(job: Job) -> tuple:
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


def left_with(job: Job) -> dict:
    """Return position -> unit at the end of the job; later jobs on the vehicle change what it holds now."""
    if not job.is_closed() or not job.tests:
        return {place: job.holds[place] for place in job.holds if job.holds[place]}
    fitted = dict(job.last_test()["fitted"])
    for entry in _after_last_test(job):
        data = entry["data"]
        unit = job.state.now(data["unit"])
        if entry["kind"] == "unit_fitted":
            fitted[data["position"]] = unit
        elif fitted.get(data["position"]) == unit:
            del fitted[data["position"]]
    return fitted


def _after_last_test(job: Job) -> list[dict]:
    """Return the entries of its last self-test and later that fit or pull a unit and stand."""
    found = []
    for entry in job.entries():
        if entry["kind"] == "test_run":
            found = []
        elif entry["kind"] in ("unit_fitted", "unit_pulled"):
            found.append(entry)
    return found


def handled(job: Job) -> list[str]:
    """Return the units that the job had in hand: every labelled one, and any that is still out."""
    return [unit for unit in job.units() if job.unit(unit).is_labelled() or not job.unit(unit).is_fitted()]
