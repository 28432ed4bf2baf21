"""The report of a job for the customer: what was wrong, how that is known, what was done, what proves it.

In words of someone who has never heard of a swap test. Dates are left to the screen, which knows the
customer's calendar.
"""

from .. import phrases
from ..evidence import proof
from ..evidence import verdict
from ..state.job import Job
from ..words import causes
from ..words import words
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
        "vehicle": vehicle["name"],
        "vin": vehicle["vin"],
        "complaint": job.complaint,
        "opened_at": job.opened_at,
        "closed": job.closing,
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


def _standing(job) -> str:
    if job.is_closed():
        return "The job is finished."
    return "The job is not finished. This is what is known so far."


def _headline(job: Job, result, told) -> str:
    if told is None:
        return "Nothing has been tested yet."
    named = result["verdict"]["causes"] if result["verdict"] else []
    if named:
        if len(named) > 1:
            return (
                "Several faults were found." if _live(job, named) else "The faults were found and put right."
            )
        kind, what, _ = causes.split(named[0])
        return _WHAT[kind][0 if _live(job, named) else 1].format(
            _group_words(job, kind, what),
            unit=job.sort.unit,
            units=job.sort.units,
            full_names=job.sort.full_names,
            state=job.sort.obstruction.state,
        )
    if told["settled"]:
        return "The fault is gone." if _faulted(job) else "No test has shown a fault."
    return "The cause is not certain yet." if _faulted(job) else "No test has shown a fault."


# kind of cause -> (headline while it is there, headline once it is dealt with)
_WHAT = {
    "unit": (
        "One of the {full_names} is bad.",
        "One of the {full_names} was bad and has been taken out.",
    ),
    "circuit": ("The wiring at {} is at fault.", "The wiring at {} was at fault and has been repaired."),
    "blocked": ("The {unit} at {} is {state}.", "The {unit} at {} was {state}."),
    "feed": ("The supply of the {} {units} is at fault.", "The supply of the {} {units} was at fault."),
    "control": ("The control unit is at fault.", "The control unit was at fault."),
}


def _group_words(job, kind, what) -> str:
    return words.position_name(job, what) if kind in ("circuit", "blocked") else what


def _live(job: Job, named) -> bool:
    return len([cause for cause in named if causes.is_live(job, cause)]) > 0


def _faulted(job) -> bool:
    return len([test for test in job.tests if test["heard"] and test["faulted"]]) > 0


def _found(job: Job, result, told) -> list[str]:
    """Return what was found and how that is known, a sentence or two for each cause."""
    if told is None:
        return []
    said = _first_fault(job)
    if not result["verdict"]:
        return said + [told["detail"]] if told["detail"] else said
    for cause in sorted(result["verdict"]["causes"]):
        kind, what, _ = causes.split(cause)
        said.append(_EXPLAINED[kind](job, cause, what))
    return said


def _first_fault(job) -> list[str]:
    for test in job.tests:
        if test["heard"] and test["faulted"]:
            names = [words.position_name(job, position) for position in test["faulted"]]
            return ["The control unit's self-test showed a fault at {}.".format(phrases.listed(names))]
    return []


def _unit_found(job: Job, cause, unit) -> str:
    name = phrases.sentence_case(causes.phrase(job, cause))
    places = [words.position_name(job, place) for place in verdict.faulted_places(job, unit)]
    if len(places) > 1:
        return (
            "{} was moved from {} to {}, and the fault moved along with it. A fault in the wiring would "
            "have stayed behind. So the {} itself is bad.".format(name, places[0], places[-1], job.sort.unit)
        )
    return "{} is bad: that is what the tests leave as the explanation.".format(name)


def _circuit_found(job: Job, cause, position) -> str:
    name = words.position_name(job, position)
    if len(verdict.faulted_units(job, position)) > 1:
        return (
            "Another {} was fitted at {}, and the fault stayed there. So the {} is good; the fault "
            "is in the connector, the wire or the control unit's input of that position."
        ).format(job.sort.unit, name, job.sort.unit)
    return "The fault is in the connector, the wire or the control unit's input at {}.".format(name)


def _blocked_found(job: Job, cause, position) -> str:
    return "{} at {} kept a good {} from working.".format(
        phrases.sentence_case(job.sort.obstruction.for_customer),
        words.position_name(job, position),
        job.sort.unit,
    )


def _feed_found(job: Job, cause, group) -> str:
    return "The {} {} share one supply and ground. The fault is there, not in the {}.".format(
        group, job.sort.units, job.sort.units
    )


def _control_found(job: Job, cause, what) -> str:
    return "The {} and their wires are good. The fault is in the control unit or its own supply.".format(
        job.sort.units
    )


_EXPLAINED = {
    "unit": _unit_found,
    "circuit": _circuit_found,
    "blocked": _blocked_found,
    "feed": _feed_found,
    "control": _control_found,
}


def _sure(job, result, told) -> str:
    if told is None:
        return ""
    ignored = {entry["test"]: True for entry in result["ignored"]}
    counted = len([n for n in range(len(job.tests)) if n not in ignored])
    rests = "worked out from {} {}".format(
        "1 self-test" if counted == 1 else "{} self-tests".format(counted), job.sort.self_test.whose_was_heard
    )
    if told["verdict"]:
        said = "How sure this is: {}, {}.".format(told["confidence_words"], rests)
        return said + (
            " What else it could be: {}.".format(_lower(told["else_words"])) if told["else_words"] else ""
        )
    if told["settled"] and _faulted(job):
        return "That nothing is left to fix: {} sure, {}.".format(told["clear_words"], rests)
    return ""


def _lower(text) -> str:
    return text[:1].lower() + text[1:]


def _proof(job: Job, result, told) -> list[str]:
    """Return what shows that the repair holds, or that nothing shows it yet."""
    if told is None:
        return []
    said = []
    clean = proof.clean_in_a_row(job, result)
    if clean and _faulted(job):
        said.append(
            "{} without any fault at the end. That nothing is left to fix: {} sure.".format(
                "1 self-test" if clean == 1 else "{} self-tests in a row".format(clean), told["clear_words"]
            )
        )
    if job.walk_check:
        walk, names = job.sort.walk, [words.position_name(job, position) for position in job.stayed_quiet]
        heard = walk.missed.format(phrases.listed(names)) if names else walk.report_all_well
        said.append("{}: {}.".format(walk.report_name, heard))
    return said or ["Nothing proves a repair yet."]


def _cautions(job: Job, result, told) -> list[str]:
    said = []
    if told and not told["settled"] and _faulted(job):
        said.append("The repair is not proven. Do not rely on the {} until it is.".format(job.sort.system))
    if job.comes_and_goes:
        said.append(
            "This fault came and went. If it shows again, note the weather and what you did, and come back."
        )
    if [unit for unit in job.in_hand()]:
        said.append("Not every {} is back in its place yet.".format(job.sort.unit))
    said.append(job.sort.cautions[job.sort.caution_in_report].sentence)
    return said


def _people(job) -> list[str]:
    names = []
    for entry in job.history:
        if entry["actor"] and entry["actor"] not in names:
            names.append(entry["actor"])
    return names
