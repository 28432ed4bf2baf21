"""What a report tells the customer of the causes: how each is known, how sure that is, what else it could be.

A spare of the yard that turned out to be bad is told as one: it is no fault of the vehicle.
"""

from ..evidence import tests_so_far
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..state.job import Job
from ..words import causes
from ..words import words
from . import summary

_WORTH_TELLING = 10_000_000  # parts per billion of what else it could be


def found(job: Job, result, told: dict | None) -> list[dict]:
    """Return what was found and how that is known, a sentence or two for each cause."""
    if told is None:
        return []
    said = _first_fault(job)
    if not result["verdict"]:
        likely = _likely(job, result) if not told["settled"] else []
        return said + (likely or [told["detail"]] if told["detail"] else [])
    named, spares = of_the_car(job, result)
    for cause in named:
        kind, what, _ = causes.split(cause)
        said.append(_EXPLAINED[kind](job, cause, what))
    for cause in spares:
        still = "yes" if causes.is_live(job, cause) else "no"
        said.append(message("views-report-spare", unit=causes.phrase(job, cause), still=still))
    return said


def of_the_car(job: Job, result) -> tuple:
    """Return (causes of the verdict that the vehicle came with, those that a spare of the yard brought)."""
    return _parted(job, sorted(result["verdict"]["causes"]) if result["verdict"] else [])


def _parted(job: Job, named: list) -> tuple:
    spares = [cause for cause in named if _is_spare(job, cause)]
    return [cause for cause in named if cause not in spares], spares


def _likely(job: Job, result) -> list[dict]:
    """Return what is likeliest so far where a spare is in it: no second fault of the vehicle. Else []."""
    named = [each for each in result["explanations"] if each["causes"]]
    own, spares = _parted(job, sorted(named[0]["causes"])) if named else ([], [])
    said = []
    if own and spares:
        share = percent(named[0]["probability"])
        said.append(message("evidence-likely", cause=causes.phrases(job, own), share=share))
    return said + [message("views-report-spare-likely", unit=causes.phrase(job, each)) for each in spares]


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
    places = [words.position_name(job, place) for place in tests_so_far.faulted_places(job, unit)]
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
    if len(tests_so_far.faulted_units(job, position)) > 1:
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


def sure(job: Job, result, told: dict | None):
    """Return how sure the conclusion is, and what it rests on; '' where nothing is concluded."""
    if told is None:
        return ""
    counted = len(tests_so_far.counted(job, result))
    rests = job.sort.says("views-report-rests", count=counted, heard=job.sort.self_test.whose_was_heard)
    if told["verdict"]:
        said = [message("views-report-sure", sure=percent(result["verdict"]["probability"]), rests=rests)]
        other = _instead(job, result)
        if other:
            said.append(other)
        return sentences(said)
    if told["settled"] and is_faulted(job):
        return message("views-report-clear", sure=percent(result["clear"]), rests=rests)
    return ""


def _instead(job: Job, result) -> dict | None:
    """Return what else it could be with the vehicle; None where that would be the same once more.

    What is rarer than one in a hundred only worries. What a spare was is no matter of the customer's, so an
    explanation that differs in spares alone, or that names all that is told and more, is none.
    """
    named, _ = of_the_car(job, result)
    worth_telling = [each for each in result["explanations"] if each["probability"] >= _WORTH_TELLING]
    for explanation in worth_telling if named else []:
        others = [cause for cause in explanation["causes"] if not _is_spare(job, cause)]
        if others and [cause for cause in named if cause not in others]:
            said, share = causes.phrases(job, others), percent(explanation["probability"])
            return message("views-report-else", cause=said, chance=share)
    return None


def is_faulted(job: Job) -> bool:
    """Tell whether a test that was heard showed a fault."""
    return len([test for test in job.tests if test["heard"] and test["faulted"]]) > 0
