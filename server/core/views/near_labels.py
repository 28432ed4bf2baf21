"""Labels of which somebody has typed what can still be read: a symbol that suffered leaves some characters.

All that this log knows are offered, whatever the step expects: the wrong one in the hand has to be among
them, so that it is stopped as if it had been typed whole.
"""

from ..codes import labels
from ..state.unit import Unit
from ..words import words
from .job import bad_at_hand

LEAST, MOST = 2, 6  # characters typed; labels shown


def near_labels(state, text: str, job: str) -> dict:
    """Return the labels that have what was typed: those in hand first, then those of the job, then others.

    A label that begins with it comes before one that has it further on or scattered, in the same order.
    {"labels": [{"code", "shown", "where", "bad"}], "more"}: how many there are besides.
    """
    typed = "".join([each for each in labels.upper_ascii(text) if each not in "- "])
    if not LEAST <= len(typed) < labels.CODE_LENGTH:
        return {"labels": [], "more": 0}
    found = []
    for code in state.codes:
        if _has(code, typed):
            unit = state.units[state.codes[code]]
            away = 0 if unit["place"] in ("out", "counter") else 1 if job in unit["jobs"] else 2
            found.append((away, not code.startswith(typed), typed not in code, code, unit["id"]))
    found.sort()
    lines = [
        {
            "code": code,
            "shown": labels.shown(code),
            "where": words.place_words(Unit(state, unit)),
            "bad": bad_at_hand(state, unit),
        }
        for _, _, _, code, unit in found[:MOST]
    ]
    return {"labels": lines, "more": len(found) - len(lines)}


def _has(code: str, typed: str) -> bool:
    """Tell whether a code has these characters in this order, whatever stands between."""
    at = 0
    for character in code:
        if at < len(typed) and character == typed[at]:
            at += 1
    return at == len(typed)
