"""A unit is at exactly one place, and a position holds at most one unit."""

from .. import phrases
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
        return _refusal("This {} is on record".format(sort.unit), "It was added before.", "Go on with it.")
    if kind not in ("unit_pulled", "unit_fitted", "unit_moved", "unit_seen"):
        return None
    unit = state.units[data["unit"]]
    if kind == "unit_seen":
        return _refuse_seen(unit, data["how"], Unit(state, unit["id"], job).sort)
    name = phrases.sentence_case(words.unit_name(Unit(state, unit["id"], job)))
    if unit["claims"]:
        return _refusal(
            "Two places are on record",
            "{} is in dispute.".format(name),
            "Scan it where it really is; that settles it.",
        )
    where = words.place_words(Unit(state, unit["id"], job))
    if kind == "unit_pulled":
        if (
            unit["place"] != "fitted"
            or unit["position"] != data["position"]
            or (unit["vehicle"] != job.vehicle_id)
        ):
            return _refusal(
                "It does not sit there",
                "{} is {}, not at {}.".format(name, where, words.position_name(job, data["position"])),
                "Look again at which {} you hold.".format(job.sort.unit),
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
        "Read its label",
        "Only the label says for sure which {} this is.".format(sort.unit),
        "Scan it, or type its code.",
    )


def _refuse_move(unit, name, where, place, job) -> dict | None:
    if unit["place"] == "fitted":
        return _refusal("It is still fitted", "{} is {}.".format(name, where), "Pull it first.")
    if unit["place"] == place and (place != "out" or (job and unit["job"] == job.id)):
        return _refusal("It is there already", "{} is {}.".format(name, where), "Go on.")
    return None


def _refuse_fit(job: Job, unit, name, where, position) -> dict | None:
    wanted = words.position_name(job, position)
    if unit["place"] != "out" or unit["job"] != job.id:
        return _refusal(
            "It is somewhere else",
            "{} is {}.".format(name, where),
            "Only {} that is in hand on this job can be fitted at {}.".format(job.sort.a_unit, wanted),
        )
    occupant = job.fitted_at(position)
    if occupant:
        return _refusal(
            "{} is taken".format(phrases.sentence_case(wanted)),
            "{} sits at {}.".format(phrases.sentence_case(words.unit_name(job.unit(occupant))), wanted),
            "Pull that one first.",
        )
    return None


def _refusal(title, sentence, do) -> dict:
    return refusal("one_place", title, sentence, do)
