"""The next moves in words: title, reason, minutes, and what each possible result would then say."""

from . import words
from .exchange import short_name
from .flow_fix import replace_step
from .step import draft

_START_WORDS = {
    "retest": "Enter the new test",
    "clean": "Start with cleaning",
    "exchange": "Start the exchange",
    "unplug": "Unplug and test",
    "meter": "Start the checks",
    "replace": "Fit a new sensor",
}
_MOST_OUTCOMES = 4


def in_words(state, job: dict, result: dict) -> list[dict]:
    """Return the candidates of the reasoning as the app shows them, best first."""
    return [_move(state, job, entry) for entry in result["next"]]


def _move(state, job, entry):
    return {
        "move": entry["move"],
        "title": _title(state, job, entry),
        "reason": entry["reason"],
        "minutes_words": words.minutes(entry["minutes_x100"]),
        "start_words": _START_WORDS[entry["move"]],
        "outlook": _outlook(state, job, entry),
        "events": [] if entry["move"] == "replace" else [_start(entry)],
        "form": _form(state, job, entry),
    }


def _form(state, job, entry) -> dict | None:
    """Return the step that has to be filled in before a move can start: a replacement's new unit."""
    unit = state.occupant(job["vehicle"], _position(entry)) if entry["move"] == "replace" else None
    return replace_step(state, job, unit) if unit else None


def _title(state, job, entry):
    move = entry["move"]
    if move == "exchange":
        return "Exchange " + _pairs(state, job, entry["fitted"])
    if move == "retest":
        return "Run the self-test again"
    position = words.position_name(job, _position(entry))
    if move == "clean":
        return "Clean {} and test again".format(position)
    if move == "unplug":
        return "Unplug {} and test".format(position)
    if move == "meter":
        return "Check the wiring at {}".format(position)
    places = words.listed([words.position_name(job, each) for each in sorted(entry["fitted"])])
    return "Fit a new sensor at {}".format(places)


def _pairs(state, job, fitted):
    """Return 'right outer with right inner', a spare by its code, rings in order."""
    holds = state.vehicles[job["vehicle"]]["holds"]
    at = {holds[position]: position for position in sorted(holds) if holds[position]}
    said, done = [], {}
    for position in [p["id"] for p in job["positions"] if p["id"] in fitted]:
        if position in done:
            continue
        names, here = [], position
        while here is not None and here not in done:
            done[here] = True
            names.append(words.position_name(job, here))
            unit = fitted.get(here)
            here = at.get(unit)
            if here is None and unit:
                names.append(_at_hand(state, job, unit))
        if len(names) == 2:
            said.append("{} with {}".format(names[0], names[1]))
        else:
            said.append("{} in a ring".format(words.listed(names)))
    return words.listed(said)


def _at_hand(state, job, unit):
    """Return a unit that no position holds: a spare, or what was pulled on this job before."""
    name = short_name(state, job, unit)
    if state.units[unit]["place"] == "out":
        return name + ", in your hand"
    return "spare " + name


def _outlook(state, job, entry):
    """Return the likeliest results in words; what is left over is one line, so chances stay whole."""
    rows, rest = [], 0
    for outcome in entry["outlook"]:
        if len(rows) == _MOST_OUTCOMES:
            rest += outcome["chance"]
            continue
        rows.append(
            {
                "chance_words": words.percent(outcome["chance"]),
                "result": _result(job, entry, outcome),
                "then": outcome["then"],
            }
        )
    if rest:
        rows.append(
            {
                "chance_words": words.percent(rest),
                "result": "something else",
                "then": "the app reasons on from what you enter",
            }
        )
    return rows


def _result(job, entry, outcome):
    if "reads" in outcome:
        return "the wiring reads " + outcome["reads"]
    faulted = outcome["faulted"]
    if not faulted:
        return "no fault anywhere"
    names = words.listed([words.position_name(job, position) for position in faulted])
    before = job["tests"][-1]["faulted"] if job["tests"] else []
    if entry["move"] in ("exchange", "retest", "clean"):
        if sorted(faulted) == sorted(before):
            return "fault stays at " + names
        if len(faulted) == len(before):
            return "fault moves to " + names
    return "fault at " + names


def _position(entry):
    """Return the position a move is about: named, or the one it refits."""
    return entry["position"] if "position" in entry else sorted(entry["fitted"])[0]


def _start(entry):
    return draft(
        "move_started",
        move=entry["move"],
        fitted=entry.get("fitted", {}),
        position=entry.get("position", ""),
        reason=entry["reason"],
    )
