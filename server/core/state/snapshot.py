"""The folded state as text, in pieces: a phone keeps them, so that its next start need not fold it all.

A snapshot is a cache of a fold and no more: the log decides, and whoever keeps one drops it when log or core
have changed. Its head is everything but the jobs that are closed; each of those is a piece of its own.
JSON as the host's `json` makes it, entity by entity, and the head in parts: MicroPython makes a long text
slowly in one go, and whoever taps meanwhile comes in between.
"""

import json
from collections import namedtuple

from .jobs_in_part import JobsInPart
from .state import State

Text = namedtuple("Text", ("text",))  # JSON, ready to be handed out as it is

_BY_ID = ("vehicles", "units")
_AT_ONCE = 200  # of one sort in a part of a head: the more text MicroPython makes in one go, the slower
_SMALL = ("codes", "printed", "learned", "mixed", "aliases", "conflicts", "not_understood")


def closed_in_memory(state) -> list[str]:
    """Return the ids of the closed jobs that are in memory, in order of id."""
    jobs = state.jobs.jobs if isinstance(state.jobs, JobsInPart) else state.jobs
    return sorted([identity for identity in jobs if jobs[identity]["closed"]])


def pieces(state, identities: list[str]) -> Text:
    """Return {"jobs": {id: job}} as text."""
    return Text(_joined({"jobs": _object({identity: state.jobs[identity] for identity in identities})}))


def head(fold, part: int) -> Text:
    """Return a part of {"of": how many parts, "count": entries, "head": fields} as text, counted from 0.

    In the head is everything but the closed jobs; of those their lines are in it. Where several parts have a
    field, it is an object and each has some of it.
    """
    state = fold.state
    lines = [identity for identity in sorted(state.jobs) if state.job_line(identity)["closed"]]
    names = {"vehicles": sorted(state.vehicles), "units": sorted(state.units), "lines": lines}
    slices = []
    for name in sorted(names):
        slices.extend(
            [(name, names[name][at : at + _AT_ONCE]) for at in range(0, len(names[name]), _AT_ONCE)]
        )
    answer = {"of": json.dumps(len(slices) + 1), "count": json.dumps(fold.count())}
    if part:
        name, identities = slices[part - 1]
        answer["head"] = _joined({name: _object(_some(state, name, identities))})
        return Text(_joined(answer))
    fields = {name: _text(getattr(state, name)) for name in _SMALL}
    for name in names:
        fields[name] = "{}"
    closed = {identity: True for identity in lines}
    fields["jobs"] = _object({each: state.jobs[each] for each in state.jobs if each not in closed})
    fields["withdrawn"] = _object(fold.corrections.withdrawn)
    fields["righted"] = _object(fold.corrections.righted)
    fields["count"] = answer["count"]
    answer["head"] = _joined(fields)
    return Text(_joined(answer))


def _some(state, name: str, identities: list[str]) -> dict:
    if name == "lines":
        return {identity: state.kept_line(identity) for identity in identities}
    entities = getattr(state, name)
    return {identity: entities[identity] for identity in identities}


def join(whole: dict, part: dict) -> None:
    """Put a further part of a head to what there is of it."""
    for name in part:
        if name in whole:
            whole[name].update(part[name])
        else:
            whole[name] = part[name]


def restored(value: dict) -> tuple:
    """Return (state, entries taken back, entries put right, how many it is folded of) of a head."""
    state = State()
    for name in _BY_ID + _SMALL:
        setattr(state, name, value[name])
    for unit in state.units.values():
        state.index.add_unit(unit)
    state.index.renew_conflicts(state.conflicts)
    state.jobs = JobsInPart(value["jobs"], value["lines"])
    return state, value["withdrawn"], value["righted"], value["count"]


def unload(state, identities: list[str]) -> None:
    """Take jobs out of memory whose pieces are kept."""
    if not isinstance(state.jobs, JobsInPart):
        state.jobs = JobsInPart(state.jobs, {})
    for identity in identities:
        if identity in state.jobs.jobs:
            state.jobs.unload(identity)


def load(state, jobs: dict) -> None:
    """Take jobs into memory that only had a line; others are as they are."""
    for identity in jobs:
        if isinstance(state.jobs, JobsInPart) and identity in state.jobs.lines:
            state.jobs[identity] = jobs[identity]


def beside(state, identities: list[str]) -> list[str]:
    """Return these jobs and those that a sensor of theirs was on, as far as they are not in memory."""
    wanted = {identity: True for identity in identities}
    for unit in sorted(state.units):
        jobs = state.units[unit]["jobs"]
        if [job for job in jobs if job in identities]:
            for job in jobs:
                wanted[job] = True
    return [job for job in sorted(wanted) if job in state.jobs.lines]


def _text(value) -> str:
    """Return a dict or a list as text, item by item."""
    if isinstance(value, dict):
        return _object(value)
    return "[" + ",".join([json.dumps(item) for item in value]) + "]"


def _object(values: dict) -> str:
    return _joined({name: json.dumps(values[name]) for name in values})


def _joined(parts: dict) -> str:
    return "{" + ",".join([json.dumps(name) + ":" + parts[name] for name in parts]) + "}"
