"""The guided checks of one position's circuit: what to do, what to measure, what it means.

All figures are common practice, no source: the data of the vehicle at hand come first.
"""

CHECKS = [
    {
        "id": "connector",
        "title": "Look into the connector",
        "text": "Pins straight, none pushed back, no green or white crust, seal there, lock not broken. "
        "Wiggle the wires: none may slide out.",
        "unit": "",
        "good": "clean and tight",
        "bad": "bent, loose, wet or corroded",
    },
    {
        "id": "ground",
        "title": "Measure the ground wire",
        "text": "Key off, sensor unplugged. Ohms between the ground pin of the plug and bare metal of "
        "the body.",
        "unit": "Ω",
        "good": "1 Ω or less",
        "bad": "more than 1 Ω, or open",
    },
    {
        "id": "supply",
        "title": "Measure the supply",
        "text": "Key on, reverse in, foot on the brake. Volts between the supply pin and the ground pin "
        "of the plug. Compare with the plug of a sensor that works.",
        "unit": "V",
        "good": "within 0.5 V of the working one",
        "bad": "lower, or nothing",
    },
    {
        "id": "signal",
        "title": "Measure the signal wire",
        "text": "Key off, the control unit's plug off as well. Ohms along the signal wire from end to end, "
        "then from the wire to ground.",
        "unit": "Ω",
        "good": "2 Ω or less along it, open to ground",
        "bad": "high along it, or a path to ground",
    },
]


def check_by(identity: str) -> dict | None:
    """Return a check by its id, or None."""
    for check in CHECKS:
        if check["id"] == identity:
            return check
    return None
