"""Who held a unit, in words: each handover, how the unit was identified at it, and its labels.

Identified by a scan is the strongest; a sensor that had no label yet counts as identified when a label
went on it at once.
"""

from ..codes import labels
from ..facts import labelling
from ..messages import all_of
from ..messages import message
from ..state.job import Job
from ..state.job import find_job
from ..state.unit import Unit
from . import words
from .people import who

# What a move is called; `out`, `fitted` and labels have messages of their own below.
_WHAT = {
    "stock": "custody-stock",
    "counter": "custody-counter",
    "customer": "custody-customer",
    "scrapped": "custody-scrapped",
    "disputed": "custody-disputed",
    "displaced": "custody-displaced",
    "mixed": "custody-mixed",
    "told apart": "custody-told-apart",
}
_HANDOVERS = ("fitted", "out", "stock", "counter", "customer", "scrapped")


def entries(state, unit: dict) -> list[dict]:
    """Return each move with its sentence and how the unit was identified, oldest first."""
    listed = []
    for index in range(len(unit["moves"])):
        move = unit["moves"][index]
        job = find_job(state, move["job"])
        note = move.get("note", "")
        if move.get("override"):
            note = message("custody-other-part", reason=move["override"])
        how = how_known(unit, index)
        listed.append(
            {
                "at": move["at"],
                "actor": who(state, move["event"], move["actor"]),
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


def in_short(unit: dict) -> dict:
    """Return the whole custody in one sentence: how many handovers, and how many of them by scan."""
    known = [how_known(unit, n) for n in range(len(unit["moves"])) if unit["moves"][n]["what"] in _HANDOVERS]
    if not known:
        return message("custody-short-none")
    counts = []
    for how in ("scanned", "typed", "written", "tapped"):
        count = len([each for each in known if each == how])
        if count:
            counts.append((count, message("custody-short-way", how=how)))
    if len(counts) == 1:
        return message("custody-short-one", count=len(known), way=counts[0][1])
    ways = [message("custody-short-counted", count=count, way=way) for count, way in counts]
    return message("custody-short-several", count=len(known), ways=all_of(ways))


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
        sentence = message("custody-label-now", sort=Unit(state, unit["id"]).sort.identity)
        if not on:
            note = void.get("note", "").rstrip(".") if void else ""
            sentence = (
                message("custody-label-void-note", note=note) if note else message("custody-label-void")
            )
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


def _sentence(job: Job | None, move) -> dict:
    vehicle = job.vehicle["name"] if job else ""
    where = words.position_name(job, move["position"]) if job and move["position"] else ""
    if move["what"] == "fitted":
        if where:
            return message("custody-fitted-at", position=where, vehicle=vehicle)
        return message("custody-fitted", vehicle=vehicle)
    if move["what"] == "out":
        if where:
            return message("custody-pulled", position=where, vehicle=vehicle)
        return message("custody-in-hand-for", vehicle=vehicle) if vehicle else message("custody-in-hand")
    code = labels.shown(move.get("code", ""))
    if move["what"] == "labelled":
        return message("custody-label-on", code=code) if code else message("custody-label-on-unread")
    if move["what"] == "label void":
        return message("custody-label-off", code=code) if code else message("custody-label-off-unread")
    if move["what"] in _WHAT:
        return message(_WHAT[move["what"]])
    return message("custody-else", what=move["what"])


def _how_words(move, how):
    if move["what"] in ("label void", "mixed", "told apart", "disputed", "displaced"):
        return ""
    if how != move["how"]:
        return message("custody-how-labelled", how=how)
    return message("custody-how", how=how)
