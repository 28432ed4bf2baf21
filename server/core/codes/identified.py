"""Texts of symbols that say what their numbers are: envelopes of ISO/IEC 15434.

Each element carries a data identifier of ANSI MH10.8.2: 1P4L0014 is the supplier's part number 4L0014.
"""

from collections import namedtuple

GS = "\x1d"
ELEMENTS = "06"  # the format whose elements carry MH10.8.2 identifiers
_RS, _EOT = "\x1e", "\x04"
_MARK = "[)>"
_HEADER = _MARK + _RS

# Data identifiers of ANSI MH10.8.2, from memory; the whole list is published by MHI.
_MEANINGS = {
    "P": ("part", "customer-part"),
    "1P": ("part", "supplier-part"),
    "S": ("serial", "serial"),
    "T": ("", "lot"),
    "1T": ("", "supplier-lot"),
    "D": ("", "date"),
    "Q": ("", "quantity"),
    "V": ("", "supplier"),
    "1V": ("", "supplier"),
    "17V": ("", "supplier"),
}

# What an envelope holds: `fault` is "" where it is whole, "not whole", or "two" where two symbols stand in
# one text; `elements` are (identifier, value), `formats` the two digits of each of its parts.
Envelope = namedtuple("Envelope", ("fault", "elements", "formats"))


def is_envelope(text: str) -> bool:
    """Tell whether a text begins as an envelope does."""
    return text.startswith(_MARK)


def opened(text: str) -> Envelope:
    """Return what an envelope holds."""
    if not text.startswith(_HEADER):
        return Envelope("not whole", [], [])
    pieces = text.split(_MARK)[1:]
    if [each for each in pieces if each != pieces[0]] or "://" in text.partition(_EOT)[2]:
        return Envelope("two", [], [])
    elements, formats = [], []
    for part in pieces[0][len(_RS) :].split(_RS):
        part = part.strip(_EOT)
        if not part:
            continue
        formats.append(part[:2])
        if part[:2] == ELEMENTS:
            if part[2:3] not in ("", GS):  # its separators were left out: nothing tells where a number ends
                return Envelope("not whole", [], [])
            elements += [element(each) for each in part[2:].split(GS) if each]
    return Envelope("", elements, formats)


def element(text: str) -> tuple:
    """Split a data identifier (up to three digits and a capital letter) from what follows it."""
    at = 0
    while at < len(text) and at < 3 and "0" <= text[at] <= "9":
        at += 1
    if at < len(text) and "A" <= text[at] <= "Z":
        return text[: at + 1], text[at + 1 :].strip()
    return "", text


def meaning_of(identifier: str) -> tuple:
    """Return the field that a number with this identifier fills, "" for none, and what it is called."""
    return _MEANINGS.get(identifier, ("", ""))
