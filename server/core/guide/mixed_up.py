"""The steps after a mix-up: a label on each, then the test that tells them apart at least cost."""

from .. import phrases
from ..evidence import mixups
from ..facts.draft import draft
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
        "{} {} got mixed up".format(entry["count"], job.sort.units),
        told["scan"] + " " + told["test"],
        form="scan",
        action=action("Scan a label, old or new"),
        expects={"do": "mixed", "unit": bare[0], "position": "", "may_write": True},
        progress={
            "now": len(entry["bodies"]) - len(bare) + 1,
            "total": len(entry["bodies"]),
            "word": "Label",
        },
    )


def _fit(job: Job, loose, places) -> dict:
    """Which of them goes where is all the same: none is likelier to be the bad one than another."""
    fitted, said = {}, []
    for index in range(min(len(loose), len(places))):
        fitted[places[index]] = loose[index]
        name = unit_name(job.unit(loose[index]))
        said.append("{} at {}".format(name, words.position_name(job, places[index])))
    reason = "They got mixed up; one test tells which is bad, whichever it was before."
    return step(
        "mixed.fit",
        "Fit {}, then test".format(phrases.listed(said)),
        reason,
        action=action(
            "Start fitting",
            draft("move_started", move="exchange", fitted=fitted, position="", reason=reason),
        ),
    )
