"""Why not: what speaks against a move that proves little, in one short sentence."""

from .. import phrases

SUSPECTS = "Suspects only change places: if they fault again, it says hardly more than before."
UNTESTED = "Nobody has tested this spare: if it faults, it is one more suspect."
UNTESTED_BUY = "The old one is good with {}: then the part was bought for nothing."
SAME = "The test would most likely look the same either way."
SAME_CHECKS = "The checks would most likely find nothing."
UNPLUG = "It says nothing about the cause."

# A move that tells less than this (thousandths of a bit) proves little.
_LITTLE = 100


def sentence(move, bits: int, untested: bool, good: int) -> str:
    """Return the sentence, "" when nothing speaks against the move but its minutes.

    `untested`: it fits a spare that no test has seen; `good`: parts per billion that a sensor which
    it replaces is good.
    """
    if move.kind == "unplug":
        return "" if move.why == "unplug doubt" else UNPLUG
    if move.why == "suspects":
        return SUSPECTS
    if move.kind == "replace" and not move.why.startswith("verdict"):
        return UNTESTED_BUY.format(phrases.percent(good)) if good * 20 > 1000000000 else ""
    if bits < _LITTLE and not move.why.startswith("verdict"):
        return SAME_CHECKS if move.kind == "meter" else SAME
    return UNTESTED if untested else ""
