"""The serial numbers that were read off a sensor, at the bench and at the counter."""

from ..codes.numbers import by_eye


def serials_of(unit: dict) -> list[str]:
    """Return what was read off a unit as its serial number, as it was read."""
    serials = [unit["serial"]] + [entry["serial"] for entry in unit["returns"]]
    return [serial for serial in serials if serial]


def serials_by_eye(unit: dict) -> list[str]:
    """Return what was read off a unit, each once and as the eye tells it."""
    if not unit["returns"]:  # nearly all
        number = by_eye(unit["serial"]) if unit["serial"] else ""
        return [number] if number else []
    found = []
    for serial in serials_of(unit):
        number = by_eye(serial)
        if number and number not in found:
            found.append(number)
    return found
