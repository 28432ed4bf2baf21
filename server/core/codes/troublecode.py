"""Trouble codes: their structure, and what a failure type says where it follows the open list.

Structure: two bytes; bits 15-14 the letter P C B U, bits 13-12 the first digit 0 to 3, then three
hex digits; a third byte is the failure type (SAE J2012 / ISO 15031-6, as openly explained). Whose a
code is says the first digit: 0 the standard's, 1 the maker's; the rest is from memory. So is what
single failure types mean, for the standard's own list is not open.

Makers' older failure types use the same numbers with other meanings (common practice, no source): one is
put in words only where somebody said that it follows the open list. What a maker's code means is never here.
"""

from ..messages import message
from ..messages import sentences

_HEX = "0123456789ABCDEF"
_LETTERS = "PCBU"
# What testers and people put between the parts of a code, the longer dashes of keyboards among them.
_BETWEEN = " -\u2010\u2011\u2013\u2014:./"
_WHOLE, _WITH_TYPE = 5, 7
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
    "14": "codes-failure-ground-or-open",
    "15": "codes-failure-battery-or-open",
    "1F": "codes-failure-comes-and-goes",
    "31": "codes-failure-no-signal",
    "49": "codes-failure-electronic",
    "76": "codes-failure-wrong-place",
    "87": "codes-failure-no-message",
    "92": "codes-failure-performance",
    "93": "codes-failure-no-operation",
    "96": "codes-failure-component",
    "97": "codes-failure-blocked",
}
# Of P, C, B and U; what the first digit does not say for certain is from memory.
_STANDARD, _MAKER, _MAKER_MEMORY, _RESERVED = "standard", "maker", "maker-memory", "reserved"


def look(code: str, failure_type: str = "", open_list: bool = False) -> dict:
    """Return {"code", "failure_type", "ok", "sentence"} for a code as typed.

    B1234, C1E1A-13, c1e1a 13 and C1E1A13 are all read. `open_list` says that the failure type follows the
    open list; without that it stays as it is.
    """
    text, kind = _parted(code.upper(), failure_type.upper().strip())
    answer: dict = {"code": text, "failure_type": kind, "ok": False, "sentence": ""}
    if not text and not kind:
        answer["ok"] = True
        return answer
    if not _is_code(text):
        told = [message("codes-trouble-form", code=text or code)]
        if _as_bytes(text):
            told.append(message("codes-trouble-bytes", code=_as_bytes(text)))
        answer["sentence"] = sentences(told)
        return answer
    said = [message("codes-trouble-whose", letter=text[0], whose=_whose(text))]
    if kind and not (len(kind) == 2 and _hex(kind)):
        answer["sentence"] = message("codes-failure-form", type=kind)
        return answer
    answer["ok"] = True
    if kind:
        meant = words(kind) if open_list else ""
        said.append(message("codes-failure-meant", type=kind, meant=meant) if meant
                    else message("codes-failure-as-it-is", type=kind))  # fmt: skip
    answer["sentence"] = sentences(said)
    return answer


def words(failure_type: str) -> dict | str:
    """Return what a failure type of the open list says, "" when nothing is known of it."""
    kind = failure_type.upper()
    known = _TYPES.get(kind) or (_GROUPS.get(kind[:1]) if len(kind) == 2 else None)
    return message(known) if known else ""


def without_type(code: str) -> str:
    """Return a code without the failure type that was taken for a part of it; C1E1A of C1E1A13."""
    return _parted(code, "")[0]


def in_one(code: dict) -> str:
    """Return a code of a test with its failure type, as it is written."""
    return "-".join([each for each in (code["code"], code["failure_type"]) if each])


def told(test: dict, position) -> dict | None:
    """Return what codes a test showed, as sentences; None without any, and of a test from before that.

    `test` has "codes" and, since it is told, "open_list", with "means" what was said of them;
    `position(id)` is the name of a position.
    """
    if "open_list" not in test:
        return None
    means = {entry["code"]: entry["means"] for entry in test.get("means", [])}
    said = []
    for code in test["codes"]:
        item: str | dict = in_one(code)
        failure = words(code["failure_type"]) if test["open_list"] else ""
        if failure:
            item = message("codes-told-failure", code=item, failure=failure)
        if code["position"]:
            item = message("codes-told-at", code=item, position=position(code["position"]))
        if means.get(code["code"]):
            item = message("codes-told-means", code=item, means=means[code["code"]])
        said.append(message("codes-told", code=item))
    return sentences(said) if said else None


def from_bytes(high: int, low: int) -> str:
    """Return the five-character form of a two-byte code (each 0 to 255)."""
    word = high * 256 + low
    digits = [word >> 14, word >> 12 & 3, word >> 8 & 15, word >> 4 & 15, word & 15]
    return _LETTERS[digits[0]] + "".join([_HEX[digit] for digit in digits[1:]])


def _parted(text: str, kind: str) -> tuple:
    """Return (code, failure type) of what was typed; what is no code stays as it is but for its spaces."""
    bare = "".join([c for c in text if c not in _BETWEEN])
    if _is_code(bare):
        return bare, kind
    if len(bare) == _WITH_TYPE and _is_code(bare[:_WHOLE]) and _hex(bare[_WHOLE:]) and not kind:
        return bare[:_WHOLE], bare[_WHOLE:]
    text = "".join([c for c in text if c != " "])
    before, _, after = text.partition("-")
    # E-12 and E-13 are two codes of no open standard, not one with two failure types.
    return (before, after) if after and _is_code(before) and not kind else (text, kind)


def _as_bytes(text: str) -> str:
    """Return the code that two bytes in hex stand for, a third as its failure type; "" for other texts."""
    bare = text[2:] if text[:2] == "0X" else text
    if len(bare) not in (4, 6) or not _hex(bare):
        return ""
    code = from_bytes(int(bare[:2], 16), int(bare[2:4], 16))
    return in_one({"code": code, "failure_type": bare[4:]})


def _is_code(text: str) -> bool:
    return len(text) == _WHOLE and text[0] in _LETTERS and text[1] in "0123" and _hex(text[2:])


def _whose(text: str) -> str:
    """Return whose a well-formed code is; sources differ on 2 and 3 of C, B and U."""
    if text[1] == "0":
        return _STANDARD
    if text[1] == "1":
        return _MAKER
    if text[0] != "P":
        return _MAKER_MEMORY if text[1] == "2" else _RESERVED
    return _STANDARD if text[1] == "2" or text[2] > "3" else _MAKER


def _hex(text: str) -> bool:
    for character in text:
        if character not in _HEX:
            return False
    return True
