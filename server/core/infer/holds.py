"""Whether a conclusion survives its assumptions: the rule over the variations, one at a time.

A conclusion stands when its chance reaches the confidence C and, with each class of rates tripled and
cut to a third (`doubt` 3), keeps at least 1 - 2(1 - C). A `doubt` of 1 asks for no more than C.
"""

from . import variations
from .figures import WHOLE
from .figures import parts

# Factors are looked for in tenths, up to a hundred times.
_TENTHS = 10
_MOST = 1000


def varied(doubt: dict) -> list:
    """Return the variations as (what, factor, how it is named), in the order in which ties are told.

    `doubt` is how many times wrong each class may be, by name.
    """
    rows = []
    for what in variations.CLASSES + variations.READINGS:
        factor = doubt[what]
        if factor != 1.0:
            text = _text(factor)
            rows.append((what, factor, "{} x{}".format(what, text)))
            rows.append((what, 1.0 / factor, "{} /{}".format(what, text)))
    return rows


def _text(doubt: float) -> str:
    """Return the number as it is written, up to three decimals."""
    whole = int(doubt * 1000 + 0.5)
    text = str(whole // 1000)
    rest = whole % 1000
    if rest:
        digits = str(1000 + rest)[1:]
        while digits[-1] == "0":
            digits = digits[:-1]
        text = text + "." + digits
    return text


def holds(source, event: tuple, chance: int, doubt: dict) -> dict:
    """Return {"lowest", "when"}: the lowest chance (of `chance` now) under a variation, and under which.

    `source` is a Variations, or what answers like one. `when` is None where nothing is varied, and where
    it stays a certainty: without a suspect no reading leans on a rate.
    """
    lowest, when = chance, None
    for what, factor, name in varied(doubt):
        found = parts(source.chance(what, factor, event))
        if when is None or found < lowest:
            lowest, when = found, name
    return {"lowest": lowest, "when": when if lowest < WHOLE else None}


def least(confidence: int) -> int:
    """Return what has to be left under every variation."""
    return WHOLE - 2 * (WHOLE - confidence)


def stand(chance: int, held: dict, confidence: int) -> bool:
    """Tell whether a conclusion of this chance, holding like this, stands."""
    return chance >= confidence and held["lowest"] >= least(confidence)


def survives(source, event: tuple, confidence: int, doubt: dict) -> bool:
    """Tell whether an event keeps what it has to under every variation."""
    for what, factor, _ in varied(doubt):
        if parts(source.chance(what, factor, event)) < least(confidence):
            return False
    return True


def is_clear(answer: dict, confidence: int) -> bool:
    """Tell whether an answer says that nothing is left to fix, and would say so under every variation."""
    return stand(answer["clear"], answer["clear_holds"], confidence)


def certain(causes: list, live: list, source, case) -> list:
    """Return the live suspects that may be acted on at once, each by its own chance, whatever else is open.

    Each passes the rule alone. A unit, which is bought, has to keep the confidence itself under every
    variation: of two suspects exchanged with each other that fault again each would pass with less (98.9 %,
    at worst 91.9 %), and nothing but the rates would say that it is not both circuits. `causes` as they are
    shown, `live` the names of live suspects.
    """
    confidence = parts(case.confidence)
    found = []
    for entry in causes:
        if entry["probability"] < confidence:
            break
        if entry["cause"] not in live:
            continue
        held = holds(source, variations.cause(entry["cause"]), entry["probability"], case.doubt)
        needed = confidence if entry["cause"].startswith("unit:") else least(confidence)
        if held["lowest"] >= needed:
            found.append({"cause": entry["cause"], "probability": entry["probability"], "holds": held})
    return found


def verdict(best: dict, held: dict, case) -> dict | None:
    """Return the likeliest explanation where it names something and stands, else None."""
    if not best["causes"] or not stand(best["probability"], held, parts(case.confidence)):
        return None
    return {"causes": list(best["causes"]), "probability": best["probability"]}


def leading(best: dict, source, case) -> dict:
    """Return how the likeliest explanation holds."""
    return holds(source, variations.explanation(best["causes"]), best["probability"], case.doubt)


def judged(answer: dict, source, case, live: list) -> dict:
    """Return what the rule makes of the explanations, the causes and `clear` of an answer."""
    best = answer["explanations"][0]
    held = leading(best, source, case)
    found = verdict(best, held, case)
    if found:
        event = variations.explanation(found["causes"])
        found["breaks_x10"] = breaks(source, event, parts(case.confidence))
    return {
        "verdict": found,
        "holds": held,
        "clear_holds": holds(source, variations.CLEAR, answer["clear"], case.doubt),
        "certain": certain(answer["causes"], live, source, case),
    }


def breaks(source, event: tuple, confidence: int) -> dict:
    """Return, class of causes by class, the factor in tenths at which a chance falls below the confidence.

    A class that never does so up to a hundred times is left out. Misses and false alarms are left out
    too: each factor tried would be another inference. The chance of an explanation rises with the factor
    until the class is expected to have as many causes as it names, then falls; so it falls below once.
    """
    found = {}
    for what in variations.CLASSES:
        above, below = _TENTHS, _MOST
        if parts(source.chance(what, _MOST / _TENTHS, event)) >= confidence:
            continue
        while below - above > 1:
            middle = (above + below) // 2
            if parts(source.chance(what, middle / _TENTHS, event)) >= confidence:
                above = middle
            else:
                below = middle
        found[what] = below
    return found
