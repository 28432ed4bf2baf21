"""The stops of a scan: what was read, what belongs here, where that one is, and what to do instead."""

from ..facts.draft import draft
from ..messages import message
from ..state.job import Job
from ..words import words
from ..words.words import unit_name


def wrong(job: Job, read, unit, position, how) -> dict:
    """Return the stop where another unit belongs."""
    belongs = unit_name(job.unit(unit))
    if read["unit"] is None:
        title = "guide-scan-unknown-title"
        more = message(
            "guide-scan-unknown-more",
            unit=belongs,
            place=words.place_words(job.unit(unit)),
            sort=job.sort.identity,
        )
    else:
        title = "guide-scan-wrong-title"
        more = _instead(job, read, unit)
    return stop(
        read,
        message(title, sort=job.sort.identity),
        message("guide-scan-wrong-text", code=read["shown"], unit=belongs),
        more,
        [stopped(position, unit, read, how)],
    )


def _instead(job: Job, read, unit) -> dict:
    """Return what to do with the wrong one, and how to come by the right one.

    One that is on record as fitted here was pulled by mistake. Put down, it would lie about unrecorded.
    """
    said = {"code": read["shown"], "unit": unit_name(job.unit(unit))}
    told = "guide-scan-wrong-more"
    here, there = position_here(job, unit), position_here(job, read["unit"])
    if here:
        told = "guide-scan-wrong-pull"
        said["position"] = words.position_name(job, here)
    else:
        said["wanted"] = _whereabouts(job, unit, "guide-scan-you-pulled")
    if there:
        told = "guide-scan-wrong-back-pull" if here else "guide-scan-wrong-back"
        said["at"] = words.position_name(job, there)
    else:
        said["where"] = _whereabouts(job, read["unit"], "guide-scan-came-from")
    return message(told, **said)


def position_here(job: Job, unit) -> str:
    """Return the position of this vehicle that a unit is fitted at; "" for one elsewhere, or in dispute."""
    known = job.unit(unit)
    return known.position or "" if known.is_fitted_here() and not known.is_disputed() else ""


def _whereabouts(job: Job, unit, pulled: str) -> dict:
    """Return where a unit is or, of one that lies about on this job, where it was pulled."""
    known = job.unit(unit)
    if known.is_in_hand_here() and known.pulled_from and not known.is_disputed():
        return message(pulled, position=words.position_name(job, known.pulled_from))
    return message("guide-scan-is-at", place=words.place_words(known))


def stopped(position, unit, read, how) -> dict:
    """Return the draft of the fact that a mix-up was stopped."""
    return draft("mixup_stopped", position=position, expected=unit, seen=read["code"], how=how)


def stop(read, title, sentence, more, events) -> dict:
    """Return the answer to a scan that stops the hand; `events` are recorded all the same."""
    return {
        "outcome": "stop",
        "shown": read["shown"],
        "title": title,
        "sentence": sentence,
        "more": more,
        "events": events,
    }
