"""The step that settles what two phones entered apart: each contradiction once, with all that is said of it.

A unit is settled by its label, read where it really is, and a tap on that place; what the scan asks for is
in `answers`. Tests and a closing are settled by a tap.
"""

from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..rules.closing import blocked_by
from ..state import contradictions
from ..state import stories
from ..state.contradictions import Contested
from ..state.job import Job
from ..words import places as all_places
from ..words import sentences
from ..words import stories as told
from .step import action
from .step import step


def settling(job: Job) -> tuple | None:
    """Return (stage, step) of the first contradiction that is open, or None."""
    contested = _contested(job)
    apart = contradictions.tests(job)
    closed = contradictions.closing(job)
    total = len(contested) + len(apart) + (1 if closed else 0)
    if not total:
        return None
    if contested:
        stage, made = "swap", _place(job, contested[0])
    elif apart:
        stage, made = "test", _tests(job, apart[0])
    else:
        stage, made = "close", _closing(job, closed)
    if total > 1:
        made["progress"] = {"now": 1, "total": total, "word": message("stories-progress")}
    return stage, made


def _contested(job: Job) -> list[Contested]:
    """Return the units in dispute that this job has to settle: once it is closed, only its own."""
    found = contradictions.places(job)
    if not job.is_closed():
        return found
    return [each for each in found if [s for s in each.stories if s.move and s.move["job"] == job.id]]


def _place(job: Job, contested: Contested) -> dict:
    unit = contested.unit
    labelled = [each for each in contested.units if job.unit(each).is_labelled()]
    tests = contradictions.waiting_for(job, contested)
    choices = [] if labelled else answers(job, unit, "tapped")
    return step(
        "settle",
        told.title(job, contested),
        message("stories-scan") if labelled else message("stories-asked", sort=job.sort.identity),
        form="contradiction",
        action=action(message("stories-scan-now")) if labelled else None,
        choices=choices,
        expects={
            "do": "settle",
            "unit": unit,
            "units": labelled,
            "stories": told.lines(job, contested),
            "waits": _waits(tests),
        },
    )


def _waits(tests: list) -> dict | str:
    if not tests:
        return ""
    numbers = all_of([str(n + 1) for n in tests])
    return message("stories-waits", tests=numbers, count=len(tests))


def answers(job: Job, unit: str, how: str) -> list[dict]:
    """Return where a unit can turn out to be as {"words", "events", "job"}: as it is told, then all else."""
    return likely_answers(job, unit, how) + other_answers(job, unit, how)


def likely_answers(job: Job, unit: str, how: str) -> list[dict]:
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
        for other in about:
            tests = _tests_resting_on(job, other)
            if tests and _place_key(other) != _place_key(story):
                words_then = message(
                    "stories-answer-then",
                    place=place,
                    before=told.place_of(job, other),
                    tests=all_of([str(n + 1) for n in tests]),
                    count=len(tests),
                )
                found.append(_answer(job, unit, how, story, words_then, true + [stories.key_of(other)]))
    return found


def other_answers(job: Job, unit: str, how: str) -> list[dict]:
    """Return all other places where a unit could be, on this vehicle and away from any."""
    known = [_place_key(story) for story in _stories(job, unit) if story.unit == unit]
    found = []
    spots = [("fitted", job.vehicle_id, position["id"]) for position in job.positions]
    spots += [(place, None, None) for place in ("out", "stock", "counter", "customer", "scrapped")]
    for spot in spots:
        if spot not in known:
            story = stories.Story(unit, spot[0], spot[1], spot[2], None)
            said = message("stories-answer", place=told.place_of(job, story))
            found.append(_answer(job, unit, how, story, said, []))
    return found


def _stories(job: Job, unit: str) -> list:
    found = []
    for contested in contradictions.places(job):
        if unit in contested.units:
            found += contested.stories
            found += [s for s in stories.told(job.state, unit) if s not in contested.stories]
    return found


def _place_key(story: stories.Story) -> tuple:
    return story.place, story.vehicle, story.position


def _tests_resting_on(job: Job, story: stories.Story) -> list[int]:
    """Return the tests, from 0, that the phone which fitted a unit here made after it did."""
    numbers = contradictions.order(job)
    event = stories.event_of(story)
    if story.place != "fitted" or story.vehicle != job.vehicle_id or event not in numbers:
        return []
    found = []
    for n in range(len(job.tests)):
        test = job.tests[n]["event"]
        own = stories.device_of(test) == stories.device_of(event)
        if own and numbers[test] > numbers[event]:
            found.append(n)
    return found


def _answer(job: Job, unit: str, how: str, story: stories.Story, said, true: list) -> dict:
    at = job.id
    if story.place == "fitted" and story.vehicle != job.vehicle_id:
        at = all_places.line(job.state, story.place, story.vehicle, story.position)["job"] or at
    fact = draft(
        "unit_seen",
        unit=unit,
        place=story.place if story.place != "mixed" else "out",
        position=story.position or "",
        how=how,
        settles=true,
    )
    return {"words": said, "events": [fact], "job": at}


def _tests(job: Job, group: list) -> dict:
    """Two phones entered a test each, and neither knew of the other: one of them, or both?"""
    entries = {"{}:{}".format(e["device"], e["seq"]): e for e in job.history}
    tests = [(n, entries[job.tests[n]["event"]]) for n in group]
    choices = [
        {
            "words": message("stories-tests-two", count=len(tests)),
            "events": [draft("tests_told_apart", tests=[job.tests[n]["event"] for n in group])],
            "job": job.id,
        }
    ]
    for n, entry in tests:
        rest = [other for m, other in tests if m != n]
        choices.append(
            {
                "words": message(
                    "stories-tests-one",
                    who=entry["actor"] or message("custody-no-name"),
                    read=told.test_line(job, entry),
                ),
                "events": [
                    draft("corrected", device=each["device"], seq=each["seq"], reason="same-test")
                    for each in rest
                ],
                "job": job.id,
            }
        )
    return step(
        "settle.tests",
        message("stories-tests-title"),
        "",
        form="contradiction",
        choices=choices,
        expects={
            "do": "settle",
            "unit": "",
            "units": [],
            "stories": [
                {"at": entry["at"], "actor": entry["actor"], "words": told.test_line(job, entry)}
                for _, entry in tests
            ],
            "waits": _waits(group),
        },
    )


def _closing(job: Job, closed: tuple) -> dict:
    """One phone closed the job, another worked on."""
    closing, went_on = closed
    choices = [
        {"words": message("stories-go-on"), "events": [draft("work_went_on")], "job": job.id},
    ]
    if not blocked_by(job):
        choices.append(
            {"words": message("stories-close"), "events": [draft("job_closed", note="", knows=job.known_entries)], "job": job.id}
        )
    return step(
        "settle.closing",
        message("stories-closed-title"),
        "",
        form="contradiction",
        choices=choices,
        expects={
            "do": "settle",
            "unit": "",
            "units": [],
            "stories": [
                {"at": closing["at"], "actor": closing["actor"], "words": message("stories-closed")},
                {
                    "at": went_on["at"],
                    "actor": went_on["actor"],
                    "words": sentences.sentence(job, went_on["kind"], went_on["data"]),
                },
            ],
            "waits": "",
        },
    )
