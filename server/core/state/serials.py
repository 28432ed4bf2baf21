"""The serial numbers that were read off a sensor, at the bench and at the counter."""

from ..codes.numbers import plain


def serials_of(unit: dict) -> list[str]:
    """Return what was read off a unit as its serial number, as it was read."""
    serials = [unit["serial"]] + [entry["serial"] for entry in unit["returns"]]
    return [serial for serial in serials if serial]


def has_serial(unit: dict, wanted: str) -> bool:
    """Tell whether a serial number, as `plain` has it, was ever read off a unit."""
    return bool([serial for serial in serials_of(unit) if plain(serial) == wanted])
