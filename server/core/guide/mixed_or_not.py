"""Whether sensors got mixed up at all, where another phone went on with them as planned: settled by a tap.

Their labels settle nothing: whoever says that they got mixed up relies on no old one. So one of the two
stories is taken back, with the fresh labels if it is the mix-up's.
"""

from collections import namedtuple

from ..facts.draft import draft
from ..facts.mixups import body_ids
from ..messages import all_of
from ..messages import message
from ..state import stories
from ..state.contradictions import Contested
from ..state.job import Job
from ..state.state import MIXED
from ..words import stories as told
from ..words.people import who
from ..words.words import unit_name

# `units` are all in doubt by it, those with fresh labels too.
Asked = namedtuple("Asked", ("heading", "lines", "choices", "units"))

# What the trail of a body holds as long as nothing but a label was put on it.
_UNTOUCHED = ("mixed", "labelled")


def asked(job: Job, contested: Contested) -> Asked | None:
    """Return what is asked about the units of a mix-up, None where the contradiction is about none."""
    event, units = _mixup(job, contested)
    others = _told_otherwise(job, event, units)
    if not others:
        return None
    names = all_of([unit_name(job.unit(each)) for each in units])
    choices = [_choice(job, "stories-mixed-yes", _entries_of(job, others), "mixed-by-then")]
    labels = _labels(job, event, units)
    if labels is not None:
        choices.append(_choice(job, "stories-mixed-no", [event] + labels, "not-mixed"))
    lines = [_line(job, event, units[0])] + told.lines(job, others[::-1])
    return Asked(message("stories-mixed-title", units=names), lines, choices, units + _bodies(job, event))


def _mixup(job: Job, contested: Contested) -> tuple:
    """Return the identity of the entry that says that a unit got mixed up, and all units in doubt by it."""
    state, unit = job.state, job.state.units[contested.unit]
    if unit["place"] == MIXED:
        entry = state.mixed[unit["mixed"]]
        return entry["event"], sorted([each for each in entry["open"] if state.units[each]["claims"]])
    for story in contested.stories:
        if story.unit == contested.unit and story.move and story.move["kind"] == "units_mixed":
            event = stories.event_of(story)
            return event, [each for each in state.disputed(job.id) if event in _entries(state, each)]
    return "", []


def _entries(state, unit: str) -> list[str]:
    return [stories.event_of(each) for each in stories.told(state, unit)]


def _told_otherwise(job: Job, event: str, units: list[str]) -> list:
    """Return what else was done with them, the latest first: nothing rests on that."""
    found = []
    for unit in units:
        for story in stories.told(job.state, unit):
            if story.unit == unit and story.move and stories.event_of(story) != event:
                found.append((stories.number_on(story, job.facts), len(found), story))
    return [each[2] for each in sorted(found, key=lambda each: (each[0], each[1]))][::-1]


def _entries_of(job: Job, others: list) -> list[str]:
    """Return the entries that tell stories, each once, a further mix-up with the labels of its own."""
    found = []
    for story in others:
        event = stories.event_of(story)
        if event not in found:
            found.append(event)
            found.extend(_labels(job, event, []) or [] if story.move["kind"] == "units_mixed" else [])
    return found


def _labels(job: Job, event: str, units: list[str]) -> list[str] | None:
    """Return the entries that put fresh labels on their bodies, None once more was done with these."""
    state, found = job.state, []
    for body in _bodies(job, event):
        for move in state.units[body]["moves"]:
            if move["what"] not in _UNTOUCHED and move.get("kind") != "unit_labelled":
                return None
            if move["event"] != event and move["event"] not in found:
                found.append(move["event"])
    told_apart = [each for each in units if state.units[each]["place"] == MIXED]
    entry = state.mixed[state.units[told_apart[0]]["mixed"]] if told_apart else None
    return None if entry and len(entry["open"]) < entry["count"] else found


def _bodies(job: Job, event: str) -> list[str]:
    """Return the ids that got a label since they got mixed up; none names more than the job has units."""
    state = job.state
    return [body for body in body_ids(event, len(state.units_of(job.id))) if body in state.units]


def _choice(job: Job, words: str, entries: list[str], reason: str) -> dict:
    """Return an answer that takes entries back."""
    taken_back = []
    for entry in entries:
        device, _, seq = entry.rpartition(":")
        taken_back.append(draft("corrected", device=device, seq=int(seq), reason=reason))
    return {"words": message(words), "events": taken_back, "job": job.id}


def _line(job: Job, event: str, unit: str) -> dict:
    move = [each for each in job.state.units[unit]["moves"] if each["event"] == event][-1]
    return {
        "at": move["at"],
        "actor": who(job.state, event, move["actor"]),
        "words": message("stories-mixed", unit=unit_name(job.unit(unit))),
    }
