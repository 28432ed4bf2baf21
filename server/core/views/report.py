"""The report of a job for the customer: what was wrong, how that is known, what was done, what proves it.

In words of someone who has never heard of a swap test. Dates are left to the screen, which knows the
customer's calendar.
"""

from ..evidence import proof
from ..evidence import retaken
from ..evidence import verdict
from ..facts.looks import distances
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..meter import figure
from ..state.job import Job
from ..words import causes
from ..words import words
from ..words.noted import noted
from . import report_photos
from . import report_work
from . import summary
from . import trail


def report(job: Job, result: dict | None) -> dict:
    """Return everything a customer's report says of a job; `result` is the reasoning, None before a test."""
    vehicle = job.vehicle
    told = verdict.reasoning(job, result) if result else None
    return {
        "id": job.id,
        "sort": job.sort.identity,
        "vehicle": vehicle["name"],
        "vin": vehicle["vin"],
        "complaint": job.complaint,
        "opened_at": job.opened_at,
        "closed": _closed(job),
        "standing": _standing(job),
        "headline": _headline(job, result, told),
        "found": _found(job, result, told),
        "sure": _sure(job, result, told),
        "photos": report_photos.before_and_after(job),
        "trail": trail.trail(job, result),
        "done": report_work.done(job),
        "replaced": summary.replaced(job),
        "proof": _proof(job, result, told),
        "cautions": _cautions(job, result, told),
        "by": _people(job),
    }


def _closed(job: Job) -> dict | None:
    """Return when and by whom it was closed, why it ends unrepaired, and what was typed."""
    closing = job.closing
    if not closing:
        return None
    note = noted(job.sort, closing["note"])
    if "why" in closing:
        note = sentences([message("facts-job-closed-unrepaired", why=closing["why"]), note])
    return {"at": closing["at"], "actor": closing["actor"], "note": note}


def _standing(job) -> dict:
    return message("views-report-finished" if job.is_closed() else "views-report-unfinished")


def _headline(job: Job, result, told) -> dict:
    if told is None:
        return message("views-report-untested")
    named, spares = _of_the_car(job, result)
    if spares and not named:
        return message("views-report-only-spare", sort=job.sort.identity)
    if len(named) > 1:
        return message("views-report-several" if _live(job, named) else "views-report-several-over")
    if named:
        kind, what, _ = causes.split(named[0])
        return message(
            _HEADLINES[kind][0 if _live(job, named) else 1],
            where=words.position_name(job, what) if kind in ("circuit", "blocked") else what,
            sort=job.sort.identity,
            state=job.sort.obstruction.state,
        )
    if not _faulted(job):
        return message("views-report-no-fault")
    return message("views-report-gone" if told["settled"] else "views-report-uncertain")


# kind of cause -> (headline while it is there, headline once it is dealt with)
_HEADLINES = {
    "unit": ("views-report-unit", "views-report-unit-over"),
    "circuit": ("views-report-circuit", "views-report-circuit-over"),
    "blocked": ("views-report-blocked", "views-report-blocked-over"),
    "feed": ("views-report-feed", "views-report-feed-over"),
    "control": ("views-report-control", "views-report-control-over"),
}


def _live(job: Job, named) -> bool:
    return len([cause for cause in named if causes.is_live(job, cause)]) > 0


def _faulted(job) -> bool:
    return len([test for test in job.tests if test["heard"] and test["faulted"]]) > 0


def _found(job: Job, result, told) -> list[dict]:
    """Return what was found and how that is known, a sentence or two for each cause."""
    if told is None:
        return []
    said = _first_fault(job)
    if not result["verdict"]:
        return said + [told["detail"]] if told["detail"] else said
    named, spares = _of_the_car(job, result)
    for cause in named:
        kind, what, _ = causes.split(cause)
        said.append(_EXPLAINED[kind](job, cause, what))
    for cause in spares:
        still = "yes" if causes.is_live(job, cause) else "no"
        said.append(message("views-report-spare", unit=causes.phrase(job, cause), still=still))
    return said


def _of_the_car(job: Job, result) -> tuple:
    """Return (causes of the verdict that the vehicle came with, those that a spare of the yard brought)."""
    named = sorted(result["verdict"]["causes"]) if result["verdict"] else []
    spares = [cause for cause in named if _is_spare(job, cause)]
    return [cause for cause in named if cause not in spares], spares


def _is_spare(job: Job, cause: str) -> bool:
    """Tell whether a cause is a unit that was not on the vehicle when the job began."""
    kind, what, _ = causes.split(cause)
    brought, unsure = summary.came_with(job)
    return kind == "unit" and what not in job.units_at_opening + brought + unsure


def _first_fault(job) -> list[dict]:
    for test in job.tests:
        if test["heard"] and test["faulted"]:
            places = [words.position_name(job, position) for position in test["faulted"]]
            return [job.sort.says("views-report-first-fault", positions=all_of(places))]
    return []


def _unit_found(job: Job, cause, unit) -> dict:
    places = [words.position_name(job, place) for place in verdict.faulted_places(job, unit)]
    if len(places) > 1:
        return message(
            "views-report-unit-moved",
            unit=causes.phrase(job, cause),
            first=places[0],
            last=places[-1],
            sort=job.sort.identity,
        )
    return message("views-report-unit-left", unit=causes.phrase(job, cause))


def _circuit_found(job: Job, cause, position) -> dict:
    there = words.position_name(job, position)
    if len(verdict.faulted_units(job, position)) > 1:
        return message("views-report-circuit-stayed", sort=job.sort.identity, position=there)
    return job.sort.says("views-report-circuit-left", position=there)


def _blocked_found(job: Job, cause, position) -> dict:
    return message(
        "views-report-blocked-found",
        obstruction=job.sort.obstruction.for_customer,
        position=words.position_name(job, position),
        sort=job.sort.identity,
    )


def _feed_found(job: Job, cause, group) -> dict:
    return message("views-report-feed-found", group=group, sort=job.sort.identity)


def _control_found(job: Job, cause, what) -> dict:
    return message("views-report-control-found", sort=job.sort.identity)


_EXPLAINED = {
    "unit": _unit_found,
    "circuit": _circuit_found,
    "blocked": _blocked_found,
    "feed": _feed_found,
    "control": _control_found,
}


def _sure(job, result, told):
    """Return how sure the conclusion is, and what it rests on; '' where nothing is concluded."""
    if told is None:
        return ""
    ignored = {entry["test"]: True for entry in result["ignored"]}
    counted = len([n for n in range(len(job.tests)) if n not in ignored])
    rests = job.sort.says("views-report-rests", count=counted, heard=job.sort.self_test.whose_was_heard)
    if told["verdict"]:
        said = [message("views-report-sure", sure=percent(result["verdict"]["probability"]), rests=rests)]
        other = _instead(job, result)
        if other:
            said.append(other)
        return sentences(said)
    if told["settled"] and _faulted(job):
        return message("views-report-clear", sure=percent(result["clear"]), rests=rests)
    return ""


def _instead(job: Job, result) -> dict | None:
    """Return what else it could be with the vehicle; None where that would be the same once more.

    What a spare was is no matter of the customer's, so an explanation that differs in spares alone, or that
    names all that is told and more, is none.
    """
    named, _ = _of_the_car(job, result)
    for explanation in result["explanations"] if named else []:
        others = [cause for cause in explanation["causes"] if not _is_spare(job, cause)]
        if others and [cause for cause in named if cause not in others]:
            said, share = causes.phrases(job, others), percent(explanation["probability"])
            return message("views-report-else", cause=said, chance=share)
    return None


def _proof(job: Job, result, told) -> list[dict]:
    """Return what shows that the repair holds, or that nothing shows it yet."""
    if told is None:
        return []
    said = []
    clean = proof.clean_in_a_row(job, result)
    if clean and _faulted(job):
        said.append(job.sort.says("views-report-clean-tests", count=clean, sure=percent(result["clear"])))
        done = proof.against(job, result)
        if done:
            said.append(message("views-report-against", against=all_of(done)))
    if job.walk_check:
        walk, names = job.sort.walk, [words.position_name(job, position) for position in job.stayed_quiet]
        heard = message(walk.missed, positions=all_of(names)) if names else walk.report_all_well
        said.append(message("views-report-walk", check=walk.report_name, heard=heard))
        judged = distances(job.walk_check, lambda position: words.position_name(job, position))
        said.extend([each["words"] for each in judged])
    said.extend(_retaken(job))
    return said or [message("views-report-unproven")]


def _retaken(job: Job) -> list[dict]:
    """Return what became of the readings that were bad before a repair, as far as it is on record."""
    said = []
    for reading in retaken.after_repairs(job):
        check, stands = reading["check"], reading["stands"]
        if stands != retaken.AGAIN or not job.is_closed():
            said.append(
                message(
                    "views-report-reading",
                    check=check["title"],
                    position=words.position_name(job, reading["position"]),
                    stands=stands,
                    before=_figure(reading["before"], check),
                    now=_figure(reading["now"], check),
                    reason=noted(job.sort, reading["reason"]),
                )
            )
    return said


def _figure(typed: str, check: dict):
    """Return a figure in brackets with its unit, "" where none was typed."""
    if not typed:
        return ""
    unit = figure.unit_told(typed, check["unit"])
    return message("views-report-figure", value=typed, unit=unit)


def _cautions(job: Job, result, told) -> list:
    said = []
    if told and _faulted(job) and (not told["settled"] or proof.open_reading(job)):
        said.append(message("views-report-not-proven", sort=job.sort.identity))
    if job.comes_and_goes:
        said.append(message("views-report-came-and-went"))
    if [unit for unit in job.in_hand()]:
        said.append(message("views-report-not-back", sort=job.sort.identity))
    said.append(job.sort.cautions[job.sort.caution_in_report].sentence)
    return said


def _people(job) -> list[str]:
    names = []
    for entry in job.history:
        if entry["actor"] and entry["actor"] not in names:
            names.append(entry["actor"])
    return names
