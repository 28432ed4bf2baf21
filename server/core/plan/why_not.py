"""Why not: what speaks against a move that proves little, in one short sentence."""

from ..messages import message

SUSPECTS = message("reasons-not-suspects")
UNTESTED = message("reasons-not-untested")
SAME = message("reasons-not-same")
SAME_CHECKS = message("reasons-not-same-checks")
SAME_HEARD = message("reasons-not-same-heard")
UNPLUG = message("reasons-not-unplug")

# A move that tells less than this (thousandths of a bit) proves little.
_LITTLE = 100


def sentence(move, bits: int, untested: bool) -> object:
    """Return the sentence, "" when nothing speaks against the move but its minutes.

    `untested`: it fits a spare that no test has seen.
    """
    if move.kind == "unplug":
        return "" if move.why == "unplug doubt" else UNPLUG
    if move.why == "suspects":
        return SUSPECTS
    if bits < _LITTLE and not move.why.startswith("verdict"):
        if move.kind == "listen":
            return SAME_HEARD
        return SAME_CHECKS if move.kind == "meter" else SAME
    return UNTESTED if untested else ""
