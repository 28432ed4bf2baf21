"""Who else is at a job: what a phone says of its own step, in ids, and what is said of the others, in words.

A phone says it while somebody looks at the job; no entry is made of it.
"""

from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..words import words

# What a step is to others, by the beginning of its id; any other one is work on the job.
_STEPS = {
    "cautions": "look",
    "look": "look",
    "test": "test",
    "sounder": "test",
    "photo": "photo",
    "clean": "clean",
    "plug_back": "plug",
    "measure": "meter",
    "wiring": "meter",
    "replace": "replace",
    "move": "choose",
    "thinking": "choose",
    "walk": "walk",
    "home": "finish",
    "where_to": "finish",
    "close": "finish",
}
_AT_HAND = ("take", "pull", "fit", "lock", "seat")
# In one line on the narrowest phone; the others are counted.
_MOST_NAMED = 1
_MOST_POSITIONS = 24


def doing(job: Job, step: dict) -> dict:
    """Return {"what", "positions"}: what somebody does whose phone shows `step`, and where."""
    what = _STEPS.get(step["id"].split(".")[0], "")
    if step["id"] in _AT_HAND:
        what = job.move["move"] if job.move else "home"
    return {"what": what, "positions": _positions(job, step, what)}


def _positions(job: Job, step: dict, what: str) -> list:
    """Return the positions that a step is at, else those of the move under way, in the job's order."""
    expects = step["expects"]
    if what in ("", "look", "test", "choose", "walk", "finish", "photo"):
        return []
    if expects.get("position"):
        return [expects["position"]]
    wanted = expects.get("positions") or (job.move["fitted"] if job.move else {})
    return [each["id"] for each in job.positions if each["id"] in wanted][:_MOST_POSITIONS]


def told(job: Job, people: list) -> object:
    """Return in one line what the others do: `people` are {"name", "doing", "positions"}; "" for nobody."""
    lines = [_line(job, person) for person in people[:_MOST_NAMED]]
    if len(people) > _MOST_NAMED:
        left = people[_MOST_NAMED:]
        lines.append(message("views-others-more", count=len(left), person=left[0]["name"]))
    return sentences(lines) if lines else ""


def _line(job: Job, person: dict) -> dict:
    """Return what one of the others does; of a position that the job does not have nothing is said."""
    places = [
        words.position_name(job, each["id"]) for each in job.positions if each["id"] in person["positions"]
    ]
    if places:
        return message(
            "views-others-at", person=person["name"], what=person["doing"], positions=all_of(places)
        )
    return job.sort.says("views-others", person=person["name"], what=person["doing"])
