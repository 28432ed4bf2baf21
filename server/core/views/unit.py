"""One unit as screens, slips and records show it, from its first job to its last place, in sentences.

A scan opens it, a counter decides by it and paper carries it, so all of them read the same words.
"""

from ..codes import labels
from ..evidence import mixups
from ..evidence import unit_history
from ..messages import all_of
from ..messages import message
from ..state import contradictions
from ..state.job import Job
from ..state.job import find_job
from ..state.job import known_job
from ..state.state import MIXED
from ..state.unit import Unit
from ..words import custody
from ..words import labels_on_unit
from ..words import places
from ..words import words
from . import findings
from . import returned
from . import trail
from . import unit_next
from . import unit_trail
from .job import bad_words
from .job import readings_known

# What a move has for the stories about a unit in dispute (`state/stories.py`).
_ONLY_FOR_ORDER = ("kind", "n", "then", "instead")


def unit_view(state, identity: str, results: dict, how: str, base: str) -> dict:
    """Return everything on record about a unit.

    `results` is job id -> what the reasoning concludes there (None before a test), `how` says how the
    unit was identified by whoever asks, `base` is the installation's address for its label ("" for none).
    """
    unit = state.units[identity]
    job = find_job(state, unit["jobs"][-1]) if unit["jobs"] else None
    tests = []
    for job_id in unit["jobs"]:
        tests.extend(_tests_of(known_job(state, job_id), identity, results.get(job_id)))
    found = findings.findings(state, identity, results)
    returns = returned.returns(state, unit)
    return {
        "id": identity,
        "sort": Unit(state, identity, job).sort.identity,
        "shown": labels.shown(unit["code"]),
        "part": unit["part"],
        "serial": unit["serial"],
        "place": unit["place"],
        "job": unit["job"],
        "where": words.place_words(Unit(state, identity, job)),
        "bad": bad_words(state, identity),
        "disputed": len(unit["claims"]) > 0,
        "claims": places.claims(state, unit),
        "elsewhere": places.elsewhere(state, unit) if unit["claims"] else [],
        "settle": _settle(state, unit, how),
        "apart": _apart(state, unit),
        "noted": readings_known(unit),
        "code": unit["code"],
        "address": labels.address(unit["code"], base) if unit["code"] and base else "",
        "was": [labels.shown(code) for code in unit["old_codes"]],
        "carried": labels_on_unit.carried_view(state, identity),
        "labels": custody.labels_of(state, unit),
        "history": unit_history.history(state, identity, _open_job(state, unit)),
        "lost": mixups.lost_view(state, unit),
        "jobs": [_job_line(known_job(state, job_id), found) for job_id in unit["jobs"]],
        "tests": tests,
        "tests_words": _counted(tests),
        "findings": found,
        "finding": findings.leading(found),
        "trail": unit_trail.stations(state, unit, results),
        "moves": [_move_line(state, move) for move in unit["moves"]],
        "custody": custody.entries(state, unit),
        "custody_words": custody.in_short(unit),
        "photos": _photos(state, unit),
        "returns": returns,
        "next": unit_next.next_of(state, unit, found, returns, how),
    }


def _settle(state, unit, how) -> dict | None:
    """Return the contradiction about a unit, as the last job tells it that is about it."""
    if not unit["claims"]:
        return None
    from ..guide import settling  # a phone that never meets a contradiction can start without it

    found = None
    for job_id in unit["jobs"]:
        found = settling.card(known_job(state, job_id), unit["id"], how) or found
    return found


def _apart(state, unit) -> list[dict]:
    """Return what phones said apart of a unit outside its places: its numbers, an entry outside any job."""
    if not contradictions.of_unit(unit):
        return []
    from ..guide import settling  # as above

    return settling.cards_beside(state, unit["id"])


def _open_job(state, unit) -> Job | None:
    """Return the job that a unit is at work on; what its tests say is that job's to tell."""
    job = find_job(state, unit["job"]) if unit["place"] in ("fitted", "out", MIXED) else None
    return job if job and not job.is_closed() else None


def _job_line(job: Job, found) -> dict:
    said = [entry for entry in found if entry["job"] == job.id]
    return {
        "id": job.id,
        "title": job.vehicle["name"],
        "complaint": job.complaint,
        "opened_at": job.opened_at,
        "closed": job.is_closed(),
        "sentence": said[0]["sentence"] if said else "",
    }


def _tests_of(job: Job, identity, result) -> list:
    aside = trail.set_aside(result)
    found = []
    for index in range(len(job.tests)):
        test = job.tests[index]
        for position in sorted(test["fitted"]):
            if test["fitted"][position] == identity:
                mark = trail.reading(job, index, position, aside) if test["heard"] else "aside"
                at = words.position_name(job, position)
                found.append(
                    {
                        "job": job.id,
                        "vehicle": job.vehicle["name"],
                        "n": index + 1,
                        "at": test["at"],
                        "position": at,
                        "mark": mark,
                        "sentence": message(
                            "views-unit-test",
                            number=str(index + 1),
                            vehicle=job.vehicle["name"],
                            position=at,
                            mark=mark,
                        ),
                        "why": aside.get(index, ""),
                    }
                )
    return found


def _counted(tests) -> dict:
    """Return how many tests it sat in and what they read, as a sentence."""
    if not tests:
        return message("views-unit-no-test")
    said = []
    for mark in ("fault", "clean", "aside", "untested"):
        count = len([test for test in tests if test["mark"] == mark])
        if count:
            said.append(message("views-unit-tests-read", mark=mark, count=count))
    return message("views-unit-tests", count=len(tests), read=all_of(said))


def _photos(state, unit) -> list:
    """Return the pictures of the unit itself, and those of the places where it sat when they were taken."""
    found = []
    for job_id in unit["jobs"]:
        job = known_job(state, job_id)
        for photo in job.photos:
            if unit["id"] in (photo["unit"], photo["sat"]):
                shown = dict(photo)
                shown["job"] = job_id
                shown["words"] = message("views-unit-photo", sort=job.sort.identity)
                if photo["unit"] != unit["id"]:
                    shown["words"] = message(
                        "views-unit-photo-at",
                        position=words.position_name(job, photo["position"]),
                        vehicle=job.vehicle["name"],
                    )
                found.append(shown)
    return found


def _move_line(state, move) -> dict:
    job = find_job(state, move["job"])
    where = words.position_name(job, move["position"]) if job and move["position"] else ""
    line = {name: move[name] for name in move if name not in _ONLY_FOR_ORDER}
    line["position"] = where
    return line
