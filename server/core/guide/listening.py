"""Listening at the positions: what is asked, and the answers there are. It can be done at any step."""

from ..facts.draft import draft
from ..parts import cautions
from ..state.job import Job
from ..words import words


def listening(job: Job) -> dict | None:
    """Return what the screen asks, None where the sort makes no noise or nothing is plugged in.

    {"text", "cautions", "answers": [{"id", "words"}], "rows": [{"position", "words", "heard"}], "event"};
    `heard` is the answer that stands for the unit that sits there now, "" for none, `event` the fact with
    no position in it.
    """
    if job.is_closed() or not job.sort.listen:
        return None
    rows = []
    for position in job.positions:
        place = position["id"]
        unit = job.fitted_at(place)
        if unit and place not in job.plugged_off and not job.unit(unit).is_disputed():
            name = words.called(job, position)
            rows.append({"position": place, "words": name, "heard": _heard(job, place, unit)})
    if not rows:
        return None
    listen = job.sort.listen
    return {
        "text": listen.text,
        "cautions": cautions.for_step(job.sort, "listen", job.cautions_read),
        "answers": [{"id": "ticks", "words": listen.ticks}, {"id": "silent", "words": listen.silent}],
        "rows": rows,
        "event": draft("listened", ticks=[], silent=[]),
    }


def _heard(job: Job, place: str, unit: str) -> str:
    """Return what was last heard of a unit at a position, as long as nothing was repaired since."""
    for entry in reversed(job.listened):
        if place in entry["heard"] and entry["fitted"][place] == unit:
            same = entry["tests_before"] == len(job.tests) and entry["repaired"] == job.repaired_since_test
            return entry["heard"][place] if same else ""
    return ""
