"""Causes as the reasoning names them, and what they mean for the job: words, and what would fix them."""

from ..infer import causes_named
from ..infer.causes_named import together
from ..messages import message
from ..state.job import Job
from . import words
from .words import unit_name


def split(cause: str) -> tuple:
    """Return (kind, what, generation) of e.g. `circuit:rear-left-outer#2`; generation from 1."""
    base, _, generation = cause.partition("#")
    kind, _, what = base.partition(":")
    return kind, what, int(generation) if generation else 1


def is_live(job: Job, cause: str) -> bool:
    """Tell whether a cause would still act in a test made now (design: 'clear')."""
    kind, what, generation = split(cause)
    if kind == "unit":
        return job.unit(what).is_fitted_on(job.vehicle_id)
    if kind == "blocked":
        return not _handled(job, what)
    base = cause.partition("#")[0]
    repairs = job.repairs_of(base)
    return generation == repairs + 1


def phrase(job: Job, cause: str):
    """Return a cause as part of a sentence, e.g. 'sensor K7F-3M' or 'the wiring at right outer'."""
    kind, what, generation = split(cause)
    sort = job.sort
    if kind == "unit":
        unit = job.unit(what)
        return causes_named.labelled(sort, unit_name(unit)) if unit.is_labelled() else unit_name(unit)
    if kind == "circuit":
        return causes_named.circuit(sort, words.position_name(job, what), generation)
    if kind == "blocked":
        return causes_named.blocked(sort, words.position_name(job, what))
    if kind == "feed":
        return causes_named.feed(sort, what, generation)
    return causes_named.control(generation)


def phrases(job: Job, named: list) -> dict:
    """Return several causes as part of a sentence."""
    return together([phrase(job, cause) for cause in sorted(named)])


def fix(job: Job, cause: str) -> dict:
    """Return what to do about a cause, as a sentence."""
    kind, what, _ = split(cause)
    if kind == "unit":
        return message("causes-fix-unit", cause=phrase(job, cause))
    if kind == "circuit":
        return job.sort.says("causes-fix-circuit", position=words.position_name(job, what))
    if kind == "blocked":
        position = words.position_name(job, what)
        return message("causes-fix-blocked", position=position, check=job.sort.obstruction.check)
    if kind == "feed":
        return message("causes-fix-feed", group=causes_named.group(what), sort=job.sort.identity)
    return message("causes-fix-control")


def _handled(job: Job, position) -> bool:
    """Tell whether a position was cleaned, or its unit changed, since its last counted fault."""
    unit_now = job.fitted_at(position)
    handled = position in job.cleaned_since_test
    for test in reversed(job.tests):
        if handled or test["fitted"].get(position) != unit_now:
            return True
        if position in test["faulted"] and test["heard"] and position not in test["disputed"]:
            return False
        handled = position in test["cleaned"]
    return handled
