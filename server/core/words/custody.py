"""Who held a unit, in words: each handover, how the unit was identified at it, and its labels.

Identified by a scan is the strongest; a sensor that had no label yet counts as identified when a label
went on it at once.
"""

from .. import phrases
from ..codes import labels
from ..facts import labelling
from ..state.job import Job
from ..state.job import find_job
from ..state.unit import Unit
from . import words

# What a move is called; `out` and `fitted` have words of their own below.
_WHAT = {
    "stock": "Put into stock",
    "counter": "Handed to the parts counter",
    "customer": "Given to the customer",
    "scrapped": "Scrapped",
    "disputed": "Two places on record",
    "mixed": "Got mixed up with others",
    "told apart": "Told apart again",
}
_HANDOVERS = ("fitted", "out", "stock", "counter", "customer", "scrapped")
_WITH = {
    "scanned": "with its label scanned",
    "typed": "with its code typed in",
    "written": "with its code written by hand",
    "tapped": "without a scan",
}
_HOW = {
    "scanned": "label scanned",
    "typed": "code typed in",
    "tapped": "not scanned",
    "written": "code written by hand",
}


def entries(state, unit: dict) -> list[dict]:
    """Return each move with its sentence and how the unit was identified, oldest first."""
    listed = []
    for index in range(len(unit["moves"])):
        move = unit["moves"][index]
        job = find_job(state, move["job"])
        note = move.get("note", "")
        if move.get("override"):
            note = "Another part number, because: {}".format(move["override"])
        how = how_known(unit, index)
        listed.append(
            {
                "at": move["at"],
                "actor": move["actor"] or "no name",
                "job": move["job"],
                "vehicle": job.vehicle["name"] if job else "",
                "sentence": _sentence(job, move),
                "handover": move["what"] in _HANDOVERS,
                "how": how,
                "how_words": _how_words(move, how),
                "note": note,
            }
        )
    return listed


def in_short(unit: dict) -> str:
    """Return the whole custody in one sentence: how many handovers, and how many of them by scan."""
    known = [how_known(unit, n) for n in range(len(unit["moves"])) if unit["moves"][n]["what"] in _HANDOVERS]
    if not known:
        return "It has not been moved since it was first seen."
    counts = []
    for how in ("scanned", "typed", "written", "tapped"):
        count = len([each for each in known if each == how])
        if count:
            counts.append((count, _WITH[how]))
    total = "1 handover" if len(known) == 1 else "{} handovers".format(len(known))
    if len(counts) == 1:
        return "{}, {}{}.".format(total, "each " if len(known) > 1 else "", counts[0][1])
    said = ["{} {}".format(count, word) for count, word in counts]
    return "{}: {}.".format(total, phrases.listed(said))


def how_known(unit: dict, index: int) -> str:
    """Return how a unit was identified at a move; one without a label by the label that went on at once."""
    move = unit["moves"][index]
    if move["how"] == "tapped" and first_label_follows(unit, unit["moves"], index):
        return unit["moves"][index + 1]["how"]
    return move["how"]


def first_label_follows(unit: dict, moves: list, index: int) -> bool:
    """Tell whether a unit that had no label yet got its first one at once, while still in the hand."""
    if moves[index]["what"] != "out" or index + 1 >= len(moves):
        return False
    earlier = [move for move in unit["moves"] if move["what"] == "labelled"]
    following = moves[index + 1]
    return following["what"] == "labelled" and following == earlier[0] and following["how"] != "tapped"


def labels_of(state, unit: dict) -> list[dict]:
    """Return each label it ever had as {"code", "shown", "state", "at", "sentence"}, those still on it last.

    `state` is "on" or "void"; `at` is when it went on, None where that was before anyone noted it.
    """
    shown = []
    carried = labelling.carried(unit)
    for code in unit["old_codes"] + carried:
        put, void = _noted(unit, code, "label void", False), _noted(unit, code, "label void", True)
        on = code in carried
        sentence = "On the {} now.".format(Unit(state, unit["id"]).sort.unit)
        if not on:
            sentence = "Void{}.".format(": " + void["note"].rstrip(".") if void and void.get("note") else "")
        shown.append(
            {
                "code": code,
                "shown": labels.shown(code),
                "state": "on" if on else "void",
                "at": put["at"] if put else None,
                "void_at": void["at"] if void else None,
                "sentence": sentence,
            }
        )
    return shown


def _noted(unit, code, what, same) -> dict | None:
    """Return the first move that names a code and is (or is not) of a kind."""
    for move in unit["moves"]:
        if move.get("code") == code and (move["what"] == what) == same:
            return move
    return None


def _sentence(job: Job | None, move) -> str:
    vehicle = job.vehicle["name"] if job else ""
    where = words.position_name(job, move["position"]) if job and move["position"] else ""
    if move["what"] == "fitted":
        return "Fitted at {} of {}".format(where, vehicle) if where else "Fitted on {}".format(vehicle)
    if move["what"] == "out":
        if where:
            return "Pulled from {} of {}".format(where, vehicle)
        return "Taken in hand for {}".format(vehicle) if vehicle else "Taken in hand"
    if move["what"] in ("labelled", "label void"):
        code = labels.shown(move.get("code", ""))
        done = "put on" if move["what"] == "labelled" else "taken out of use"
        return "Label {} {}".format(code, done) if code else "Label " + done
    return _WHAT.get(move["what"], phrases.sentence_case(move["what"]))


def _how_words(move, how) -> str:
    if move["what"] in ("label void", "mixed", "told apart", "disputed"):
        return ""
    if how != move["how"]:
        return "label put on at once, {}".format("scanned" if how == "scanned" else _HOW.get(how, how))
    return _HOW.get(how, how)
