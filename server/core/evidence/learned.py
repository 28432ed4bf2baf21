"""What the yard's own jobs taught, as a job stands on it: rates, minutes, and how far each may be wrong.

What no rate can be, or what an older core does not know, is left out: another version may have said it.
Jobs on the sort of part that came first teach, and they alone go by it: it says nothing of another sort.
"""

from ..facts.draft import draft
from ..facts.learned import MINUTES
from ..facts.learned import RATES
from ..infer import case
from ..infer.variations import CLASSES
from ..infer.variations import READINGS
from ..parts import sorts
from ..parts.sort import Sort
from ..state.job import Job

KINDS = (RATES, MINUTES)
_PPM = 1000000
# As far as it is believed, in hundredths: less doubt than half as much again no number of jobs can lift.
_LEAST, _MOST = 150, 300


def teaches(sort: Sort) -> bool:
    """Tell whether jobs on a sort of part teach, and go by what they taught."""
    return sort is sorts.PARKING_SENSOR


def _said(job: Job, kind: str) -> dict:
    return job.learned(kind) if teaches(job.sort) else {}


def rates(job: Job) -> dict:
    """Return the rates (0 to 1) that a job has as learned."""
    said = _said(job, RATES).get("rates_ppm", {})
    return {name: said[name] / _PPM for name in sorted(said) if name in case.RATES and 0 < said[name] < _PPM}


def doubt(job: Job) -> dict:
    """Return the factor by which each class may be wrong, as a case has it: {"doubt": ...}, {} by default."""
    said = _said(job, RATES).get("doubts_x100", {})
    found = {name: min(max(said[name], _LEAST), _MOST) / 100 for name in CLASSES + READINGS if name in said}
    return {"doubt": found} if found else {}


def minutes(job: Job) -> dict:
    """Return the minutes that a job has as learned, in the form of a case."""
    said = _said(job, MINUTES).get("minutes_x100", {})
    return {name: said[name] / 100 for name in sorted(said) if name in case.MINUTES and said[name] <= 60000}


def reach(job: Job, position: str) -> int | None:
    """Return the learned minutes until a hand is on the unit at a position, or None."""
    said = _said(job, MINUTES).get("reach_x100", {}).get(position)
    return None if said is None else (said + 50) // 100


def opens_with(state, sort: Sort) -> list[dict]:
    """Return what is recorded with the opening of a job on a sort of part: what the yard has taken."""
    if not teaches(sort):
        return []
    return [_again(kind, state.learned[kind]) for kind in KINDS if kind in state.learned]


def not_on(job: Job) -> list[dict]:
    """Return the drafts by which a job takes what the yard has taken and it has not."""
    drafts = []
    for each in opens_with(job.state, job.sort):
        known = job.learned(each["kind"])
        if [name for name in each["data"] if known.get(name) != each["data"][name]]:
            drafts.append(each)
    return drafts


def _again(kind: str, said: dict) -> dict:
    return draft(kind, **{name: said[name] for name in said if name != "event"})
