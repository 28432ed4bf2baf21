"""The possible results of a move: what would be seen, how likely it is, what it would say.

The reasoning lists every pattern of faults. A person at the bumper gets at most five rows: patterns
that say the same are put together, what is rare is one row.
"""

from ..messages import all_of
from ..messages import message
from ..messages import percent
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
_READS = {
    "good": "results-checks-good",
    "bad": "results-check-bad",
    "ticks": "results-ticks",
    "silent": "results-silent",
}


def outlook(job: Job, entry: dict) -> list[dict]:
    """Return the results of a move as rows {"chance_words", "result", "then"}, likeliest first."""
    rows, rest = [], 0
    for outcome in entry["outlook"]:
        said = _row_for(entry, outcome, rows)
        if said is not None:
            said["chance"] += outcome["chance"]
            said["merged"] += outcome["chance"]
        elif len(rows) < _MOST_ROWS and outcome["chance"] >= _ROW:
            rows.append(
                {
                    "chance": outcome["chance"],
                    "result": result(job, entry, outcome),
                    "then": outcome["then"],
                    "who": outcome.get("who", ""),
                    "outcome": outcome,
                    "merged": 0,
                }
            )
        else:
            rest += outcome["chance"]
    order = sorted([(-rows[n]["chance"], n) for n in range(len(rows))])
    shown = [_shown(entry, rows[n]) for _, n in order]
    if rest >= _MENTIONED:
        then = message("results-rarely" if rest < _RARE else "results-often")
        shown.append({"chance_words": percent(rest), "result": message("results-else"), "then": then})
    return shown


def _row_for(entry, outcome, rows) -> dict | None:
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
        said = message("results-or-at", result=said, count=len(row["outcome"]["faulted"]))
        then = _meaning(then)
    if row["who"]:
        then = message("results-then-who", then=then, who=row["who"])
    return {"chance_words": percent(row["chance"]), "result": said, "then": then}


def _meaning(then: dict) -> dict:
    """Return what a result would say, without its share: the message says it so where `share` is "none"."""
    if "share" not in then["args"]:
        return then
    args = dict(then["args"])
    args["share"] = "none"
    return message(then["msg"], **args)


def result(job: Job, entry: dict, outcome: dict) -> dict:
    """Return one result of a move as part of a sentence, e.g. 'fault moves to right inner'."""
    if "reads" in outcome:
        return message(_READS[outcome["reads"]])
    faulted = outcome["faulted"]
    if entry["move"] == "unplug":
        shown = "results-shown-at" if entry["position"] in faulted else "results-not-shown-at"
        return message(shown, position=words.position_name(job, entry["position"]))
    if not faulted:
        return message("results-none-this-time" if entry["move"] == "retest" else "results-none")
    before = last_faulted(job)
    if entry["move"] == "exchange":
        return _after_exchange(job, entry, before, faulted)
    if sorted(faulted) == sorted(before) and entry["move"] == "retest":
        return message("results-again", positions=places(job, faulted))
    still = not [each for each in faulted if each not in before]
    return message("results-still" if still else "results-fault", positions=places(job, faulted))


def _after_exchange(job: Job, entry, before, faulted) -> dict:
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
            return message("results-fault", positions=places(job, faulted))
    if len(before) == 1 and moved and stayed:
        return message("results-both", positions=places(job, faulted))
    only = "yes" if len(faulted) < len(_in_sight(entry, came, before)) else "no"
    if not stayed:
        return message("results-moves", positions=places(job, moved), only=only)
    if not moved:
        return message("results-stays", positions=places(job, stayed), only=only)
    return message("results-moves-and-stays", moved=places(job, moved), stayed=places(job, stayed))


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


def places(job: Job, positions: list) -> dict:
    """Return the names of positions as a list that stays short: a whole bumper is one name."""
    if len(positions) == len(job.positions) and len(positions) > 2:
        return message("results-every-position")
    edges = {}
    for position in job.positions:
        edges.setdefault(position["edge"], []).append(position["id"])
    names: list = []
    rest = list(positions)
    for edge in sorted(edges):
        whole = [each for each in edges[edge] if each in rest]
        if len(whole) == len(edges[edge]) and len(whole) > 2:
            names.append(message("results-every-at-edge", edge=edge))
            rest = [each for each in rest if each not in whole]
    names += [words.position_name(job, each) for each in rest]
    if len(names) > _MOST_NAMES:
        more = message("results-more", count=len(names) - _MOST_NAMES + 1)
        names = names[: _MOST_NAMES - 1] + [more]
    return all_of(names)
