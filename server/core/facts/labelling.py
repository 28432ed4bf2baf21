"""Folding of labels: a code names one unit for good, and only a person takes a label out of use.

Two phones that know nothing of each other may label one unit twice. Then both labels name it, since
both are on it, and it is flagged until somebody has looked and taken one of them out of use.
"""

from ..state.index import LABEL

SHARED = LABEL  # one code on two units
DOUBLE = "two labels"  # two codes on one unit


def put_on(state, unit: dict, code: str) -> str:
    """Bind a code to a unit; return what there is to flag: "", SHARED or DOUBLE."""
    holder = state.codes.get(code)
    if holder is not None and holder != unit["id"]:
        return SHARED  # no rebinding: what the code named until now, it names still
    state.codes[code] = unit["id"]
    if code in unit["old_codes"] or code in carried(unit):
        return ""
    if not unit["code"]:
        unit["code"] = code
        return ""
    unit["also"].append(code)
    return DOUBLE


def void(state, unit: dict, code: str) -> None:
    """Take a label out of use, and with it what was flagged about it."""
    if code in carried(unit):
        left = [each for each in carried(unit) if each != code]
        unit["code"] = left[0] if left else ""
        unit["also"] = left[1:]
        unit["old_codes"].append(code)
    for conflict in state.conflicts_of(unit["id"]):
        if conflict["about"] == DOUBLE:
            conflict["open"] = conflict["code"] in unit["also"]
        elif conflict["code"] == code:
            conflict["open"] = False


def carried(unit: dict) -> list:
    """Return the codes of the labels that are on a unit, the one it goes by first."""
    return [unit["code"]] + unit["also"] if unit["code"] else []
