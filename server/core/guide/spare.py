"""Which units at hand may take a place: good ones of the same part; of another, why it may not."""

from ..evidence import unit_history
from ..messages import message
from ..messages import sentences
from ..rules.same_part import part_at
from ..state.job import Job
from ..state.job import known_job
from ..state.unit import Unit
from ..words import words


def unfit(job: Job, position: str, identity: str) -> dict | None:
    """Return why a unit may not take a position, None where it may: what it is, where, or that it is bad."""
    unit = job.unit(identity)
    name = words.unit_name(unit)
    if unit.is_disputed() or not (unit.is_in_stock() or unit.is_in_hand_here()):
        return with_bad(
            job.state, identity, message("rules-unit-is", unit=name, place=words.place_words(unit))
        )
    bad = unit_history.condemned(job.state, unit.id)
    if bad:
        return message("guide-spare-bad", unit=name, vehicle=bad)
    if faulted_last(job.state, unit.id):
        return job.sort.says("guide-spare-faulted", unit=name)
    if unit.mixup():
        return message("guide-spare-mixed", unit=name)
    if unit.id not in job.at_hand():
        return message("guide-spare-sort", unit=name)
    part = part_at(job, position)
    if part and unit.part and unit.part != part:
        return message("guide-spare-part", unit=name, part=unit.part, wanted=part)
    return None


def faulted_last(state, unit: str) -> bool:
    """Tell whether the last self-test that counted for a unit, on whatever vehicle, showed a fault."""
    last = None
    for job_id in state.units[unit]["jobs"]:
        for test in known_job(state, job_id).tests:
            for position in sorted(test["fitted"]):
                silent = position in test["silent"] or position in test["disputed"]
                if test["fitted"][position] == unit and test["heard"] and not silent:
                    last = position in test["faulted"]
    return bool(last)


def with_bad(state, identity: str, said: dict) -> dict:
    """Return a sentence about a unit with another that it was found bad, where it was."""
    vehicle = unit_history.condemned(state, identity)
    if not vehicle:
        return said
    return sentences(
        [said, message("guide-spare-bad", unit=words.unit_name(Unit(state, identity)), vehicle=vehicle)]
    )
