"""What an event names: the units and photos in it, whatever its kind, for looking it up later."""

import re

_UNIT = re.compile(r"u[0-9a-f]{12}|v[0-9a-f]{12}\.\S{1,80}")
_QUOTED_UNIT = re.compile(r'"(u[0-9a-f]{12}|v[0-9a-f]{12}\.[^\s"]{1,80})"')
_DIGEST = re.compile(r"[0-9a-f]{64}")


def units(event: dict, body: str) -> list[str]:
    """Returns the ids of all units that an event names, also of a kind not known here.

    `body` is its canonical text. This runs for every event that comes in, and one look over the text
    takes a fifth of the way through the values.
    """
    if "\\" in body:
        found = {text for text in _texts(event["data"]) if _UNIT.fullmatch(text)}
    else:
        found = set(_QUOTED_UNIT.findall(body, body.find('"data":')))
    if event["kind"] == "job_opened":
        found.update(_first_units(event["data"]))
    return sorted(found)


def photo(event: dict) -> str | None:
    """Returns the digest of the photo that an event names, if it does."""
    digest = event["data"].get("sha256")
    known = event["kind"] == "photo_taken" and isinstance(digest, str)
    return digest if known and _DIGEST.fullmatch(digest) else None


def _first_units(data: dict) -> list[str]:
    """Returns the units that sit on a vehicle when its job is opened; no event adds them."""
    vehicle, positions = data.get("vehicle"), data.get("positions")
    if not isinstance(vehicle, dict) or not isinstance(positions, list):
        return []
    return [
        f"{vehicle.get('id')}.{position.get('id')}" for position in positions if isinstance(position, dict)
    ]


def _texts(value: object) -> list[str]:
    if isinstance(value, str):
        return [value]
    if isinstance(value, list):
        return [text for item in value for text in _texts(item)]
    if isinstance(value, dict):
        return [text for key, item in value.items() for text in [key, *_texts(item)]]
    return []
