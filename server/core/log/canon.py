"""Canonical JSON on the narrow set that events use, and its SHA-256.

It exists because MicroPython's json has no sort_keys and both hosts must hash the same bytes.
Source: RFC 8785 (JCS), narrowed to ASCII keys, strings, integers within ±(2^53 − 1), booleans, null,
lists and objects. Floats are refused: their text differs between hosts.
"""

import hashlib
import json

from ..errors import BadInput
from ..messages import message

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

_MOST_KEYS = 1000  # of fields the core has fewer; ids that serve as keys are not to fill the memory
_keys = {}
# Most texts of an answer are the same few hundred: ids of messages, of positions, of units.
_MOST_TEXTS = 1000
_LONGEST_KEPT = 40
_texts = {}


def dumps(value) -> str:
    """Return the canonical JSON text of `value`; raises BadInput for anything outside the set."""
    parts = []
    try:
        _write(value, parts)
    except _Outside:
        # Naming the place costs more than the writing, so only what is refused pays for it.
        _refuse(value, "value")
        raise
    return "".join(parts)


def answer(value) -> str:
    """Return the JSON text of what is only shown: canonical where it can be.

    What was kept before ids and numbers had bounds must be shown too: its keys stand as they are, and an
    integer beyond the set as the nearest in it. Raises BadInput for floats, half characters and the like.
    """
    try:
        return dumps(value)
    except BadInput:
        return _shown(value)


def check(value, where: str) -> None:
    """Raise BadInput where `value` has no canonical text; `where` it stands begins the name of the place."""
    _refuse(value, where)


def whole(text: str) -> str:
    """Return a text without the halves of characters that JSON can hold and no text may."""
    return "".join([character for character in text if not 0xD800 <= ord(character) <= 0xDFFF])


def half_at(value, where: str) -> str:
    """Return the path to the first text that holds half a character, "" where all are whole."""
    if isinstance(value, str):
        return where if whole(value) != value else ""
    inner = []
    if isinstance(value, dict):
        inner = [(value[key], where + "." + key if where else key) for key in sorted(value)]
    elif isinstance(value, (list, tuple)):
        inner = [(value[index], "{}[{}]".format(where, index)) for index in range(len(value))]
    for item, path in inner:
        found = half_at(item, path)
        if found:
            return found
    return ""


def sha256_hex(text: str) -> str:
    """Return the SHA-256 of the UTF-8 bytes of `text` as 64 lower-case hex digits (FIPS 180-4)."""
    digest = hashlib.sha256(text.encode("utf-8")).digest()
    return "".join(["{:02x}".format(byte) for byte in digest])


def _shown(value) -> str:
    """Return what `answer` does of a value outside the set."""
    if isinstance(value, dict):
        return "{" + ",".join([_quoted(key) + ":" + _shown(value[key]) for key in sorted(value)]) + "}"
    if isinstance(value, (list, tuple)):
        return "[" + ",".join([_shown(item) for item in value]) + "]"
    if isinstance(value, int) and not isinstance(value, bool):
        value = max(-LARGEST_INTEGER, min(LARGEST_INTEGER, value))
    return dumps(value)


class _Outside(Exception):
    """Something outside the set; `_refuse` finds where."""


def _write(value, parts: list) -> None:
    """Append the text of `value`."""
    if isinstance(value, str):
        parts.append(_texts.get(value) or _text(value))
    elif isinstance(value, dict):
        _write_object(value, parts)
    elif value is None:
        parts.append("null")
    elif value is True:
        parts.append("true")
    elif value is False:
        parts.append("false")
    elif isinstance(value, int):
        if value > LARGEST_INTEGER or value < -LARGEST_INTEGER:
            raise _Outside
        parts.append(str(value))
    elif isinstance(value, (list, tuple)):
        before = "["
        for item in value:
            parts.append(before)
            before = ","
            _write(item, parts)
        parts.append("]" if value else "[]")
    else:
        raise _Outside


def _write_object(value: dict, parts: list) -> None:
    """Append an object with its keys in code-unit order, which for ASCII keys is plain order.

    A text is written here as in `_write`: half of what an object holds are texts, and a call for each takes
    longer than the look-up.
    """
    try:
        keys = sorted(value)
    except TypeError:  # keys of several kinds have no order
        raise _Outside
    before = "{"
    for key in keys:
        parts.append(before)
        before = ","
        parts.append(_keys.get(key) or _key(key))
        item = value[key]
        if isinstance(item, str):
            parts.append(_texts.get(item) or _text(item))
        else:
            _write(item, parts)
    parts.append("}" if value else "{}")


def _text(text: str) -> str:
    """Return a text as it is written; a short one is kept."""
    written = _quoted(text)
    if len(text) <= _LONGEST_KEPT and len(_texts) < _MOST_TEXTS:
        _texts[text] = written
    return written


def _key(key: str) -> str:
    """Return a key as it is written, its colon behind it; kept, for the same few names come again."""
    if not isinstance(key, str) or not _is_ascii(key):
        raise _Outside
    written = _quoted(key) + ":"
    if len(_keys) < _MOST_KEYS:
        _keys[key] = written
    return written


def _refuse(value, where: str) -> None:
    """Raise BadInput for the first thing outside the set, by its path; both hosts name the same one."""
    if value is None or value is True or value is False:
        return
    if isinstance(value, str):
        for character in value:
            if 0xD800 <= ord(character) <= 0xDFFF:
                half = message("refusals-found-half-pair")
                raise BadInput(where, (half,), message("refusals-whole-characters"))
    elif isinstance(value, int):
        if value > LARGEST_INTEGER or value < -LARGEST_INTEGER:
            raise BadInput(where, value, message("refusals-integer"))
    elif isinstance(value, (list, tuple)):
        for index in range(len(value)):
            _refuse(value[index], "{}[{}]".format(where, index))
    elif isinstance(value, dict):
        for key in value:
            if not isinstance(key, str):
                raise BadInput(where, key, message("refusals-keys-text"))
        for key in sorted(value):
            if not _is_ascii(key):
                raise BadInput(where, key, message("refusals-keys-ascii"))
        for key in sorted(value):
            _refuse(value[key], where + "." + key)
    else:
        raise BadInput(where, value, message("refusals-json-value"))


def _is_ascii(text: str) -> bool:
    if _is_plain(text, json.dumps(text)):
        return "\x7f" not in text
    for character in text:
        if ord(character) > 126:
            return False
    return True


def _is_plain(text: str, quoted: str) -> bool:
    """Tell whether a text is ASCII of which nothing had to be escaped; there the hosts' `json` agree."""
    return len(quoted) == len(text) + 2 and len(text.encode("utf-8")) == len(text)


def _quoted(text: str) -> str:
    """Return `text` as a JSON string: only what must be escaped is (RFC 8785 section 3.2.2.2)."""
    quoted = json.dumps(text)
    if _is_plain(text, quoted):
        return quoted
    parts = []
    for character in text:
        point = ord(character)
        if character in _SHORT_ESCAPES:
            parts.append(_SHORT_ESCAPES[character])
        elif point < 32:
            parts.append("\\u{:04x}".format(point))
        elif 0xD800 <= point <= 0xDFFF:
            raise _Outside
        else:
            parts.append(character)
    return '"' + "".join(parts) + '"'
