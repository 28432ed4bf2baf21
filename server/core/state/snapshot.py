"""The folded state as text, in pieces: a phone keeps them, so that its next start need not fold it all.

A snapshot is a cache of a fold and no more: the log decides, and whoever keeps one drops it when log or core
have changed. Its head is everything but the jobs that are closed; each of those is a piece of its own.
JSON as the host's `json` makes it, entity by entity: MicroPython makes a long text slowly in one go.
"""

import json
from collections import namedtuple

from .jobs_in_part import JobsInPart
from .state import State

Text = namedtuple("Text", ("text",))  # JSON, ready to be handed out as it is

_BY_ID = ("vehicles", "units")
_SMALL = ("codes", "printed", "mixed", "aliases", "conflicts", "not_understood")


def closed_in_memory(state) -> list[str]:
    """Return the ids of the closed jobs that are in memory, in order of id."""
    jobs = state.jobs.jobs if isinstance(state.jobs, JobsInPart) else state.jobs
    return sorted([identity for identity in jobs if jobs[identity]["closed"]])


def pieces(state, identities: list[str]) -> Text:
    """Return {"jobs": {id: job}} as text."""
    return Text(_joined({"jobs": _object({identity: state.jobs[identity] for identity in identities})}))


def head(fold) -> Text:
    """Return all but the closed jobs as the text of one object; of those their lines are in it."""
    state = fold.state
    jobs, lines = {}, {}
    for identity in state.jobs:
        line = state.job_line(identity)
        if line["closed"]:
            lines[identity] = line
        else:
            jobs[identity] = state.jobs[identity]
    parts = {name: _object(getattr(state, name)) for name in _BY_ID}
    for name in _SMALL:
        parts[name] = _text(getattr(state, name))
    parts["jobs"] = _object(jobs)
    parts["lines"] = _object(lines)
    parts["withdrawn"] = _object(fold.withdrawn)
    parts["count"] = json.dumps(fold.count())
    return Text(_joined(parts))


def restored(value: dict) -> tuple:
    """Return (state, withdrawn, how many entries it is folded of) of a head."""
    state = State()
    for name in _BY_ID + _SMALL:
        setattr(state, name, value[name])
    for unit in state.units.values():
        state.index.add_unit(unit)
    state.index.renew_conflicts(state.conflicts)
    state.jobs = JobsInPart(value["jobs"], value["lines"])
    return state, value["withdrawn"], value["count"]


def unload(state, identities: list[str]) -> None:
    """Take jobs out of memory whose pieces are kept."""
    if not isinstance(state.jobs, JobsInPart):
        state.jobs = JobsInPart(state.jobs, {})
    for identity in identities:
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
