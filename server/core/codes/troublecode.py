"""Trouble codes: their structure, and what a failure type byte says in general.

Structure: two bytes; bits 15-14 the letter P C B U, bits 13-12 the first digit 0 to 3, then three
hex digits; a third byte is the failure type (SAE J2012 / ISO 15031-6, as openly explained).
The words for single failure types are from memory, the standard's own list is not open.
"""

_HEX = "0123456789ABCDEF"
_LETTERS = "PCBU"
_GROUPS = {
    "0": "general",
    "1": "electrical: short, open, voltage or current",
    "2": "signal: level, rate or shape",
    "4": "inside the control unit",
    "7": "mechanical",
}
_TYPES = {
    "11": "short to ground",
    "12": "short to battery",
    "13": "open circuit",
    "1F": "comes and goes",
    "49": "electronic failure inside",
    "96": "component failure inside",
    "97": "blocked or obstructed",
}


def look(code: str, failure_type: str = "") -> dict:
    """Return {"code", "failure_type", "ok", "sentence"} for a code as typed, e.g. B1234 or C1E1A-13."""
    text = "".join([c for c in code.upper() if c not in " "])
    kind = failure_type.upper().strip()
    if "-" in text and not kind:
        text, kind = text.split("-", 1)
    answer = {"code": text, "failure_type": kind, "ok": False, "sentence": ""}
    if not text and not kind:
        answer["ok"] = True
        return answer
    if len(text) != 5 or text[0] not in _LETTERS or text[1] not in "0123" or not _hex(text[2:]):
        answer["sentence"] = (
            "{} is not the form of a trouble code: a letter P, C, B or U, a digit 0 to 3, then three "
            "of 0-9 A-F. It is kept as typed.".format(text)
        )
        return answer
    if kind and not (len(kind) == 2 and _hex(kind)):
        answer["sentence"] = "{} is not a failure type: two of 0-9 A-F are wanted.".format(kind)
        return answer
    answer["ok"] = True
    answer["sentence"] = words(kind)
    return answer


def words(failure_type: str) -> str:
    """Return what a failure type says in plain words, "" when nothing is known of it."""
    if failure_type in _TYPES:
        return _TYPES[failure_type]
    return _GROUPS.get(failure_type[:1], "")


def from_bytes(high: int, low: int) -> str:
    """Return the five-character form of a two-byte code (each 0 to 255)."""
    word = high * 256 + low
    digits = [word >> 14, word >> 12 & 3, word >> 8 & 15, word >> 4 & 15, word & 15]
    return _LETTERS[digits[0]] + "".join([_HEX[digit] for digit in digits[1:]])


def _hex(text: str) -> bool:
    for character in text:
        if character not in _HEX:
            return False
    return True
