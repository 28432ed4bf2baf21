"""The last things of a job: good units home or left where they are, and a place for each one in hand."""

from ..evidence import unit_history
from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..rules.closing import blocked_beside_hand
from ..rules.same_part import part_at
from ..state.job import Job
from ..words import words
from . import tried_spare
from .step import action
from .step import step

_WHERE_TO = (
    ("counter", "guide-where-counter"),
    ("customer", "guide-where-customer"),
    ("stock", "guide-where-stock"),
    ("scrapped", "guide-where-scrapped"),
)


def unsettled(job: Job, result: dict) -> dict | None:
    """Return the step for what is not where it belongs yet, None when all is.

    One unit in hand, and good ones that may stay where they are, are settled with the close by one tap;
    with more in hand, each is told from the others first.
    """
    away, out = _away_from_home(job), job.in_hand()
    chance = {entry["cause"]: entry["probability"] for entry in result["causes"]}
    parked = tried_spare.parked(job, chance)
    alone = len(out) < 2 and not parked and not blocked_beside_hand(job)
    if alone and (out or away):
        return _at_once(job, away, out, result)
    if away:
        return _home(job, away)
    if out:
        return _where_to(job, out, result)
    return tried_spare.back_from_stock(job, parked, chance) if parked else None


def _at_once(job: Job, away: list, out: list, result) -> dict:
    """Return the step that leaves the good ones, gives the one in hand a place and closes, by one tap."""
    close = draft("job_closed", note="", knows=job.known_entries)
    home = _home(job, away) if away else {"action": {"events": []}, "second": None}
    leave = home["action"]["events"]
    if not out:
        home["form"] = "close"
        home["action"] = action(message("guide-finish-leave", count=len(away)), *leave, close)
        return home
    unit = out[0]
    choices = []
    for choice in place_choices(job, unit, True):
        choice["events"] = leave + choice["events"] + [close]
        choices.append(choice)
    choices.extend(_back_choice(job, unit, result))
    return step(
        "home" if away else "where_to",
        message("guide-finish-title", unit=words.unit_name(job.unit(unit))),
        message("guide-finish-text", where=_sitting(job, away))
        if away
        else message("guide-where-text-alone"),
        form="close",
        expects={"unit": unit, "do": "where_to", "alone": True},
        choices=choices,
        second=home["second"],
    )


def _sitting(job: Job, away: list) -> dict:
    """Return what sits away from its own position: "K7F-3M sits at right outer"."""
    holds = job.holds
    return all_of(
        [
            message(
                "guide-home-sits",
                unit=words.unit_name(job.unit(holds[position])),
                position=words.position_name(job, position),
            )
            for position in away
        ]
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
    leave = []
    for position in away:
        unit = vehicle["holds"][position]
        leave.append(draft("left_deliberately", unit=unit, position=position, reason="tested-there"))
    fitted = _homeward(vehicle, away)
    second = None
    if fitted:
        unit = words.unit_name(job.unit(vehicle["holds"][away[0]]))
        second = action(
            message("guide-home-put-back", unit=unit, count=len(away)),
            draft("move_started", move="home", fitted=fitted, position="", reason="back-home"),
        )
    return step(
        "home",
        message("guide-home-title", count=len(away)),
        message(
            "guide-home-text",
            where=_sitting(job, away),
            same="yes" if _same_known_part(job, away) else "not-known",
            count=len(away),
        ),
        action=action(message("guide-home-leave", count=len(away)), *leave),
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


def place_choices(job: Job, unit: str, alone: bool) -> list[dict]:
    """Return where a unit in hand can go, each place with the fact that says so.

    A choice that "wants" a note asks why: a unit that was found bad is put into stock.
    """
    bad = unit_history.condemned(job.state, unit) != ""
    return [
        {
            "words": message(said),
            "wants": "note" if bad and place == "stock" else "",
            "events": [
                draft("unit_moved", unit=unit, place=place, how="tapped", note="", alone=alone, was="out")
            ],
        }
        for place, said in _WHERE_TO
    ]


def _where_to(job: Job, out, result) -> dict:
    unit, alone = out[0], len(out) == 1
    choices = place_choices(job, unit, alone)
    choices.extend(_back_choice(job, unit, result))
    return step(
        "where_to",
        message("guide-where-title", unit=words.unit_name(job.unit(unit))),
        message("guide-where-text-alone" if alone else "guide-where-text"),
        form="where_to",
        expects={"unit": unit, "do": "where_to", "alone": alone},
        choices=choices,
        progress={"now": 1, "total": len(out)},
    )


def _back_choice(job: Job, unit: str, result) -> list[dict]:
    """Return the choice to fit a good unit where it came from, [] for one under suspicion."""
    back = _place_to_return_to(job, unit, result)
    if not back:
        return []
    home = draft("move_started", move="home", fitted={back: unit}, position="", reason="back-home")
    return [
        {
            "words": message("guide-where-back", position=words.position_name(job, back)),
            "wants": "",
            "events": [home],
        }
    ]
