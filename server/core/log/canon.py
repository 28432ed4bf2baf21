"""Canonical JSON on the narrow set that events use, and its SHA-256.

It exists because MicroPython's json has no sort_keys and both hosts must hash the same bytes.
Source: RFC 8785 (JCS), narrowed to ASCII keys, strings, integers within ±(2^53 − 1), booleans, null,
lists and objects. Floats are refused: their text differs between hosts.
"""

import hashlib

from ..errors import BadInput

LARGEST_INTEGER = 9007199254740991  # 2^53 − 1, RFC 8785 section 3.2.2.3 (IEEE 754 doubles)

_SHORT_ESCAPES = {
    '"': '\\"',
    "\\": "\\\\",
    "\b": "\\b",
    "\t": "\\t",
    "\n": "\\n",
    "\f": "\\f",
    "\r": "\\r",
}


def dumps(value) -> str:
    """Return the canonical JSON text of `value`; raises BadInput for anything outside the set."""
    parts = []
    _write(value, parts, "value")
    return "".join(parts)


def sha256_hex(text: str) -> str:
    """Return the SHA-256 of the UTF-8 bytes of `text` as 64 lower-case hex digits (FIPS 180-4)."""
    digest = hashlib.sha256(text.encode("utf-8")).digest()
    return "".join(["{:02x}".format(byte) for byte in digest])


def _write(value, parts: list, where: str) -> None:
    """Append the text of `value`; `where` is the path that an error names."""
    if value is None:
        parts.append("null")
    elif value is True:
        parts.append("true")
    elif value is False:
        parts.append("false")
    elif isinstance(value, str):
        parts.append(_quoted(value, where))
    elif isinstance(value, int):
        if value > LARGEST_INTEGER or value < -LARGEST_INTEGER:
            raise BadInput(where, value, "an integer within ±(2^53 − 1)")
        parts.append(str(value))
    elif isinstance(value, (list, tuple)):
        parts.append("[")
        for index in range(len(value)):
            if index:
                parts.append(",")
            _write(value[index], parts, "{}[{}]".format(where, index))
        parts.append("]")
    elif isinstance(value, dict):
        _write_object(value, parts, where)
    else:
        raise BadInput(where, value, "text, a whole number, true, false, null, a list or an object")


def _write_object(value: dict, parts: list, where: str) -> None:
    """Append an object with its keys in code-unit order, which for ASCII keys is plain order."""
    for key in value:
        if not isinstance(key, str):
            raise BadInput(where, key, "keys that are text")
    for key in sorted(value):  # in order, so that both hosts name the same key
        if not _is_ascii(key):
            raise BadInput(where, key, "keys of ASCII characters")
    parts.append("{")
    first = True
    for key in sorted(value):
        if not first:
            parts.append(",")
        first = False
        parts.append(_quoted(key, where))
        parts.append(":")
        _write(value[key], parts, where + "." + key)
    parts.append("}")


def _is_ascii(text: str) -> bool:
    for character in text:
        if ord(character) > 126:
            return False
    return True


def _quoted(text: str, where: str) -> str:
    """Return `text` as a JSON string: only what must be escaped is (RFC 8785 section 3.2.2.2)."""
    plain = True
    for character in text:
        point = ord(character)
        if point < 32 or point == 34 or point == 92 or 0xD800 <= point <= 0xDFFF:
            plain = False
            break
    if plain:
        return '"' + text + '"'
    parts = []
    for character in text:
        point = ord(character)
        if character in _SHORT_ESCAPES:
            parts.append(_SHORT_ESCAPES[character])
        elif point < 32:
            parts.append("\\u{:04x}".format(point))
        elif 0xD800 <= point <= 0xDFFF:
            raise BadInput(where, "half of a character pair", "whole Unicode characters")
        else:
            parts.append(character)
    return '"' + "".join(parts) + '"'
