"""The serial numbers that were read off a sensor, at the bench and at the counter."""

from ..codes.numbers import by_eye
from ..codes.numbers import tells_apart


def serials_of(unit: dict) -> list[str]:
    """Return what was read off a unit as its serial number, as it was read."""
    serials = [unit["serial"]] + [entry["serial"] for entry in unit["returns"]]
    return [serial for serial in serials if serial]


def serials_by_eye(unit: dict) -> list[str]:
    """Return what was read off a unit and can be a serial number, each once and as the eye tells it."""
    if not unit["returns"]:  # nearly all
        return [by_eye(unit["serial"])] if tells_apart(unit["serial"]) else []
    found = []
    for serial in serials_of(unit):
        number = by_eye(serial)
        if tells_apart(serial) and number not in found:
            found.append(number)
    return found
