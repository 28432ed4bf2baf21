"""Lengths on paper, in whole hundredths of a millimetre, as people write them and as they read them."""

from ..errors import BadInput
from ..messages import decimal
from ..messages import message


def pair(name: str, text: str, example: str) -> tuple:
    """Return two lengths, "63,5 x 38.1", each at most 999.99 mm."""
    return parsed_pair(name, text, message("printing-wanted-lengths", example=example))


def parsed_pair(name: str, text: str, wanted: dict) -> tuple:
    """Return two figures in hundredths; BadInput says what is `wanted`."""
    sides = text.lower().replace(",", ".").replace("×", "x").split("x")
    found = [_hundredths(side.strip()) for side in sides]
    if len(found) != 2 or None in found:
        raise BadInput(name, text, wanted)
    return found[0], found[1]


def figure(length: int) -> dict:
    """Return a length as people write it, without the unit: 2650 is 26.5."""
    for places in (0, 1):
        scale = 10 ** (2 - places)
        if length % scale == 0:
            return decimal(length // scale, places)
    return decimal(length, 2)


def size_words(size) -> dict:
    """Return width and height, "26 x 32 mm"."""
    return message("printing-size", width=figure(size[0]), height=figure(size[1]))


def dots(length: int, dpi: int) -> int:
    """Return a length in whole dots of a printer, to the nearest; an inch is 25.4 mm."""
    return (2 * length * dpi + 2540) // 5080


def length_of(count: int, dpi: int) -> int:
    """Return how long so many dots are, to the nearest hundredth of a millimetre."""
    return (count * 5080 + dpi) // (2 * dpi)


def _hundredths(text: str) -> int | None:
    whole, point, part = text.partition(".")
    if not _digits(whole, 3) or (point and not _digits(part, 2)):
        return None
    return int(whole) * 100 + int((part + "00")[:2])


def _digits(text: str, most: int) -> bool:
    if not 1 <= len(text) <= most:
        return False
    for character in text:
        if character not in "0123456789":
            return False
    return True
