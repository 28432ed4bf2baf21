"""The pictures of a job: what each shows, and at which moment of the work, by order and not by clocks."""

from ..messages import message
from ..state.job import Job
from ..words import words


def pictures(job: Job) -> list[dict]:
    """Return the pictures of a job as on record, each with what it shows, `words`, and its `moment`."""
    moments = _moments(job)
    return [_shown(job, photo, moments[photo["sha256"]].pop(0)) for photo in job.photos]


def _moments(job: Job) -> dict:
    """Return digest -> each time it was taken: tests before, whether its position had been pulled."""
    found, pulled, tests = {}, {}, 0
    for entry in job.entries():
        if entry["kind"] == "test_run":
            tests += 1
        elif entry["kind"] == "unit_pulled":
            pulled[entry["data"]["position"]] = True
        elif entry["kind"] == "photo_taken":
            taken = (tests, entry["data"]["position"] in pulled)
            found[entry["data"]["sha256"]] = found.get(entry["data"]["sha256"], []) + [taken]
    return found


def _shown(job: Job, photo: dict, moment) -> dict:
    tests, pulled = moment
    picture = dict(photo)
    if photo["position"]:
        picture["words"] = message("views-heading", words=words.position_name(job, photo["position"]))
    else:
        picture["words"] = message("views-report-photo", shows=photo["shows"], sort=job.sort.identity)
    if "repair" in photo:
        picture["moment"] = message("views-picture-repair", when=photo["repair"])
    elif photo["shows"] != "position":
        picture["moment"] = _after(tests)
    elif not pulled:
        picture["moment"] = message("views-picture-untouched")
    elif photo["sat"]:
        picture["moment"] = message("views-picture-fitted", unit=words.unit_name(job.unit(photo["sat"])))
    else:
        picture["moment"] = message("views-picture-empty")
    return picture


def _after(tests: int) -> dict:
    if not tests:
        return message("views-picture-before-tests")
    return message("views-picture-after-test", number=str(tests))
