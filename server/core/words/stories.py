"""What contradicts, in words: who entered what, and what it is called until it is settled."""

from ..messages import message
from ..state import stories
from ..state.contradictions import Contested
from ..state.job import Job
from . import places
from . import results
from . import words


def lines(job: Job, contested: Contested) -> list[dict]:
    """Return the stories about a unit as {"at", "actor", "words"}; on record before any: `at` None."""
    kinds = {"{}:{}".format(e["device"], e["seq"]): e for e in job.history}
    found = []
    for story in contested.stories:
        move = story.move
        entry = kinds.get(stories.event_of(story))
        found.append(
            {
                "at": move["at"] if move else None,
                "actor": move["actor"] if move else "",
                "words": _words(job, story, entry),
            }
        )
    return found


def heading(job: Job, contested: Contested) -> dict:
    """Return what the contradiction is, as a heading."""
    told = contested.stories
    at = {(s.place, s.vehicle, s.position): True for s in told}
    if len({s.unit: True for s in told}) > 1 and len(at) == 1:
        place = words.position_name(job, told[0].position)
        return message("stories-two-units", sort=job.sort.identity, position=place)
    name = words.unit_name(job.unit(contested.unit))
    return message("stories-two-places" if len(at) > 1 else "stories-where", unit=name)


def _words(job: Job, story: stories.Story, entry: dict | None) -> dict:
    """Return what was done, as it follows on who did it."""
    name = words.unit_name(job.unit(story.unit))
    seen = entry is not None and entry["kind"] == "unit_seen"
    if entry and seen and entry["data"].get("unit") != story.unit:
        other = words.unit_name(job.unit(entry["data"]["unit"]))
        where = words.position_name(job, entry["data"]["position"])
        return message("stories-found", unit=other, place=message("stories-at", position=where))
    if entry and entry["kind"] == "unit_pulled":
        where = words.position_name(job, entry["data"]["position"])
        return message("stories-pulled", unit=name, position=where)
    if entry and entry["kind"] == "units_mixed":
        return message("stories-mixed", unit=name)
    if story.move is None or seen:
        known = "stories-found" if seen else "stories-on-record"
        return message(known, unit=name, place=place_of(job, story))
    if story.place == "fitted":
        return message("stories-fitted", unit=name, place=place_of(job, story))
    return message("stories-put", unit=name, place=story.place)


def place_of(job: Job, story: stories.Story) -> dict:
    """Return the place of a story, as the end of 'it is ...'; the vehicle is named where it is another."""
    if story.place == "fitted" and story.vehicle == job.vehicle_id:
        return message("stories-at", position=words.position_name(job, story.position))
    return places.place_line(job.state, story.place, story.vehicle, story.position)["words"]


def test_line(job: Job, entry: dict) -> dict:
    """Return what a test read, as it follows on who entered it."""
    faulted = entry["data"]["faulted"]
    if not entry["data"]["heard"]:
        return message("stories-test-unheard", proof=job.sort.self_test.not_heard)
    if not faulted:
        return message("stories-test-clean")
    return message("stories-test-fault", positions=results.places(job, faulted))
