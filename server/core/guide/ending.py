"""The steps at the end: the walk-behind check, good units home, every unit accounted for, the close."""

from ..evidence import proof
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..rules.closing import blocked_by
from ..rules.same_part import part_at
from ..state.job import Job
from ..words import words
from . import fitting
from . import testing
from .step import action
from .step import step

# A unit that is bad with less than this chance (parts per billion) is worth its place again; our choice.
_WORTH_ITS_PLACE = 200000000

_WHERE_TO = (
    ("counter", "guide-where-counter"),
    ("customer", "guide-where-customer"),
    ("stock", "guide-where-stock"),
    ("scrapped", "guide-where-scrapped"),
)


def closed_words(job: Job) -> dict:
    """Return the sentence of a closed job."""
    if not job.closed_by:
        return message("guide-done-by-unnamed")
    return message("guide-done-by", name=job.closed_by)


def nothing_shown(job: Job, result: dict) -> tuple:
    """Return (stage, step) after tests that never showed a fault."""
    close = action(message("guide-nothing-close"), draft("job_closed", note="no-fault-shown"))
    clean = proof.clean_in_a_row(job, result)
    if job.comes_and_goes and clean >= proof.run_of(job):
        test = draft("move_started", move="retest", fitted={}, position="", reason="to-be-sure")
        return "test", step(
            "nothing.enough",
            message("guide-nothing-enough-title", count=clean),
            message("guide-nothing-enough-text"),
            action=close,
            second=action(message("guide-test-again"), test),
        )
    if job.comes_and_goes:
        again = testing.test_step(job, message("guide-test-no-fault"))
        again["id"] = "test.again"
        again["text"] = sentences([message("guide-test-more-than-one"), job.sort.self_test.provoke])
        again["second"] = close
        return "test", again
    return "test", step(
        "nothing",
        message("guide-nothing-title"),
        message("guide-nothing-text"),
        action=action(message("guide-nothing-comes-and-goes"), draft("comes_and_goes_set", value=True)),
        second=close,
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
    away = _away_from_home(job)
    if away:
        return "close", _home(job, away)
    out = job.in_hand()
    if out:
        return "close", _where_to(job, out, result)
    chance = {entry["cause"]: entry["probability"] for entry in result["causes"]}
    parked = _parked(job, chance)
    if parked:
        return "close", _back_from_stock(job, parked, chance)
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
        action=None if blockers else action(message("guide-close-title"), draft("job_closed", note="")),
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
            "asks": {
                "works": job.sort.walk.works,
                "fails": job.sort.walk.fails,
                "left": job.sort.walk.left,
                "first": job.sort.walk.first,
            },
        },
        action=action(job.sort.walk.button, draft("walk_checked", positions=everything, missed=[])),
    )


def _away_from_home(job: Job) -> list:
    """Return the positions whose unit came from another position of this vehicle, not yet settled."""
    vehicle = job.vehicle
    came_from = {vehicle["home"][position]: position for position in vehicle["home"]}
    away = []
    for position in job.positions:
        place = position["id"]
        unit = vehicle["holds"].get(place)
        if unit and came_from.get(unit, place) != place and job.left_at(place) != unit:
            away.append(place)
    return away


def _home(job: Job, away) -> dict:
    vehicle = job.vehicle
    lines, leave = [], []
    for position in away:
        unit = vehicle["holds"][position]
        lines.append(
            message(
                "guide-home-sits",
                unit=words.unit_name(job.unit(unit)),
                position=words.position_name(job, position),
            )
        )
        leave.append(draft("left_deliberately", unit=unit, position=position, reason="tested-there"))
    fitted = _homeward(vehicle, away)
    second = None
    if fitted:
        second = action(
            message("guide-home-put-back"),
            draft("move_started", move="home", fitted=fitted, position="", reason="back-home"),
        )
    return step(
        "home",
        message("guide-home-title"),
        message(
            "guide-home-text", where=all_of(lines), same="yes" if _same_known_part(job, away) else "not-known"
        ),
        action=action(message("guide-home-leave"), *leave),
        second=second,
    )


def _same_known_part(job: Job, away) -> bool:
    """Tell whether the part numbers are on record and agree; unknown ones are not called the same."""
    vehicle = job.vehicle
    parts = [job.unit(vehicle["holds"][position]).part for position in away]
    parts.extend([part_at(job, position) for position in away])
    return bool(parts[0]) and not [part for part in parts if part != parts[0]]


def _homeward(vehicle, away) -> dict:
    """Return position -> unit that brings good units home; what has no home takes the place left."""
    came_from = {vehicle["home"][position]: position for position in vehicle["home"]}
    fitted, free, homeless = {}, list(away), []
    for position in away:
        fitted[came_from[vehicle["holds"][position]]] = vehicle["holds"][position]
    for position in sorted(fitted):
        if position in free:
            free.remove(position)
        else:
            homeless.append(vehicle["holds"].get(position))
    free.sort()
    for index in range(len(free)):  # as many as there are homeless ones
        if homeless[index]:
            fitted[free[index]] = homeless[index]
    return fitted


def _place_to_return_to(job: Job, unit, result) -> str | None:
    """Return the position a good unit came from, where another sits now; None for one under suspicion."""
    position = job.unit(unit).pulled_from
    blamed = result["verdict"]["causes"] if result["verdict"] else []
    if position is None or "unit:" + unit in blamed:
        return None
    if job.vehicle["home"].get(position) != unit:
        return None
    return position


def _parked(job: Job, chance) -> str | None:
    """Return a position whose own unit went into stock on this job although it is hardly to blame."""
    vehicle = job.vehicle
    for position in sorted(vehicle["home"]):
        own, sits = vehicle["home"][position], vehicle["holds"].get(position)
        unit = job.unit(own)
        here = unit.is_in_stock() and unit.transfers[-1]["job"] == job.id and not unit.is_disputed()
        good = chance.get("unit:" + own, 0) < _WORTH_ITS_PLACE
        if here and good and sits and job.left_at(position) != sits:
            return position
    return None


def _back_from_stock(job: Job, position, chance) -> dict:
    """Ask whether the vehicle's own good unit comes back in place of the spare that was tried."""
    vehicle = job.vehicle
    own, sits = vehicle["home"][position], vehicle["holds"][position]
    return step(
        "home.stock",
        message(
            "guide-stock-title",
            unit=words.unit_name(job.unit(own)),
            position=words.position_name(job, position),
        ),
        message(
            "guide-stock-text",
            chance=percent(chance.get("unit:" + own, 0)),
            spare=words.unit_name(job.unit(sits)),
        ),
        action=action(
            message("guide-stock-put-back"),
            draft("move_started", move="home", fitted={position: own}, position="", reason="back-home"),
        ),
        second=action(
            message("guide-stock-leave"),
            draft("left_deliberately", unit=sits, position=position, reason="spare-stays"),
        ),
    )


def place_choices(unit: str, alone: bool) -> list[dict]:
    """Return where a unit in hand can go, each place with the fact that says so."""
    return [
        {
            "words": message(said),
            "events": [draft("unit_moved", unit=unit, place=place, how="tapped", note="", alone=alone)],
        }
        for place, said in _WHERE_TO
    ]


def _where_to(job: Job, out, result) -> dict:
    unit, alone = out[0], len(out) == 1
    choices = place_choices(unit, alone)
    back = _place_to_return_to(job, unit, result)
    if back:
        choices.append(
            {
                "words": message("guide-where-back", position=words.position_name(job, back)),
                "events": [
                    draft("move_started", move="home", fitted={back: unit}, position="", reason="back-home")
                ],
            }
        )
    return step(
        "where_to",
        message("guide-where-title", unit=words.unit_name(job.unit(unit))),
        message("guide-where-text-alone" if alone else "guide-where-text"),
        form="where_to",
        expects={"unit": unit, "do": "where_to", "alone": alone},
        choices=choices,
        progress={"now": 1, "total": len(out)},
    )
