"""What the figures offer to go by: drafts for entries of the yard, never taken by themselves.

A figure is offered once `ENOUGH` jobs are behind it, of a rate of readings as many of those too, and once all
jobs are counted in. How far a class may be wrong is what its bounds span around the figure, between one and a
half and three times (`evidence/learned.py` too).
"""

import json
from typing import Any

from sqlite_utils import Database

from server.core.evidence.assumptions import exact
from server.core.facts.learned import MINUTES
from server.core.facts.learned import RATES
from server.core.infer.variations import CLASSES
from server.core.messages import all_of
from server.core.messages import message
from server.core.messages import sentences
from server.folded import FoldedState
from server.keeping.record.makers import names
from server.lessons.minutes import LEARNED
from server.lessons.page import rate_rows
from server.lessons.work import ENOUGH
from server.lessons.work import tells_enough

_LEAST, _MOST = 1.5, 3.0
_PPM = 1_000_000
_TAKEN = {RATES: "facts-rates-learned", MINUTES: "facts-minutes-learned"}
_ODDS_OF = {"shows": "miss", "false_alarm": "false_alarm"}  # whose doubt a rate of readings tells


def offer(db: Database, found: dict[str, Any]) -> dict[str, Any]:
    """Returns the rates with what can be taken of them and of the minutes, and what was taken.

    {"rows" (as a page has them), "says", "choices": [{"words", "events"}], "taken": [{"says", "words",
    "events"}], "note"}; what is recorded is outside any job.
    """
    upto = _upto(db)
    choices = []
    rates, times = taken_of(found["rates"]), _minutes(found)
    state = FoldedState(db)
    if rates and found["yards"]:
        rates["yards_x100"] = {_id_of(yard["fingerprint"]): yard["weight"] for yard in found["yards"]}
    for kind, data in ((RATES, rates), (MINUTES, times)):
        if data and not found["waiting"]:
            data |= {"jobs": len(found["counted"]), "upto": upto}
            if _is_news(state.learned.get(kind), data):
                events = [{"kind": kind, "job": None, "data": data}]
                choices.append({"words": message("lessons-take", what=kind), "events": events})
    return {
        "rows": [{**row, "jobs": []} for row in rate_rows(found)] if found["counted"] else [],
        "says": _says(found),
        "note": message("lessons-jobs-to-come") if choices else "",
        "choices": choices,
        "taken": [
            _taken(kind, state.learned[kind], names(db)) for kind in (RATES, MINUTES) if kind in state.learned
        ],
    }


def taken_of(rates: list[dict[str, Any]]) -> dict[str, Any]:
    """Returns the data of an entry that takes such rates as figures have, {} where there are too few jobs."""
    told = {rate["id"]: rate for rate in rates if tells_enough(rate)}
    if CLASSES[0] not in told:
        return {}
    doubts = {name: _doubt(told[name]) for name in CLASSES}
    for name, what in _ODDS_OF.items():
        if name in told:
            doubts[what] = _doubt(_as_odds(told[name], away=name == "shows"))
    # At its ends a rate says nothing, or everything.
    taken = {name: min(max(rate["value_ppm"], 1), _PPM - 1) for name, rate in told.items()}
    return {"rates_ppm": taken, "doubts_x100": doubts}


def _as_odds(rate: dict[str, int], away: bool) -> dict[str, float]:
    """Returns the figure and its bounds as odds, of the rate or of what it leaves."""
    found = {}
    for name in ("value_ppm", "low_ppm", "high_ppm"):
        chance = min(max(_PPM - rate[name] if away else rate[name], 1), _PPM - 1)
        found[name] = chance / (_PPM - chance)
    if away:
        found["low_ppm"], found["high_ppm"] = found["high_ppm"], found["low_ppm"]
    return found


def _doubt(rate: dict[str, Any]) -> int:
    value = max(rate["value_ppm"], 1e-9)
    span = max(rate["high_ppm"] / value, value / max(rate["low_ppm"], 1e-9))
    return int(min(max(span, _LEAST), _MOST) * 100 + 0.5)


def _minutes(found: dict[str, Any]) -> dict[str, Any]:
    """Returns the data of an entry that takes the minutes, {} where there are too few times."""
    told = {each["id"]: each["median_x100"] for each in found["minutes"] if len(each["jobs"]) >= ENOUGH}
    times = {name: told[name] for name in LEARNED if name in told}
    if not times:
        return {}
    reach: dict[str, list[int]] = {}
    for each in found["reach"]:
        if len(each["jobs"]) >= ENOUGH and "pull" in told:
            reach.setdefault(each["position"], []).append(max(50, each["median_x100"] - told["pull"]))
    return {"minutes_x100": times, "reach_x100": {place: max(all_) for place, all_ in sorted(reach.items())}}


def _says(found: dict[str, Any]) -> dict | str:
    """Returns in what the jobs differ from the defaults, "" for nothing."""
    other = [rate["id"] for rate in found["rates"] if tells_enough(rate) and _stands_out(rate)]
    if not other:
        return message("lessons-as-default") if len(found["counted"]) >= ENOUGH else ""
    return message(
        "lessons-unlike-default", rates=all_of([message("lessons-rate", what=each) for each in other])
    )


def _stands_out(rate: dict[str, Any]) -> bool:
    """Tells whether the default is outside the bounds."""
    return not rate["low_ppm"] <= rate["default_ppm"] <= rate["high_ppm"]


def _is_news(taken: dict[str, Any] | None, data: dict[str, Any]) -> bool:
    """Tells whether what is offered differs from what was taken, but for how many jobs it is of."""
    kept = {name: value for name, value in (taken or {}).items() if name != "event"}
    return {**kept, "jobs": 0, "upto": ""} != {**data, "jobs": 0, "upto": ""}


def _id_of(seal: str) -> str:
    """Returns the fingerprint of a yard's seal as an entry has it."""
    return seal.replace(" ", "-")


def _taken(kind: str, said: dict[str, Any], confirmed: dict[str, str]) -> dict[str, Any]:
    """Returns what was taken; a yard keeps its name in it, though its figures may count no more."""
    device, _, seq = said["event"].rpartition(":")
    back = {"kind": "corrected", "job": None, "data": {"device": device, "seq": int(seq), "reason": "slip"}}
    called = {_id_of(seal): name for seal, name in confirmed.items()}
    others = [
        message("lessons-yard-weighs", yard=called.get(each) or each, weight=exact(weight * 10_000))
        for each, weight in sorted(said.get("yards_x100", {}).items())
    ]
    own = message(_TAKEN[kind], jobs=said["jobs"])
    return {
        "says": sentences([own, message("lessons-taken-with", yards=all_of(others))]) if others else own,
        "words": message("lessons-take-back"),
        "events": [back],
    }


def _upto(db: Database) -> str:
    row = db.conn.execute("SELECT body FROM events ORDER BY n DESC LIMIT 1").fetchone()
    if row is None:
        return ""
    event = json.loads(row[0])
    return f"{event['device']}:{event['seq']}"
