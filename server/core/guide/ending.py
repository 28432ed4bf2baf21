"""The steps at the end: the walk-behind check, good units home, every unit accounted for, the close."""

from ..evidence import proof
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..rules.closing import blocked_by
from ..state.job import Job
from ..words import words
from ..words.noted import noted
from . import finishing
from . import fitting
from . import testing
from .step import action
from .step import comes_and_goes
from .step import step


def closed_words(job: Job) -> dict:
    """Return who closed a job and, where it was not repaired, why it ends."""
    by = message("guide-done-by", name=job.closed_by) if job.closed_by else message("guide-done-by-unnamed")
    closing = job.closing
    if not closing or "why" not in closing:
        return by
    why = message("facts-job-closed-unrepaired", why=closing["why"])
    return sentences([by, why, noted(job.sort, closing["note"])])


def nothing_shown(job: Job, result: dict) -> tuple:
    """Return (stage, step) after tests that never showed a fault."""
    close = action(
        message("guide-nothing-close"), draft("job_closed", note="no-fault-shown", knows=job.known_entries)
    )
    enough = _enough(job, result, close) if job.comes_and_goes else None
    if enough:
        return "test", enough
    if job.comes_and_goes:
        again = testing.test_step(job, message("guide-test-no-fault"))
        again["id"] = "test.again"
        again["text"] = sentences([message("guide-test-more-than-one"), job.sort.self_test.provoke])
        again["second"] = close
        return "test", again
    return "test", step(
        "nothing",
        job.sort.says("guide-nothing-title"),
        message("guide-nothing-text"),
        action=comes_and_goes(),
        second=close,
    )


def _enough(job: Job, result: dict, close: dict) -> dict | None:
    """Return the step after clean tests that are enough to stop, None while more are to be made.

    Tests straight after each other prove little, but who made twice as many of them makes no other ones now.
    """
    clean, run = proof.fresh_in_a_row(job, result), proof.run_of(job)
    text = "guide-nothing-enough-text"
    if clean < run:
        clean, text = proof.clean_in_a_row(job, result), "guide-nothing-at-once-text"
        if clean < 2 * run:
            return None
    return step(
        "nothing.enough",
        message("guide-nothing-enough-title", count=clean),
        message(text),
        action=close,
        second=testing.again(job),
    )


def ending(job: Job, result: dict) -> tuple:
    """Return (stage, step) once nothing is left to fix."""
    if job.hanging():
        return "prove", fitting.seat(job, job.hanging())
    if job.walk_check is None:
        return "prove", _walk(job, result)
    quiet = _quiet(job)
    if quiet:
        return "prove", _walk_again(job, result, quiet)
    unsettled = finishing.unsettled(job, result)
    if unsettled:
        return "close", unsettled
    blockers = blocked_by(job)
    text: list = blockers or [message("guide-close-text", sort=job.sort.identity)]
    if not blockers and job.stayed_quiet:
        names = [words.position_name(job, position) for position in job.stayed_quiet]
        text.append(message("guide-close-missed", check=job.sort.walk.name, positions=all_of(names)))
    return "close", step(
        "close",
        message("guide-close-title-not-yet" if blockers else "guide-close-title"),
        sentences(text),
        form="close",
        action=None
        if blockers
        else action(message("guide-close-title"), draft("job_closed", note="", knows=job.known_entries)),
    )


def _quiet(job: Job) -> list:
    """Return the positions that stayed quiet at the pole and that nobody has accepted as they are."""
    holds = job.holds
    return [
        place for place in job.stayed_quiet if holds.get(place) and job.left_at(place) != holds.get(place)
    ]


def _walk_again(job: Job, result, quiet) -> dict:
    """Quiet at the pole although the self-test passes: aim, seat or dirt; listen again or accept it."""
    holds = job.holds
    made = _walk(job, result)
    made["id"] = "walk.again"
    made["title"] = job.sort.walk.again_heading
    made["text"] = message(
        job.sort.walk.again_text, positions=all_of([words.position_name(job, place) for place in quiet])
    )
    accepted = [
        draft("left_deliberately", unit=holds[place], position=place, reason="quiet-in-use")
        for place in quiet
    ]
    made["also"] = [action(message("guide-walk-leave"), *accepted)]
    return made


def _walk(job, result) -> dict:
    everything = [position["id"] for position in job.positions]
    return step(
        "walk",
        job.sort.walk.heading,
        job.sort.walk.text,
        form="walk",
        expects={
            "positions": testing.to_pick(job),
            "clear_words": percent(result["clear"]),
            "pole": job.sort.pole,
            "asks": {
                "works": job.sort.walk.works,
                "fails": job.sort.walk.fails,
                "left": job.sort.walk.left,
                "first": job.sort.walk.first,
            },
        },
        action=action(job.sort.walk.button, draft("walk_checked", positions=everything, missed=[])),
    )
