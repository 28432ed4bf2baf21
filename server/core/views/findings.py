"""What the tests of each job say about one unit, in a sentence with how sure it is."""

from ..evidence import verdict
from ..evidence import who_is_who
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..state.job import Job
from ..state.job import known_job


def findings(state, identity: str, results: dict) -> list[dict]:
    """Return, job after job, {"job", "title", "at", "standing", "sentence", "sure", "chance", "rests_on"}.

    `standing` is "bad" (a verdict names the unit), "cleared" (a verdict names something else) or "open".
    Jobs that never tested the unit say nothing.
    """
    found = []
    for job_id in state.units[identity]["jobs"]:
        job, result = known_job(state, job_id), results.get(job_id)
        tested = [test for test in job.tests if identity in test["fitted"].values()]
        if result and tested:
            found.append(_finding(job, identity, result, tested))
    return found


def leading(found: list) -> dict | None:
    """Return the finding that stands for the unit: the latest that found it bad, else the latest."""
    for entry in reversed(found):
        if entry["standing"] == "bad":
            return entry
    return found[-1] if found else None


def _finding(job: Job, identity, result, tested) -> dict:
    told = verdict.reasoning(job, result)
    named = result["verdict"]["causes"] if result["verdict"] else []
    chance, lost = 0, identity in result.get("alike", {})
    known = who_is_who.known(job, result)
    for body in sorted(known):
        if known[body] == identity:
            identity, lost = body, False
    for entry in result["causes"]:
        if entry["cause"] == "unit:" + identity:
            chance = entry["probability"]
    if lost:
        chance = who_is_who.bad_chance(result, identity)
    if "unit:" + identity in named:
        standing, sentence = "bad", told["sentence"]
        sure = message("views-finding-sure", sure=percent(result["verdict"]["probability"]))
    else:
        standing, sentence = "open", told["sentence"]
        if named and not lost:
            standing = "cleared"
            sentence = sentences([message("views-finding-cleared", sort=job.sort.identity), sentence])
        sure = message("views-finding-chance", sort=job.sort.identity, chance=percent(chance))
    return {
        "job": job.id,
        "title": job.vehicle["name"],
        "complaint": job.complaint,
        "at": tested[-1]["at"],
        "standing": standing,
        "sentence": sentence,
        "sure": sure,
        "chance": chance,
        "rests_on": told["carries_words"],
    }
