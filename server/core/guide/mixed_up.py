"""The steps after a mix-up: a label on each, then the test that tells them apart at least cost."""

from ..evidence import mixups
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..words import words
from ..words.words import unit_name
from .step import action
from .step import step


def settling(job: Job) -> dict | None:
    """Return the step that a mix-up asks for now, or None."""
    for entry in mixups.open_sets(job):
        bare = [b for b in entry["bodies"] if job.unit(b).is_in_hand() and not job.unit(b).is_labelled()]
        if bare:
            return _label(job, entry, bare)
        if not job.move:
            loose = [b for b in entry["bodies"] if _loose(job, b)]
            places, _ = mixups.cheapest_test(job, entry)
            holds = job.holds
            places = [place for place in places if not holds.get(place)]
            if loose and places:
                return _fit(job, loose, places)
    return None


def _loose(job: Job, body) -> bool:
    unit = job.unit(body)
    return unit.is_in_hand_here() and not unit.is_disputed()


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


def _fit(job: Job, loose, places) -> dict:
    """Which of them goes where is all the same: none is likelier to be the bad one than another."""
    fitted, said = {}, []
    for index in range(min(len(loose), len(places))):
        fitted[places[index]] = loose[index]
        said.append(
            message(
                "guide-mixed-fit-at",
                unit=unit_name(job.unit(loose[index])),
                position=words.position_name(job, places[index]),
            )
        )
    return step(
        "mixed.fit",
        message("guide-mixed-fit-title", where=all_of(said)),
        message("guide-mixed-fit-text"),
        action=action(
            message("guide-mixed-fit-start"),
            draft("move_started", move="exchange", fitted=fitted, position="", reason="mixed-up"),
        ),
    )
