"""What an event names: the units and photos in it, whatever its kind, also of one not known here."""

from ..facts.fields import Photo
from ..facts.job import first_units
from ..facts.kinds import ALL

_PHOTOS = {kind.name: field.name for kind in ALL for field in kind.fields if isinstance(field, Photo)}
_HEX = "0123456789abcdef"


def units(event: dict) -> list[str]:
    """Return the ids of all units that an event names, in order."""
    found = {}
    for text in _texts(event["data"]):
        if is_unit(text):
            found[text] = True
    if event["kind"] == "job_opened":
        for unit in first_units(event["data"]):
            found[unit] = True
    return sorted(found)


def photo(event: dict) -> str | None:
    """Return the digest of the photo that an event names, if it does."""
    digest = event["data"].get(_PHOTOS[event["kind"]]) if event["kind"] in _PHOTOS else None
    return digest if isinstance(digest, str) and _is_hex(digest, 64) else None


def is_unit(text: str) -> bool:
    """Tell whether a text has the form of a unit's id: of one added, or of one that came with its vehicle."""
    if text[:1] == "u":
        return _is_hex(text[1:], 12)
    if text[:1] != "v" or text[13:14] != "." or not _is_hex(text[1:13], 12):
        return False
    position = text[14:]
    return 1 <= len(position) <= 80 and len(position.split()) == 1 and position.strip() == position


def _is_hex(text: str, length: int) -> bool:
    if len(text) != length:
        return False
    for character in text:
        if character not in _HEX:
            return False
    return True


def _texts(value) -> list[str]:
    if isinstance(value, str):
        return [value]
    found = []
    if isinstance(value, list):
        for item in value:
            found.extend(_texts(item))
    elif isinstance(value, dict):
        for key in sorted(value):
            found.append(key)
            found.extend(_texts(value[key]))
    return found
