"""The possible results of a move in words: what would be seen, how likely it is, what it would say.

The reasoning lists every pattern of faults. A person at the bumper gets at most five rows: patterns
that say the same are put together, what is rare is one row.
"""

from .. import phrases
from ..state.job import Job
from . import words

# With what is left over, five rows.
_MOST_ROWS = 4
# Rarer than this (parts per billion) is part of 'anything else'; rarer than that is not mentioned.
_ROW = 20000000
_MENTIONED = 500000
_MOST_NAMES = 4
# Above this share it is not rare at all, only too many kinds to list.
_RARE = 50000000
_RARELY = "test again before you conclude anything"
_OFTEN = "the next move is worked out from what you enter"


def outlook(job: Job, entry: dict) -> list[dict]:
    """Return the results of a move as rows {"chance_words", "result", "then"}, likeliest first."""
    rows, rest = [], 0
    for outcome in entry["outlook"]:
        said = _row_for(job, entry, outcome, rows)
        if said is not None:
            said["chance"] += outcome["chance"]
            said["merged"] += outcome["chance"]
        elif len(rows) < _MOST_ROWS and outcome["chance"] >= _ROW:
            rows.append(
                {
                    "chance": outcome["chance"],
                    "result": result(job, entry, outcome),
                    "then": outcome["then"],
                    "outcome": outcome,
                    "merged": 0,
                }
            )
        else:
            rest += outcome["chance"]
    order = sorted([(-rows[n]["chance"], n) for n in range(len(rows))])
    shown = [_shown(entry, rows[n]) for _, n in order]
    if rest >= _MENTIONED:
        then = _RARELY if rest < _RARE else _OFTEN
        shown.append({"chance_words": phrases.percent(rest), "result": "anything else", "then": then})
    return shown


def _row_for(job, entry, outcome, rows) -> dict | None:
    """Return the row that says the same already: of unplugging, or of fewer of the same faults."""
    for row in rows:
        if _meaning(row["then"]) != _meaning(outcome["then"]) or "reads" in outcome:
            continue
        if entry["move"] == "unplug":
            return row
        seen = row["outcome"]["faulted"]
        fewer = [each for each in outcome["faulted"] if each not in seen]
        if outcome["faulted"] and not fewer and len(seen) > 1:
            return row
    return None


def _shown(entry, row) -> dict:
    said, then = row["result"], row["then"]
    if row["merged"] * 10 > row["chance"] and entry["move"] != "unplug":
        some = "only one" if len(row["outcome"]["faulted"]) == 2 else "some"
        said, then = "{} (or at {} of them)".format(said, some), _meaning(then)
    return {"chance_words": phrases.percent(row["chance"]), "result": said, "then": then}


def _meaning(then: str) -> str:
    """Return what a result would say, without its figure."""
    before, _, after = then.rpartition(", ")
    figure, _, more = after.partition(" %")
    return before + more if before and figure != after else then


def result(job: Job, entry: dict, outcome: dict) -> str:
    """Return one result of a move as part of a sentence, e.g. 'fault moves to right inner'."""
    if "reads" in outcome:
        return "every check is good" if outcome["reads"] == "good" else "a check is bad"
    faulted = outcome["faulted"]
    if entry["move"] == "unplug":
        there = "fault shown" if entry["position"] in faulted else "no fault shown"
        return "{} at {}".format(there, words.position_name(job, entry["position"]))
    if not faulted:
        return "no fault this time" if entry["move"] == "retest" else "no fault anywhere"
    before = last_faulted(job)
    if entry["move"] == "exchange":
        return _after_exchange(job, entry, before, faulted)
    if sorted(faulted) == sorted(before) and entry["move"] == "retest":
        return "fault at {} again".format(places(job, faulted))
    still = not [each for each in faulted if each not in before]
    return ("fault still at " if still else "fault at ") + places(job, faulted)


def _after_exchange(job: Job, entry, before, faulted) -> str:
    """Say of a fault after an exchange whether it moved with its unit, stayed, or did both."""
    fitted = entry["fitted"]
    holds = job.holds
    came = {holds[position]: position for position in sorted(holds) if holds[position]}
    moved, stayed = [], []
    for position in faulted:
        came_from = came.get(fitted[position]) if position in fitted else None
        if position in before and came_from not in before:
            stayed.append(position)
        elif position not in before and came_from in before:
            moved.append(position)
        else:
            # Suspects exchanged with each other, or a fault where none was: no moving, no staying.
            return "fault at " + places(job, faulted)
    if len(before) == 1 and moved and stayed:
        return "fault at both " + places(job, faulted)
    only = " only" if len(faulted) < len(_in_sight(entry, came, before)) else ""
    if not stayed:
        return "fault moves to {}{}".format(places(job, moved), only)
    if not moved:
        return "fault stays at {}{}".format(places(job, stayed), only)
    return "fault moves to {}, stays at {}".format(places(job, moved), places(job, stayed))


def _in_sight(entry, came, before) -> list:
    """Return the faults of before that the outlook watches: on a large board it leaves some out."""
    watched = {}
    for outcome in entry.get("outlook", entry.get("results", [])):
        for position in outcome["faulted"]:
            watched[position] = True
    goes = {came[entry["fitted"][p]]: p for p in sorted(entry["fitted"]) if entry["fitted"][p] in came}
    return [position for position in before if goes.get(position, position) in watched]


def last_faulted(job: Job) -> list:
    """Return where the last test showed a fault that one can rely on: heard, and nothing unplugged."""
    for test in reversed(job.tests):
        if test["heard"] and not test["unplugged"]:
            return test["faulted"]
    return []


def places(job: Job, positions: list) -> str:
    """Return the names of positions as a list that stays short: a whole bumper is one name."""
    if len(positions) == len(job.positions) and len(positions) > 2:
        return "every position"
    edges = {}
    for position in job.positions:
        edges.setdefault(position["edge"], []).append(position["id"])
    names, rest = [], list(positions)
    for edge in sorted(edges):
        whole = [each for each in edges[edge] if each in rest]
        if len(whole) == len(edges[edge]) and len(whole) > 2:
            names.append("every {} position".format(edge))
            rest = [each for each in rest if each not in whole]
    names += [words.position_name(job, each) for each in rest]
    if len(names) > _MOST_NAMES:
        names = names[: _MOST_NAMES - 1] + ["{} more".format(len(names) - _MOST_NAMES + 1)]
    return phrases.listed(names)
