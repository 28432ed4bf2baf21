"""The report of a job for the customer: what was wrong, how that is known, what was done, what proves it.

In words of someone who has never heard of a swap test. Dates are left to the screen, which knows the
customer's calendar.
"""

from ..evidence import proof
from ..evidence import retaken
from ..evidence import verdict
from ..facts.evidence import brought_out
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
from ..words.people import who
from . import report_found
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
        "found": report_found.found(job, result, told),
        "sure": report_found.sure(job, result, told),
        "photos": report_photos.before_and_after(job),
        "trail": trail.trail(job, result),
        "done": report_work.done(job),
        "replaced": summary.replaced(job),
        "proof": _proof(job, result, told),
        "cautions": _cautions(job, told),
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
    ends = [each for each in job.history if each["kind"] == "job_closed" and each["at"] == closing["at"]]
    by = [_who(job, each) for each in ends]
    return {"at": closing["at"], "actor": by[-1] if by else closing["actor"], "note": note}


def _standing(job) -> dict:
    if not job.is_closed():
        return message("views-report-unfinished")
    return message("views-report-unrepaired" if "why" in job.closing else "views-report-finished")


def _headline(job: Job, result, told) -> dict:
    if told is None:
        return message("views-report-untested")
    named, spares = report_found.of_the_car(job, result)
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
    if not report_found.is_faulted(job):
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


def _proof(job: Job, result, told) -> list[dict]:
    """Return what shows that the repair holds, or that nothing shows it yet."""
    if told is None:
        return []
    said = []
    clean = proof.clean_in_a_row(job, result)
    if clean and report_found.is_faulted(job):
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
                    warm=brought_out(reading["provoked"]),
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


def _cautions(job: Job, told) -> list:
    said = []
    if told and report_found.is_faulted(job) and (not told["settled"] or retaken.owed(job)):
        said.append(message("views-report-not-proven", sort=job.sort.identity))
    if job.comes_and_goes:
        said.append(message("views-report-came-and-went"))
    if [unit for unit in job.in_hand()]:
        said.append(message("views-report-not-back", sort=job.sort.identity))
    said.append(job.sort.cautions[job.sort.caution_in_report].sentence)
    return said


def _people(job) -> list:
    names = []
    for entry in job.history:
        name = _who(job, entry)
        if entry["actor"] and name not in names:
            names.append(name)
    return names


def _who(job, entry: dict) -> str | dict:
    return who(job.state, "{}:{}".format(entry["device"], entry["seq"]), entry["actor"])
