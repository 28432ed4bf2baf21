"""The steps after a mix-up: a label on each, then the best way to fit them, chosen like any other move."""

from ..evidence import mixups
from ..evidence import ways as mixed_ways
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..words import words
from ..words.words import unit_name
from . import moving
from .step import action
from .step import step


def settling(job: Job) -> dict | None:
    """Return the step that puts a label on one that got mixed up, or None."""
    for entry in mixed_ways.open_sets(job):
        bare = [b for b in entry["bodies"] if job.unit(b).is_in_hand() and not job.unit(b).is_labelled()]
        if bare:
            return _label(job, entry, bare)
    return None


def fitting(job: Job, moves: list | None) -> dict | None:
    """Return the step that fits those in the hand, or None; `moves` as for `next_step`."""
    loose = mixed_ways.loose(job)
    if not loose:
        return None
    if moves is None:
        made = moving.thinking()
        made["title"] = message("guide-mixed-fit-again")
        return made
    if not job.tests:
        return _fit(job, loose)
    filling = [move for move in moves if [place for place in move["touches"] if not job.holds.get(place)]]
    if not filling:
        return None
    made = moving.choose(job, filling)
    made["id"] = "mixed.fit"
    return made


def _label(job: Job, entry, bare) -> dict:
    told = mixups.settling_words(job, entry)
    return step(
        "mixed.label",
        message("guide-mixed-title", count=entry["count"], sort=job.sort.identity),
        sentences([told["scan"], told["test"]]),
        form="scan",
        action=action(message("guide-mixed-scan")),
        expects={"do": "mixed", "unit": bare[0], "position": "", "may_write": True},
        progress={
            "now": len(entry["bodies"]) - len(bare) + 1,
            "total": len(entry["bodies"]),
            "word": message("guide-progress-label"),
        },
    )


def _fit(job: Job, loose) -> dict:
    """Before any test which of them goes where is all the same: none is likelier to be the bad one."""
    holds = job.holds
    empty = [each["id"] for each in job.positions if not holds.get(each["id"])]
    fitted, said = {}, []
    for index in range(min(len(loose), len(empty))):
        fitted[empty[index]] = loose[index]
        said.append(
            message(
                "guide-mixed-fit-at",
                unit=unit_name(job.unit(loose[index])),
                position=words.position_name(job, empty[index]),
            )
        )
    return step(
        "mixed.fit",
        message("guide-mixed-fit-title", where=all_of(said)),
        message("guide-mixed-fit-text"),
        action=action(
            message("guide-start-fitting"),
            draft("move_started", move="exchange", fitted=fitted, position="", reason="mixed-up"),
        ),
    )
