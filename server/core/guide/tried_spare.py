"""A spare that was tried in a unit's place: the unit goes back, or the spare stays."""

from ..facts.draft import draft
from ..messages import message
from ..messages import percent
from ..state.job import Job
from ..words import words
from . import moving
from .step import action
from .step import step

# A unit that is bad with less than this chance (parts per billion) is worth its place again; our choice.
_WORTH_ITS_PLACE = 200000000


def told_by_its_place(job: Job, result: dict, moves: list | None) -> dict | None:
    """Return the step that puts a unit back for which a spare is in, None where nothing is open about it.

    As long as it is not known to be bad, the spare may be kept for a good one. It may stay all the same.
    One that is hardly to blame is asked about once the rest is done.
    """
    chance = {entry["cause"]: entry["probability"] for entry in result["causes"]}
    spares = _spares_in(job, chance)
    if not spares:
        return None
    if moves is None:
        return moving.thinking()
    if not moves or moves[0]["move"] != "exchange":
        return None
    made = moving.choose(job, moves)
    stay = [
        draft("left_deliberately", unit=unit, position=position, reason="spare-stays")
        for position, unit in spares
    ]
    made["second"] = action(message("guide-stock-leave"), *stay)
    return made


def _spares_in(job: Job, chance: dict) -> list:
    """Return (position, unit) of what sits, not yet for good, where a doubtful unit of its own came out."""
    home, holds = job.vehicle["home"], job.vehicle["holds"]
    found = []
    for position in sorted(home):
        sits, own = holds.get(position), job.unit(home[position])
        doubtful = chance.get("unit:" + own.id, 0) >= _WORTH_ITS_PLACE
        here = doubtful and (own.is_in_hand() or own.is_in_stock())
        foreign = sits and sits not in [home[place] for place in home]
        if foreign and here and not own.is_disputed() and job.left_at(position) != sits:
            found.append((position, sits))
    return found


def parked(job: Job, chance: dict) -> str | None:
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


def back_from_stock(job: Job, position: str, chance: dict) -> dict:
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
