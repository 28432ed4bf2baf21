"""Different part numbers are not swapped without a reason, which the record shows."""

from ..messages import message
from ..state.job import Job
from ..state.unit import Unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse fitting another part number than the position has, unless a reason is given."""
    if draft["kind"] != "unit_fitted" or draft["data"]["override"].strip():
        return None
    data, state = draft["data"], fold.state
    wanted = part_at(job, data["position"])
    part = state.units[data["unit"]]["part"]
    if not wanted or not part or wanted == part:
        return None
    return refusal(
        "same_part",
        message("rules-part-title"),
        message(
            "rules-part",
            unit=words.unit_name(Unit(state, data["unit"], job)),
            part=part,
            position=words.position_name(job, data["position"]),
            wanted=wanted,
        ),
        message("rules-part-do"),
        override=True,
    )


def part_at(job: Job, position):
    """Return the part number that a position takes: that of the unit first seen there."""
    home = job.vehicle["home"].get(position)
    return job.unit(home).part if home else job.part
