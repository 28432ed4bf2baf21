"""Where a unit in dispute really is: what its label, read at the card, can be answered with."""

from ..facts.draft import draft
from ..messages import all_of
from ..messages import any_of
from ..messages import message
from ..state import contradictions
from ..state import stories
from ..state.job import Job
from ..words import places as all_places
from ..words import stories as told
from ..words.words import unit_name


def at_label(job: Job, expects, read, how) -> dict:
    """Say where a unit whose label was read can be; one that the question is not about is stopped."""
    if read["unit"] not in expects["units"]:
        title = "guide-scan-unknown-title" if read["unit"] is None else "guide-scan-wrong-title"
        wanted = any_of([unit_name(job.unit(each)) for each in expects["units"]])
        return {
            "outcome": "stop",
            "shown": read["shown"],
            "title": message(title, sort=job.sort.identity),
            "sentence": message("stories-scan-wrong", code=read["shown"], unit=wanted),
            "more": message("stories-scan-wrong-more", unit=wanted),
            "events": [],
        }
    read["sentence"] = message("guide-scan-this", code=read["shown"])
    read["choices"] = likely(job, read["unit"], how)
    read["others"] = others(job, read["unit"], how)
    return read


def answers(job: Job, unit: str, how: str) -> list[dict]:
    """Return where a unit can turn out to be as {"words", "events", "job"}: as it is told, then all else."""
    return likely(job, unit, how) + others(job, unit, how)


def likely(job: Job, unit: str, how: str) -> list[dict]:
    """Return the places that are told of a unit, each once; one that a phone has tests from also as past."""
    about = [story for story in _stories(job, unit) if story.unit == unit]
    found, known = [], []
    for story in about:
        if _place_key(story) in known:
            continue
        known.append(_place_key(story))
        true = [stories.key_of(each) for each in about if _place_key(each) == _place_key(story)]
        place = told.place_of(job, story)
        found.append(_answer(job, unit, how, story, message("stories-answer", place=place), true))
        offered = [[]]
        for other in about:
            tests = _tests_resting_on(job, other)
            if tests not in offered and _place_key(other) != _place_key(story):
                offered.append(tests)
                words_then = message(
                    "stories-answer-then",
                    place=place,
                    before=told.place_of(job, other),
                    tests=all_of([str(n + 1) for n in tests]),
                    count=len(tests),
                )
                found.append(_answer(job, unit, how, story, words_then, true + [stories.key_of(other)]))
    return found


def others(job: Job, unit: str, how: str) -> list[dict]:
    """Return all other places where a unit could be, on this vehicle and away from any."""
    known = [_place_key(story) for story in _stories(job, unit) if story.unit == unit]
    found = []
    spots: list = [("fitted", job.vehicle_id, position["id"]) for position in job.positions]
    spots += [(place, None, None) for place in ("out", "stock", "counter", "customer", "scrapped")]
    for spot in spots:
        if spot not in known:
            story = stories.Story(unit, spot[0], spot[1], spot[2], None)
            said = message("stories-answer", place=told.place_of(job, story))
            found.append(_answer(job, unit, how, story, said, []))
    return found


def _stories(job: Job, unit: str) -> list:
    found = []
    for contested in contradictions.places(job.state, job.facts):
        if unit in contested.units:
            for story in contested.stories + stories.told(job.state, unit):
                if story not in found:
                    found.append(story)
    return found


def _place_key(story: stories.Story) -> tuple:
    return story.place, story.vehicle, story.position


def _tests_resting_on(job: Job, story: stories.Story) -> list[int]:
    """Return the tests, from 0, that the phone which fitted a unit here made after it did."""
    number, device = stories.number_on(story, job.facts), stories.device_of(stories.event_of(story))
    if story.place != "fitted" or story.vehicle != job.vehicle_id or number < 0:
        return []
    tests = job.tests
    return [n for n in range(len(tests)) if _is_after(tests[n], number, device)]


def _is_after(test: dict, number: int, device: str) -> bool:
    return test["n"] > number and stories.device_of(test["event"]) == device


def _answer(job: Job, unit: str, how: str, story: stories.Story, said, true: list) -> dict:
    at = job.id
    if story.place == "fitted" and story.vehicle != job.vehicle_id:
        at = all_places.place_line(job.state, story.place, story.vehicle, story.position)["job"] or at
    fact = draft(
        "unit_seen",
        unit=unit,
        place=story.place if story.place != "mixed" else "out",
        position=story.position or "",
        how=how,
        settles=[key for n, key in enumerate(true) if key not in true[:n]],
    )
    return {"words": said, "events": [fact], "job": at}
