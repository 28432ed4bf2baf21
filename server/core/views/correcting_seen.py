"""Where a unit was seen, as it can be entered anew: place and position are one answer.

What settled a contradiction names the true stories too, and these go with the place: it is answered as at the
card, from the job as it stood before.
"""

from ..guide import true_place
from ..messages import message
from ..state.job import Job
from ..words import words
from .correcting_options import PLACES

_SETS = ("place", "position", "settles")


def place_field(job: Job | None, data: dict, then) -> dict:
    """Return the field of a place; what an option `sets` is put into the data together.

    `then()` is the job as it stood before the entry; asked for only where that settled a contradiction.
    """
    if job and "settles" in data:
        options = _told(then(), job.id, data)
    else:
        options = [_option(words.place_name(place), data, place, "") for place in PLACES]
        if job:
            options += [
                _option(words.called(job, each), data, "fitted", each["id"]) for each in job.positions
            ]
    return {
        "name": "place",
        "words": message("views-correct-field", field="place"),
        "form": "one",
        "value": _key(_set_by(data)),
        "options": options,
    }


def _told(job: Job, identity: str, data: dict) -> list[dict]:
    """Return what the card asked, as options; a place on another vehicle is an entry of another job."""
    answers = true_place.answers(job, data["unit"], data["how"])
    found = []
    for answer in answers:
        said = answer["events"][0]["data"]
        if answer["job"] == identity:
            found.append({"value": _key(_set_by(said)), "words": answer["words"], "sets": _set_by(said)})
    return found


def _option(said, data: dict, place: str, position: str) -> dict:
    sets = _set_by(dict(data, place=place, position=position))
    return {"value": _key(sets), "words": said, "sets": sets}


def _set_by(data: dict) -> dict:
    return {name: data[name] for name in _SETS if name in data}


def _key(sets: dict) -> str:
    """Return one text for what an option sets: a form compares by it."""
    return " ".join([sets["place"], sets["position"]] + sorted(sets.get("settles", [])))
