"""The steps at the end: the walk-behind check, good units home, every unit accounted for, the close."""

from . import exchange
from . import words
from .rules.closing import blocked_by
from .step import action
from .step import draft
from .step import step

_WHERE_TO = (
    ("counter", "To the parts counter"),
    ("customer", "The customer keeps it"),
    ("stock", "Into my stock"),
    ("scrapped", "Scrapped"),
)


def closed_words(job: dict) -> str:
    """Return the sentence of a closed job."""
    return "Closed by {}. Its record stays.".format(job["closed"]["actor"] or "someone unnamed")


def nothing_shown(state, job: dict) -> tuple:
    """Return (stage, step) after tests that never showed a fault."""
    if job["comes_and_goes"]:
        return "test", step(
            "test.again",
            "No fault shown yet",
            "A fault that comes and goes needs more than one test. Move the wires by hand, spray water, "
            "warm it up, and test again.",
            form="test",
            expects={
                "positions": [{"id": p["id"], "name": p["name"]} for p in job["positions"]],
                "unplugged": [],
                "number": len(job["tests"]) + 1,
            },
            action=action("Enter the result"),
            second=action("Close without a finding", draft("job_closed", note="no fault shown")),
        )
    return "test", step(
        "nothing",
        "The self-test shows no fault",
        "Either it is gone or it comes and goes.",
        action=action("It comes and goes", draft("comes_and_goes_set", value=True)),
        second=action("Close without a finding", draft("job_closed", note="no fault shown")),
    )


def ending(state, job: dict, result: dict) -> tuple:
    """Return (stage, step) once nothing is left to fix."""
    if job["walk"] is None:
        return "prove", _walk(job, result)
    away = _away_from_home(state, job)
    if away:
        return "close", _home(state, job, away)
    out = state.units_out(job["id"])
    if out:
        return "close", _where_to(state, job, out)
    blockers = blocked_by(state, job)
    text = "Every sensor is accounted for."
    if blockers:
        text = " ".join(blockers)
    elif job["walk"]["missed"]:
        names = [words.position_name(job, position) for position in job["walk"]["missed"]]
        text += " The walk-behind check missed {}; that stays on record.".format(words.listed(names))
    return "close", step(
        "close",
        "Close the job" if not blockers else "Not everything is accounted for",
        text,
        form="close",
        action=None if blockers else action("Close the job", draft("job_closed", note="")),
    )


def _walk(job, result):
    everything = [position["id"] for position in job["positions"]]
    return step(
        "walk",
        "Walk behind it with a pole",
        "Key on, reverse engaged. Hold an upright pole at each sensor in turn and listen. "
        "Tap for each one what you heard.",
        form="walk",
        expects={
            "positions": [{"id": p["id"], "name": p["name"]} for p in job["positions"]],
            "clear_words": words.percent(result["clear"]),
        },
        action=action("All of them sound", draft("walk_checked", positions=everything, missed=[])),
    )


def _away_from_home(state, job) -> list:
    """Return the positions whose unit came from another position of this vehicle, not yet settled."""
    vehicle = state.vehicles[job["vehicle"]]
    came_from = {vehicle["home"][position]: position for position in vehicle["home"]}
    away = []
    for position in job["positions"]:
        place = position["id"]
        unit = vehicle["holds"].get(place)
        if unit and came_from.get(unit, place) != place and job["left"].get(place) != unit:
            away.append(place)
    return away


def _home(state, job, away):
    vehicle = state.vehicles[job["vehicle"]]
    lines, leave = [], []
    for position in away:
        unit = vehicle["holds"][position]
        lines.append(
            "{} sits at {}".format(exchange.short_name(state, job, unit), words.position_name(job, position))
        )
        leave.append(draft("left_deliberately", unit=unit, position=position, reason="same part, tested"))
    fitted = _homeward(vehicle, away)
    second = None
    if fitted:
        second = action(
            "Put them back",
            draft("move_started", move="home", fitted=fitted, position="", reason="back home"),
        )
    return step(
        "home",
        "Leave the good ones where they are?",
        "{}. They are the same part and passed there. Putting them back means one more test.".format(
            words.sentence_case(words.listed(lines))
        ),
        action=action("Leave them there", *leave),
        second=second,
    )


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


def _where_to(state, job, out):
    unit = out[0]
    name = exchange.short_name(state, job, unit)
    choices = [
        {
            "words": said,
            "events": [draft("unit_moved", unit=unit, place=place, how="tapped", note="")],
        }
        for place, said in _WHERE_TO
    ]
    return step(
        "where_to",
        "Where does {} go?".format(name),
        "It is in your hand. Scan it to be sure that it is this one, then say where it goes.",
        form="where_to",
        expects={"unit": unit, "do": "where_to"},
        choices=choices,
        progress={"now": 1, "total": len(out)},
    )
