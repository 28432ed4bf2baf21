"""There is a picture of the unit, or of a position where it sat on the job that it is returned from."""

from ..messages import message
from ..state.job import Job
from .check import check


def look(state, case):
    """Hold a unit without any picture."""
    if case["unit"] is None or case["unknown"]:
        return None
    taken = pictures(case["unit"], case["job"])
    if not taken:
        return check("hold", message("returns-photos-none-title"), message("returns-photos-none"))
    return check("pass", message("returns-photos-title"), message("returns-photos", count=len(taken)))


def of_itself(unit: dict, job: Job | None) -> list[dict]:
    """Return the pictures of the unit alone, as it was labelled: what tells it from others alike."""
    return [photo for photo in pictures(unit, job) if photo["unit"] == unit["id"]]


def pictures(unit: dict, job: Job | None) -> list[dict]:
    """Return the pictures of a unit and of the positions where it sat, in order of time."""
    if job is None:
        return []
    sat = [unit["pulled_from"]]
    for test in job.tests:
        for position in sorted(test["fitted"]):
            if test["fitted"][position] == unit["id"] and position not in sat:
                sat.append(position)
    return [
        photo
        for photo in job.photos
        if photo["unit"] == unit["id"] or (photo["shows"] == "position" and photo["position"] in sat)
    ]
