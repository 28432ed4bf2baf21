"""Causes as the reasoning names them, and what they mean for the job: words, and what would fix them."""

from ..infer.causes_named import together
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


def phrase(job: Job, cause: str) -> str:
    """Return a cause as part of a sentence, e.g. 'sensor K7F-3M' or 'the wiring at right outer'."""
    kind, what, generation = split(cause)
    again = " (after the repair)" if generation > 1 and kind != "blocked" else ""
    if kind == "unit":
        unit = job.unit(what)
        return "{} {}".format(job.sort.unit, unit_name(unit)) if unit.is_labelled() else unit_name(unit)
    if kind == "circuit":
        return "the wiring at {}{}".format(words.position_name(job, what), again)
    if kind == "blocked":
        return "{} at {}".format(job.sort.obstruction.words, words.position_name(job, what))
    if kind == "feed":
        return "the supply or ground of the {} {}{}".format(what, job.sort.units, again)
    return "the control unit" + again


def phrases(job: Job, named: list) -> str:
    """Return several causes as part of a sentence."""
    return together([phrase(job, cause) for cause in sorted(named)], job.sort)


def fix(job: Job, cause: str) -> str:
    """Return what to do about a cause, as a sentence."""
    kind, what, _ = split(cause)
    if kind == "unit":
        return "Replace {}.".format(phrase(job, cause))
    if kind == "circuit":
        return "Look for it in the connector, the wire or the control-unit channel of {}.".format(
            words.position_name(job, what)
        )
    if kind == "blocked":
        return "Clean {} and {}.".format(words.position_name(job, what), job.sort.obstruction.check)
    if kind == "feed":
        return "Measure the supply and ground that the {} {} share.".format(what, job.sort.units)
    return "Check the control unit's own supply, ground and plug before you suspect the unit itself."


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
