"""Trouble codes: their structure, and what a failure type byte says in general.

Structure: two bytes; bits 15-14 the letter P C B U, bits 13-12 the first digit 0 to 3, then three
hex digits; a third byte is the failure type (SAE J2012 / ISO 15031-6, as openly explained).
What single failure types mean is from memory, the standard's own list is not open.
"""

from ..messages import message

_HEX = "0123456789ABCDEF"
_LETTERS = "PCBU"
_GROUPS = {
    "0": "codes-failure-general",
    "1": "codes-failure-electrical",
    "2": "codes-failure-signal",
    "4": "codes-failure-control-unit",
    "7": "codes-failure-mechanical",
}
_TYPES = {
    "11": "codes-failure-short-to-ground",
    "12": "codes-failure-short-to-battery",
    "13": "codes-failure-open",
    "1F": "codes-failure-comes-and-goes",
    "49": "codes-failure-electronic",
    "96": "codes-failure-component",
    "97": "codes-failure-blocked",
}


def look(code: str, failure_type: str = "") -> dict:
    """Return {"code", "failure_type", "ok", "sentence"} for a code as typed, e.g. B1234 or C1E1A-13."""
    text = "".join([c for c in code.upper() if c not in " "])
    kind = failure_type.upper().strip()
    if "-" in text and not kind:
        text, kind = text.split("-", 1)
    answer: dict = {"code": text, "failure_type": kind, "ok": False, "sentence": ""}
    if not text and not kind:
        answer["ok"] = True
        return answer
    if len(text) != 5 or text[0] not in _LETTERS or text[1] not in "0123" or not _hex(text[2:]):
        answer["sentence"] = message("codes-trouble-form", code=text)
        return answer
    if kind and not (len(kind) == 2 and _hex(kind)):
        answer["sentence"] = message("codes-failure-form", type=kind)
        return answer
    answer["ok"] = True
    answer["sentence"] = words(kind)
    return answer


def words(failure_type: str) -> dict | str:
    """Return what a failure type says, "" when nothing is known of it."""
    known = _TYPES.get(failure_type) or _GROUPS.get(failure_type[:1])
    return message(known) if known else ""


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
