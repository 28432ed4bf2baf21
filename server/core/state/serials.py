"""The serial numbers that were read off a sensor, at the bench and at the counter."""

from ..codes.numbers import plain


def serials_of(unit: dict) -> list[str]:
    """Return what was read off a unit as its serial number, as it was read."""
    serials = [unit["serial"]] + [entry["serial"] for entry in unit["returns"]]
    return [serial for serial in serials if serial]


def plain_serials_of(unit: dict) -> list[str]:
    """Return what was read off a unit, each once and as `plain` has it."""
    if not unit["returns"]:  # nearly all
        number = plain(unit["serial"]) if unit["serial"] else ""
        return [number] if number else []
    found = []
    for serial in serials_of(unit):
        number = plain(serial)
        if number and number not in found:
            found.append(number)
    return found
