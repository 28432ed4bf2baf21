"""The step that settles what two phones entered apart: each contradiction once, with all that is said of it.

A unit is settled by its label, read where it really is, and a tap on that place; what the scan asks for is
in `true_place`. Corrections of one entry, tests, a closing and numbers read off a unit are settled by a tap.
Imported only where something contradicts: most phones never meet it.
"""

from ..evidence import verdict
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..rules.closing import blocked_by
from ..state import contradictions
from ..state.contradictions import Contested
from ..state.job import Job
from ..state.state import MIXED
from ..state.unit import Unit
from ..words import sentences
from ..words import stories as told
from ..words.people import who
from ..words.people import whose_phone
from ..words.words import unit_name
from . import corrected_apart
from . import mixed_or_not
from . import true_place
from .step import action
from .step import step

# What is done to learn more, as opposed to what a verdict asks for.
_SEARCHES = ("retest", "clean", "exchange", "unplug", "meter")


def settling(job: Job, result: dict | None = None) -> tuple | None:
    """Return (stage, step) of the first contradiction that is open, or None; `result` as for next_step."""
    contested, corrected = _contested(job), contradictions.corrections(job.facts)
    apart = contradictions.tests(job.facts)
    closed = None if job.is_closed() else job.reopened
    beside = contradictions.of_units(job.state, job.facts)
    total = len(corrected) + _questions(job, contested) + len(apart) + (1 if closed else 0) + len(beside)
    if corrected:
        stage = "test" if corrected[0]["kind"] == "test_run" else "look"
        made = _corrected(job, corrected[0])
    elif contested:
        stage, made = "swap", _place(job, contested[0])
    elif apart:
        stage, made = "test", _tests(job, apart[0])
    elif closed:
        stage, made = "close", _closing(job, closed, result)
    elif beside:
        stage, made = "label", _beside(job.unit(beside[0]["unit"]), job.id, beside[0])
    else:
        return None
    if total > 1:
        made["progress"] = {"now": 1, "total": total, "word": message("stories-progress")}
    return stage, made


def _contested(job: Job) -> list[Contested]:
    """Return the units in dispute that this job has to settle: once it is closed, only its own."""
    found = contradictions.places(job.state, job.facts)
    if not job.is_closed():
        return found
    return [each for each in found if [s for s in each.stories if s.move and s.move["job"] == job.id]]


def _questions(job: Job, contested: list[Contested]) -> int:
    """Return how many questions these come to: all units of a mix-up are one."""
    count, answered = 0, []
    for each in contested:
        if each.unit not in answered:
            count += 1
            mixed = _mixed(job, each)
            answered.extend(mixed.units if mixed else [])
    return count


def _place(job: Job, contested: Contested) -> dict:
    unit, tests = contested.unit, contradictions.waiting_for(job.facts, contested)
    mixed = _mixed(job, contested)
    if mixed:
        return _card("settle.mixed", mixed.heading, mixed.lines, _waits(tests), mixed.choices)
    labelled = [each for each in contested.units if job.unit(each).is_labelled()]
    choices = [] if labelled else true_place.answers(job, unit, "tapped")
    made = _card(
        "settle", told.heading(job, contested), told.lines(job, contested.last), _waits(tests), choices
    )
    made["expects"].update(unit=unit, units=labelled)
    if labelled:
        made["text"] = message("stories-scan")
        made["action"] = action(message("stories-scan-now"))
    else:
        made["text"] = message("stories-asked", sort=job.sort.identity)
    return made


def _mixed(job: Job, contested: Contested):
    """Return what is asked where a phone says that units got mixed up, None for any other contradiction."""
    told_so = [each for each in contested.stories if each.move and each.move.get("kind") == "units_mixed"]
    if not told_so and job.state.units[contested.unit]["place"] != MIXED:
        return None
    return mixed_or_not.asked(job, contested)


def card(job: Job, unit: str, how: str) -> dict | None:
    """Return what contradicts of a unit as its own page shows it, None where nothing does on this job."""
    for contested in _contested(job):
        if contested.unit == unit:
            mixed = _mixed(job, contested)
            return {
                "title": mixed.heading if mixed else told.heading(job, contested),
                "stories": mixed.lines if mixed else told.lines(job, contested.last),
                "waits": _waits(contradictions.waiting_for(job.facts, contested)),
                "choices": mixed.choices if mixed else true_place.likely(job, unit, how),
                "others": [] if mixed else true_place.others(job, unit, how),
            }
    return None


def _waits(tests: list) -> dict | str:
    if not tests:
        return ""
    numbers = all_of([str(n + 1) for n in tests])
    return message("stories-waits", tests=numbers, count=len(tests))


def _tests(job: Job, group: list) -> dict:
    """Two phones entered a test each, and neither knew of the other: one of them, or both?"""
    tests = [(n, job.tests[n]) for n in group]
    apart = draft("tests_told_apart", tests=[test["event"] for _, test in tests])
    two = message("stories-tests-two", count=len(tests))
    choices = [{"words": two, "events": [apart], "job": job.id}]
    for n, test in tests:
        rest = [other["event"].rpartition(":") for m, other in tests if m != n]
        choices.append(
            {
                "words": message(
                    "stories-tests-one",
                    phone=whose_phone(job.state, test["event"], test["actor"]),
                    who=who(job.state, test["event"], test["actor"]),
                    read=told.test_line(job, test),
                ),
                "events": [apart]
                + [
                    draft("corrected", device=device, seq=int(seq), reason="same-test")
                    for device, _, seq in rest
                ],
                "job": job.id,
            }
        )
    lines = [_line(job, test, told.test_line(job, test)) for _, test in tests]
    return _card(
        "settle.tests", message("stories-tests-title", count=len(tests)), lines, _waits(group), choices
    )


def _corrected(job: Job, apart: dict) -> dict:
    """Phones off line corrected one entry, each in its own way: which is right?"""
    lines, choices = corrected_apart.asked(job, apart)
    waits = _waits(contradictions.waiting_for_correction(job.facts, apart))
    made = _card(
        "settle.corrected",
        message("stories-corrected-title", count=len(apart["rivals"])),
        lines,
        waits,
        choices,
    )
    made["text"] = message("stories-corrected-asked")
    return made


def _beside(unit: Unit, job: str | None, apart: dict) -> dict:
    """What was said of a unit outside its places: its numbers, or corrections outside any job."""
    if "numbers" in apart:
        title = message("stories-numbers-title", unit=unit_name(unit), count=len(apart["numbers"]))
        made = _card("settle.numbers", title, *_without_waits(corrected_apart.numbers(unit, job, apart)))
        made["text"] = message("stories-numbers-asked", sort=unit.sort.identity)
        return made
    title = message("stories-corrected-title", count=len(apart["rivals"]))
    made = _card("settle.corrected", title, *_without_waits(corrected_apart.asked(unit, apart)))
    made["text"] = message("stories-corrected-asked")
    return made


def _without_waits(asked: tuple) -> tuple:
    """Return the lines and the choices of a card for which no test waits."""
    return asked[0], "", asked[1]


def cards_beside(state, identity: str) -> list[dict]:
    """Return what was said apart of a unit outside its places, as its own page shows it."""
    unit = Unit(state, identity)
    job = unit["jobs"][-1] if unit["jobs"] else None
    found = []
    for apart in contradictions.of_unit(unit.facts):
        made = _beside(unit, job, apart)
        told = {"title": made["title"], "text": made["text"], "stories": made["expects"]["stories"]}
        found.append(dict(told, choices=made["choices"]))
    return found


def _closing(job: Job, reopened: dict, result: dict | None) -> dict:
    """One phone closed the job, another worked on."""
    closed, went_on = reopened["closed"], reopened["went_on"]
    needless = _needless(job, result)
    choices = []
    if needless:
        stopped = [draft("work_went_on"), draft("move_dropped", reason="settled-already")]
        choices.append(
            {"words": message("stories-go-on-without", move=needless), "events": stopped, "job": job.id}
        )
    words = message("stories-go-on-with", move=needless) if needless else message("stories-go-on")
    choices.append({"words": words, "events": [draft("work_went_on")], "job": job.id})
    if not blocked_by(job):
        choices.append(
            {
                "words": message("stories-close"),
                "events": [draft("job_closed", note="", knows=job.known_entries)],
                "job": job.id,
            }
        )
    lines = [
        _line(job, closed, message("stories-closed")),
        _line(job, went_on, sentences.sentence(job, went_on["kind"], went_on["data"])),
    ]
    made = _card("settle.closing", message("stories-closed-title"), lines, "", choices)
    if needless:
        made["text"] = message("stories-settled-already", move=needless)
    return made


def _needless(job: Job, result: dict | None) -> str:
    """Return the move under way that can tell nothing any more, "" where there is none.

    Whoever began it did not know of the tests that settled the question meanwhile.
    """
    if not job.move or not result or job.move["move"] not in _SEARCHES or job.move["reason"] == "mixed-up":
        return ""
    return job.move["move"] if result["verdict"] or verdict.is_clear(job, result) else ""


def _line(job: Job, entry: dict, words) -> dict:
    """Return a story as {"at", "actor", "words"}: when, who and on whose phone, and what was done."""
    name = who(job.state, entry["event"], entry["actor"]) if "event" in entry else entry["actor"]
    return {"at": entry["at"], "actor": name, "words": words}


def _card(identity: str, title, lines: list, waits, choices: list) -> dict:
    """Return the step of a contradiction with its stories side by side, settled by a tap on a choice."""
    expects = {"do": "settle", "unit": "", "units": [], "stories": lines, "waits": waits}
    return step(identity, title, "", form="contradiction", choices=choices, expects=expects)
