"""What contradicts, in words: who entered what, and what it is called until it is settled."""

from ..messages import message
from ..state import stories
from ..state.contradictions import Contested
from ..state.job import Job
from . import places
from . import results
from . import words
from .people import who


def lines(job: Job, told: list) -> list[dict]:
    """Return stories about units as {"at", "actor", "words"}; on record before any: `at` None."""
    return [
        {
            "at": story.move["at"] if story.move else None,
            "actor": who(job.state, story.move["event"], story.move["actor"]) if story.move else "",
            "words": _words(job, story),
        }
        for story in told
    ]


def heading(job: Job, contested: Contested) -> dict:
    """Return what the contradiction is, as a heading."""
    told = contested.last
    at = {(s.place, s.vehicle, s.position): True for s in told}
    if len({s.unit: True for s in told}) > 1 and len(at) == 1:
        place = words.position_name(job, told[0].position)
        return message("stories-two-units", sort=job.sort.identity, position=place)
    name = words.unit_name(job.unit(contested.unit))
    return message("stories-two-places" if len(at) > 1 else "stories-where", unit=name)


def _words(job: Job, story: stories.Story) -> dict:
    """Return what was done, as it follows on who did it."""
    name, move = words.unit_name(job.unit(story.unit)), story.move
    kind = move["kind"] if move and move["job"] == job.id else ""
    if move and kind == "unit_seen" and "instead" in move:
        other = words.unit_name(job.unit(job.state.now(move["instead"])))
        where = words.position_name(job, move["position"])
        return message("stories-found", unit=other, place=message("stories-at", position=where))
    if move and kind == "unit_pulled":
        return message("stories-pulled", unit=name, position=words.position_name(job, move["position"]))
    if kind == "units_mixed":
        return message("stories-mixed", unit=name)
    if move is None or kind == "unit_seen":
        known = "stories-found" if move else "stories-on-record"
        return message(known, unit=name, place=place_of(job, story))
    if story.place == "fitted":
        return message("stories-fitted", unit=name, place=place_of(job, story))
    return message("stories-put", unit=name, place=story.place)


def place_of(job: Job, story: stories.Story) -> dict:
    """Return the place of a story, as the end of 'it is ...'; the vehicle is named where it is another."""
    if story.place == "fitted" and story.vehicle == job.vehicle_id:
        return message("stories-at", position=words.position_name(job, story.position))
    return places.place_line(job.state, story.place, story.vehicle, story.position)["words"]


def test_line(job: Job, test: dict) -> dict:
    """Return what a test read, as it follows on who entered it."""
    if not test["heard"]:
        return message("stories-test-unheard", proof=job.sort.self_test.not_heard)
    if not test["faulted"]:
        return message("stories-test-clean")
    return message("stories-test-fault", positions=results.places(job, test["faulted"]))
