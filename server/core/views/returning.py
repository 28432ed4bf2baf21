"""A vehicle that was here before: what a new job on it says of that on its first screen."""

from ..evidence import comeback
from ..evidence import job_alone
from ..evidence import verdict
from ..messages import all_of
from ..messages import message
from ..state.job import Job
from ..words import words


def returning(job: Job) -> dict | None:
    """Return {"vehicle", "jobs", "sentence", "found", "reasons"}; None on a first visit.

    `found` is what the last job came to, `reasons` what the earlier ones speak for now.
    """
    earlier = comeback.before(job)
    if not earlier:
        return None
    last = earlier[-1]
    return {
        "vehicle": job.vehicle_id,
        "jobs": len(earlier),
        "sentence": message("views-back", days=comeback.days_between(last, job), count=len(earlier)),
        "found": outcome(last),
        "reasons": comeback.sentences(job),
    }


def outcome(job: Job) -> dict:
    """Return what a closed job came to: what was replaced, repaired, found, or that nothing was."""
    replaced = comeback.replaced_on_verdict(job)
    if replaced:
        places = [words.position_name(job, position) for position, _ in replaced]
        return message("views-back-replaced", positions=all_of(places), sort=job.sort.identity)
    concluded = job_alone.verdict(job)
    if concluded:
        return verdict.headline(job, concluded["causes"])
    if not job.tests:
        return message("views-report-untested")
    faulted = _faulted_first(job)
    if not faulted:
        return message("views-back-nothing")
    return message(
        "views-back-shown", positions=all_of([words.position_name(job, place) for place in faulted])
    )


def _faulted_first(job: Job) -> list:
    """Return where the first self-test that was heard and showed a fault did so, [] where none did."""
    for test in job.tests:
        if test["heard"] and test["faulted"]:
            return test["faulted"]
    return []
