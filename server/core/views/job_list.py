"""The list of jobs: each with its board, how it stands in a few words, and its next step.

Without the reasoning, which would take a phone a tenth of a second a job: what follows from tests is said
once the job is opened. Of a closed job there is a line only; a phone need not have it in memory.
"""

from ..guide import next_step
from ..messages import message
from ..state.job import Job
from ..state.job import known_job
from ..words import results
from .job import small_board


def jobs_view(state) -> list[dict]:
    """Return every job in short, open ones first, the latest opened first among them."""
    listed = []
    out, disputed = _loose_ends(state)
    # A server's state takes in further jobs as it is asked about those that it has.
    for identity in list(state.jobs):
        line = state.job_line(identity)
        vehicle = state.vehicles[line["vehicle"]]
        job = None if line["closed"] else known_job(state, identity)
        listed.append(
            {
                "id": identity,
                "title": vehicle["name"],
                "vehicle": vehicle["id"],
                "complaint": line["complaint"],
                "opened_at": line["opened_at"],
                "closed": line["closed"],
                "tests": line["tests"],
                "out": out.get(identity, 0),
                "disputed": disputed.get(identity, 0),
                "paused": bool(job and job.pause),
                "board": small_board(job) if job else None,
                "standing_words": _standing(job) if job else "",
                "next_words": _next(job) if job else "",
            }
        )
    return sorted(listed, key=lambda row: (row["closed"], -row["opened_at"], row["id"]))


def _loose_ends(state) -> tuple:
    """Return how many units each job has out and in dispute, from one look at all units.

    `state.units_out` and `state.disputed` look at all of them for each job: seconds on a phone with years
    of jobs.
    """
    out, disputed = {}, {}
    for unit in state.units.values():
        if unit["place"] == "out" and unit["job"]:
            out[unit["job"]] = out.get(unit["job"], 0) + 1
        if unit["claims"]:
            for job in unit["jobs"]:
                disputed[job] = disputed.get(job, 0) + 1
    return out, disputed


def _standing(job: Job) -> dict:
    """Return how a job stands, in about three words."""
    if job.pause:
        return message("ways-paused-title", why=job.pause["why"])
    if job.move:
        return message("views-list-move", move=job.move["move"])
    if not job.tests:
        return message("views-list-untested")
    last = job.last_test()
    if not last["heard"]:
        return message("views-list-not-heard")
    if not last["faulted"]:
        return message("views-list-clean")
    return message(
        "views-list-fault", positions=results.places(job, last["faulted"]), count=len(last["faulted"])
    )


def _next(job: Job):
    """Return what to do next: the heading of its step, where that does not hang on the reasoning."""
    if job.pause:
        part = job.pause["part"]
        return message("ways-order", part=part) if part else message("ways-go-on")
    step = next_step.without_reasoning(job)
    if step:
        return step["title"]
    last = job.last_test()
    if not last["heard"]:
        return message("guide-test-again")
    return message("views-list-find" if last["faulted"] else "views-list-see")
