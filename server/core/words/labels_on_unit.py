"""The labels on a unit, and what a person has to look at when there are too many."""

from ..codes.labels import shown
from ..facts import labelling
from ..messages import all_of
from ..messages import message
from ..state.job import Job
from ..state.unit import Unit


def carried_view(state, identity: str) -> dict:
    """Return {"labels": [{"code", "shown"}], "trouble"}: what can be taken out of use, and why one should."""
    unit = state.units[identity]
    codes = labelling.carried(unit)
    trouble = _double(Unit(state, identity)) if unit["also"] else ""
    for conflict in _open(state, labelling.SHARED):
        if conflict["unit"] == identity:
            codes.append(conflict["code"])
            trouble = _shared(state, conflict)
    return {"labels": [{"code": code, "shown": shown(code)} for code in codes], "trouble": trouble}


def label_troubles(job: Job) -> list[dict]:
    """Return a sentence for each label of a job that somebody has to look at."""
    sentences = [
        _shared(job.state, each) for each in _open(job.state, labelling.SHARED) if each["job"] == job.id
    ]
    for conflict in _open(job.state, labelling.DOUBLE):
        sentence = _double(job.unit(conflict["unit"]))
        if conflict["job"] == job.id and sentence not in sentences:
            sentences.append(sentence)
    return sentences


def _open(state, about: str) -> list[dict]:
    return [each for each in state.conflicts if each["open"] and each["about"] == about]


def _double(unit: Unit) -> dict:
    names = [shown(code) for code in labelling.carried(unit.facts)]
    return message("custody-label-double", codes=all_of(names), sort=unit.sort.identity)


def _shared(state, conflict: dict) -> dict:
    sort = Unit(state, conflict["unit"]).sort.identity
    return message("custody-label-shared", sort=sort, code=shown(conflict["code"]))
