"""What to try in the demo, as lines for the terminal; codes and places come from the core."""

from demo_db.cars import blue_estate
from demo_db.log import Log


def hints(log: Log) -> list[str]:
    """Return a few short lines; what was used up since the demo was built is left out."""
    estate = blue_estate()
    spare = [
        f"; {unit['shown']} from stock fits"
        for unit in log.ask("units")
        if unit["where"]["msg"] == "names-place-stock" and unit["part"] == estate.part
    ]
    bad = log.ask("unit", unit=estate.first_unit("rear-right-outer"))["shown"]
    return [
        f"Blue estate, open: the fault followed the sensor. Fit the new one{spare[0] if spare else ''}.",
        "White van, front: the fault stayed. Go on with the wiring checks.",
        "White van, rear: it comes and goes. Enter clean tests and watch the proof count up.",
        "Red hatchback: two faults at once. Compare the moves, start one, hold up the wrong sensor.",
        "Blue estate, closed: its history has a stopped mix-up and an entry taken back, with the reason.",
        f"{log.base}/U/{bad.replace('-', '')} is what the label of the sensor at the parts counter opens.",
        f"At the counter, type {bad}: compare its pictures, decide, then type it again.",
        "No camera is needed: type a label's code where the app asks for a scan.",
    ]
