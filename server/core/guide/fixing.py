"""The steps once the cause is known: replace the unit, follow the wiring, clean."""

from ..evidence import checks
from ..evidence import unit_history
from ..facts.draft import draft
from ..messages import message
from ..messages import sentences
from ..rules.same_part import part_at
from ..state.job import Job
from ..state.state import EMPTY
from ..words import causes
from ..words import words
from . import cleaning
from . import measuring
from . import moving
from . import repairing
from . import spare
from . import stuck
from . import testing
from .step import action
from .step import step


def fix_step(job: Job, cause: str, moves: list | None) -> dict:
    """Return the step that deals with a live cause of the verdict; `moves` as for `next_step`."""
    kind, what, _ = causes.split(cause)
    if kind == "unit":
        made = replace_at(job, job.unit(what).position, what)
    elif kind == "blocked":
        made = cleaning.found(job, what)
    elif kind == "circuit":
        made = moving.measure(job, what, repairing.repaired(job, cause))
        made["id"] = "wiring." + made["id"]
        done, complete = checks.now(job, what)
        if complete and made["id"] == "wiring.measure.done" and "bad" not in done.values():
            made = stuck.nothing_found(job, what, moves)
    else:
        made = _shared(job, cause)
    made["also"] = [testing.again(job)]
    if made["id"] == "wiring.measure" and job.sort.harness and job.comes_and_goes:
        made["also"] += measuring.warm(job, what)
    return made


def replace_at(job: Job, position, unit: str | None) -> dict:
    """Return the step that asks for a new unit at a position, instead of `unit` or of nothing."""
    part = part_at(job, position)
    name = causes.phrase(job, "unit:" + unit) if unit else words.position_name(job, position)
    return step(
        "replace",
        message("guide-replace-title", cause=name),
        message("guide-replace-text"),
        form="new_unit",
        expects={
            "position": position,
            "position_name": words.position_name(job, position),
            "old": unit or "",
            "part": part,
        },
        choices=_spares(job, position, among_tested=unit is None),
        action=action(message("guide-replace-fit", sort=job.sort.identity)),
    )


def _spares(job: Job, position, among_tested: bool) -> list[dict]:
    """Return the units at hand that would do, each with the facts that begin the replacement.

    One that sat on the vehicle in a test is none, but an empty position may have it: its own is taken.
    """
    tested = {}
    for test in job.tests:
        for place in test["fitted"]:
            tested[test["fitted"][place]] = True
    found = []
    for identity in job.at_hand():
        sat_here = identity in tested and not among_tested
        if not job.unit(identity).is_labelled() or sat_here or spare.unfit(job, position, identity):
            continue
        told = unit_history.history(job.state, identity, job)
        found.append(
            {
                "words": message("guide-replace-use", unit=causes.phrase(job, "unit:" + identity)),
                "note": told["sentence"],
                "events": [start_replacing(position, identity)],
            }
        )
    return found


def start_replacing(position: str, unit: str) -> dict:
    """Return the fact that begins to replace what sits at a position."""
    return draft("move_started", move="replace", fitted={position: unit}, position=position, reason="")


def empty_position(job: Job) -> str | None:
    """Return a position that nothing sits at and that nobody left empty on purpose."""
    for position in job.positions:
        place = position["id"]
        if job.is_empty_by_accident(place):
            return place
    return None


def fill(job: Job, position: str) -> dict:
    """Return the step that asks what comes into an empty position."""
    made = replace_at(job, position, None)
    made["id"] = "fill"
    made["title"] = message("guide-fill-title", position=words.position_name(job, position))
    made["text"] = message("guide-fill-text", sort=job.sort.identity)
    made["choices"] = made["choices"] + own_in_hand(job, position)
    made["also"] = [
        action(
            message("guide-fill-leave"),
            draft("left_deliberately", unit=EMPTY, position=position, reason="left-empty"),
        )
    ]
    return made


def own_in_hand(job: Job, position: str) -> list[dict]:
    """Return the vehicle's own units in hand that may take an empty position, as `_spares` does good ones.

    One that faulted in its last test is no spare, but where an exchange was stopped half-way it is the one
    that was on its way there. One that was found bad may only go back where it came out.
    """
    home, part = job.vehicle["home"], part_at(job, position)
    found = []
    for identity in job.in_hand() if not job.fitted_at(position) else []:
        unit = job.unit(identity)
        other_part = part and unit.part and unit.part != part
        if identity not in home.values() or not unit.is_labelled() or unit.mixup() or other_part:
            continue
        bad = unit_history.condemned(job.state, identity)
        if unit.pulled_from != position if bad else not spare.faulted_last(job.state, identity):
            continue
        where = words.position_name(job, position)
        said = message("guide-exchange-in-hand", unit=words.unit_name(unit), position=where)
        begun = draft("move_started", move="exchange", fitted={position: identity}, position="", reason="")
        found.append(
            {
                "words": message("guide-move-exchange", moves=said),
                "note": spare.unfit(job, position, identity),
                "events": [begun],
            }
        )
    return found


def shared_suspects(job: Job, result: dict, repeated: bool = False) -> list:
    """Return the shared causes (feed, control) that between them are sure enough, else [].

    Sure enough is what a verdict asks for; where tests are `repeated` and say the same, an even chance is.

    No test tells them apart when every position of the vehicle hangs on both, so the flow asks for
    a look at each instead of one more test.
    """
    found, total = [], 0
    for explanation in result["explanations"]:
        shared = [c for c in explanation["causes"] if _is_shared(job, c)]
        if shared:
            total += explanation["probability"]
        for cause in shared:
            if cause not in found:
                found.append(cause)
    sure = total >= (500000000 if repeated else job.confidence_ppb)
    return sorted(found) if sure and len(found) > 1 else []


def _is_shared(job: Job, cause: str) -> bool:
    """Tell whether a cause is one that positions share and that nobody has repaired since."""
    return causes.split(cause)[0] in ("feed", "control") and causes.is_live(job, cause)


def shared_step(job: Job, found: list) -> dict:
    """Return the step that asks which of several shared causes was found and repaired."""
    live = [cause for cause in found if causes.is_live(job, cause)]
    live.sort(key=lambda cause: (job.repairs_of(cause.partition("#")[0]), cause))
    choices = []
    for cause in live:
        said = message("guide-shared-several-repaired", cause=causes.phrase(job, cause))
        choices.append(repairing.choice(job, cause, said))
    return step(
        "wiring.several",
        message("guide-shared-several-title"),
        sentences([causes.fix(job, cause) for cause in live] + [job.sort.says("guide-shared-several-text")]),
        form="choices",
        choices=choices,
        second=action(message("guide-moves-other")),
        also=[testing.again(job)],
    )


def _shared(job: Job, cause) -> dict:
    return step(
        "wiring.shared",
        message("guide-shared-title", cause=causes.phrase(job, cause)),
        sentences([causes.fix(job, cause), message("guide-shared-text")]),
        action=repairing.repaired(job, cause),
    )
