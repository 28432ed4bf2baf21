"""A check of the wiring on the wire that somebody noted: its size, length and warmth set the limit."""

from ..messages import decimal
from ..messages import message
from ..meter import copper
from ..meter.limits import AtMost

# What contacts and probes add, in micro-ohms: common practice, no source.
_CONTACTS = 500000
_COOL_AND_HOT = (20, 85)  # °C: a workshop, and beside an exhaust


def on(check: dict, noted: dict | None) -> dict:
    """Return a check with the limit of the wire noted at its position, `noted` as `wire_noted` has it.

    One that is not measured along a wire stays as it is.
    """
    if "wire" not in check or not noted:
        return check
    made = dict(check)
    limit = check["limit"]
    most = _of(noted) + _CONTACTS
    made["limit"] = AtMost(most, limit.below, limit.nearly_open, limit.open)
    made["good"] = message("guide-wire-good", most=_hundredths(most))
    made["bad"] = message("guide-wire-bad", most=_hundredths(most))
    return made


def told(check: dict, noted: dict | None) -> dict | None:
    """Return what the copper of a check's wire has, None where there is no wire to know."""
    wire = check.get("wire")
    if not wire:
        return None
    if noted:
        return message(
            "guide-wire-copper",
            metres=decimal(noted["centimetres"], 2),
            size=copper.called(noted["size"]),
            ohms=_hundredths(_of(noted)),
            celsius=str(noted["celsius"]),
        )
    cool, hot = [copper.resistance(wire.size, 1000 * wire.metres, celsius) for celsius in _COOL_AND_HOT]
    return message(
        "guide-measure-copper",
        metres=wire.metres,
        size=copper.called(wire.size),
        cool=_hundredths(cool),
        hot=_hundredths(hot),
    )


def _of(noted: dict) -> int:
    return copper.resistance(noted["size"], 10 * noted["centimetres"], noted["celsius"])


def _hundredths(micro: int) -> dict:
    return decimal((micro + 5000) // 10000, 2)
