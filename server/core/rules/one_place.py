"""A unit is at exactly one place, and a position holds at most one unit."""

from ..messages import message
from ..parts.sort import Sort
from ..state.job import Job
from ..state.unit import Unit
from ..words import words
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse a move that starts where the unit is not, or ends where another unit is."""
    kind, data, state = draft["kind"], draft["data"], fold.state
    if kind == "unit_added" and data["unit"] in state.units:
        sort = Unit(state, data["unit"], job).sort
        return _refusal(
            message("rules-place-added-title", sort=sort.identity),
            message("rules-place-added"),
            message("rules-place-added-do"),
        )
    if kind not in ("unit_pulled", "unit_fitted", "unit_moved", "unit_seen"):
        return None
    unit = state.units[data["unit"]]
    if kind == "unit_seen":
        return _refuse_seen(unit, data["how"], Unit(state, unit["id"], job).sort)
    name = words.unit_name(Unit(state, unit["id"], job))
    if unit["claims"]:
        return _refusal(
            message("rules-place-disputed-title"),
            message("rules-place-disputed", unit=name),
            message("rules-place-disputed-do"),
        )
    where = words.place_words(Unit(state, unit["id"], job))
    if kind == "unit_pulled":
        if (
            unit["place"] != "fitted"
            or unit["position"] != data["position"]
            or (unit["vehicle"] != job.vehicle_id)
        ):
            return _refusal(
                message("rules-place-not-there-title"),
                message(
                    "rules-place-not-there",
                    unit=name,
                    place=where,
                    position=words.position_name(job, data["position"]),
                ),
                message("rules-place-not-there-do", sort=job.sort.identity),
            )
        return None
    if kind == "unit_moved":
        return _refuse_move(unit, name, where, data["place"], job)
    return _refuse_fit(job, unit, name, where, data["position"])


def _refuse_seen(unit, how, sort: Sort) -> dict | None:
    """Seeing settles where a unit is, so its label has to be read; one without a label has none."""
    if how in ("scanned", "typed") or (unit["claims"] and not unit["code"]):
        return None
    return _refusal(
        message("rules-place-read-title"),
        message("rules-place-read", sort=sort.identity),
        message("rules-place-read-do"),
    )


def _refuse_move(unit, name, where, place, job) -> dict | None:
    if unit["place"] == "fitted":
        return _refusal(
            message("rules-place-fitted-title"),
            message("rules-unit-is", unit=name, place=where),
            message("rules-place-fitted-do"),
        )
    if unit["place"] == place and (place != "out" or (job and unit["job"] == job.id)):
        return _refusal(
            message("rules-place-already-title"),
            message("rules-unit-is", unit=name, place=where),
            message("rules-go-on"),
        )
    return None


def _refuse_fit(job: Job, unit, name, where, position) -> dict | None:
    wanted = words.position_name(job, position)
    if unit["place"] != "out" or unit["job"] != job.id:
        return _refusal(
            message("rules-place-elsewhere-title"),
            message("rules-unit-is", unit=name, place=where),
            message("rules-place-elsewhere-do", sort=job.sort.identity, position=wanted),
        )
    occupant = job.fitted_at(position)
    if occupant:
        return _refusal(
            message("rules-place-taken-title", position=wanted),
            message("rules-place-taken", unit=words.unit_name(job.unit(occupant)), position=wanted),
            message("rules-place-taken-do"),
        )
    return None


def _refusal(title, sentence, do) -> dict:
    return refusal("one_place", title, sentence, do)
