"""Label codes: an unambiguous alphabet, a check character, and only codes that catch swaps.

Source of the check character: ISO 7064, MOD 37,36 (a hybrid system over 0-9A-Z). That system lets
some exchanges of neighbouring characters through, so a code is issued only when every one of its
own adjacent exchanges is caught.
"""

import hashlib

from ..errors import BadInput
from ..messages import message

ALPHABET = "234679ACDEFHJKMNPRTWXY"  # no 0 O 1 I L, 5 S, 8 B, Z, G, Q, U, V: alike in felt pen
HAND_FIRST = "234679"  # what a code for writing by hand begins with; printed ones begin with a letter
PRINT_FIRST = "ACDEFHJKMNPRTWXY"
BODY_LENGTH = 4
CODE_LENGTH = BODY_LENGTH + 1
_ISO = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_PATH = "/U/"
_MARK = "#"
_SHARES = 16


def check_character(body: str) -> str:
    """Return the ISO 7064 MOD 37,36 check character of `body` (characters of 0-9A-Z)."""
    product = 36
    for character in body:
        total = (product + _ISO.index(character)) % 36
        if total == 0:
            total = 36
        product = total * 2 % 37
    return _ISO[(37 - product) % 36]


def is_valid(code: str) -> bool:
    """Tell whether `code` (body and check character, any length) passes the check."""
    for character in code:
        if character not in _ISO:
            return False
    return len(code) > 1 and check_character(code[:-1]) == code[-1]


def catches_every_exchange(code: str) -> bool:
    """Tell whether exchanging any two different neighbours of `code` breaks the check."""
    for index in range(len(code) - 1):
        left, right = code[index], code[index + 1]
        if left != right and is_valid(code[:index] + right + left + code[index + 2 :]):
            return False
    return True


def may_be_issued(code: str) -> bool:
    """Tell whether `code` is one that we hand out: length, alphabet, check, exchanges caught."""
    if len(code) != CODE_LENGTH:
        return False
    for character in code:
        if character not in ALPHABET:
            return False
    return is_valid(code) and catches_every_exchange(code)


def shown(code: str) -> str:
    """Return `code` as people read it: two groups with a hyphen."""
    return code[:3] + "-" + code[3:] if code else ""


def address(code: str, base: str) -> str:
    """Return the text of a label's QR, for `base`, the address of the installation.

    A server answers "/U/CODE" in any case, so there all of it is upper case, which makes the symbol small.
    A `base` that ends in "/" is a folder of files: any host of files opens it, but hardly one knows more
    addresses or ignores case, so the code stands behind "#", where the app reads it and no host sees it.
    """
    if not base.endswith("/"):
        return upper_ascii(base) + _PATH + code
    start = base.find("/", base.find("//") + 2)
    return upper_ascii(base[:start]) + base[start:] + _MARK + code


def share_of(identity: str) -> int:
    """Return which share of all codes an installation or a phone prints from, by its id (it ends in hex).

    What was set up again from a copy has another id, and knows nothing of the labels printed since then.
    """
    return int(identity[-1], 16) % _SHARES


def in_share(code: str, share: int) -> bool:
    """Tell whether a code belongs to a share."""
    return hashlib.sha256(code.encode()).digest()[0] % _SHARES == share


def codes_from(random_bytes: list, count: int, taken=(), first: str = PRINT_FIRST, share=None) -> list[str]:
    """Return up to `count` different codes made from `random_bytes` (ints 0 to 255), none in `taken`.

    `first` holds the characters that a code may begin with. A phone without network cannot know which
    codes lie about on paper, so codes for writing by hand begin as no printed one does. Bytes that
    would favour some characters are passed over, so each code is equally likely. `share` takes codes of
    one share alone.
    """
    used = {}
    for code in taken:
        used[code] = True
    codes = []
    body = ""
    for byte in random_bytes:
        among = ALPHABET if body else first
        if byte >= 256 - 256 % len(among):
            continue
        body += among[byte % len(among)]
        if len(body) < BODY_LENGTH:
            continue
        code = body + check_character(body)
        body = ""
        if code not in used and may_be_issued(code) and (share is None or in_share(code, share)):
            used[code] = True
            codes.append(code)
            if len(codes) == count:
                break
    return codes


def parse(text, host: str = "") -> dict:
    """Say what a scanned or typed text is.

    Returns {"outcome": "ours", "code", "shown"}, or "mistyped", "other_host" or "foreign" with
    {"title", "sentence"}; "other_host" also has {"code", "host"}, the host in capitals. `host` is this
    installation's host[:port], and where it is a folder of files also its path, without the last "/"; ""
    takes any.
    """
    if not isinstance(text, str):
        raise BadInput("text", text, message("codes-text-wanted"))
    raw = upper_ascii(text.strip())
    address = _address(raw)
    if address is not None:
        their_host, raw = address
        if not may_be_issued(raw):
            return _foreign(text)
        if host and their_host != upper_ascii(host):
            return {
                "outcome": "other_host",
                "code": raw,
                "host": their_host,
                "title": message("codes-elsewhere-title"),
                "sentence": message("codes-elsewhere", host=their_host.lower()),
            }
        return ours(raw)
    code = "".join([character for character in raw if character not in "- "])
    if len(code) == CODE_LENGTH and _all_in(code, _ISO):
        if may_be_issued(code):
            return ours(code)
        return _mistyped(code)
    if 0 < len(code) < 9 and _all_in(code, _ISO):
        return {
            "outcome": "mistyped",
            "title": message("codes-not-whole-title"),
            "sentence": message("codes-not-whole", code=code, count=len(code), whole=CODE_LENGTH),
        }
    return _foreign(text)


def ours(code: str) -> dict:
    """Return what `parse` says of a label of this installation."""
    return {"outcome": "ours", "code": code, "shown": shown(code)}


def _address(raw: str) -> tuple | None:
    """Split an upper-case label address into (host, code), or return None."""
    for scheme in ("HTTPS://", "HTTP://"):
        if raw.startswith(scheme):
            rest = raw[len(scheme) :]
            for between in (_PATH, "/" + _MARK):
                at = rest.find(between)
                # A server has no folders; a folder of files may lie anywhere.
                if at > 0 and (between != _PATH or "/" not in rest[:at]):
                    return rest[:at], rest[at + len(between) :]
    return None


def _mistyped(code: str) -> dict:
    sentence = message("codes-check-does-not-fit", code=shown(code))
    for character in code:
        if character not in ALPHABET:
            sentence = message("codes-no-such-character", code=shown(code), character=character)
            break
    return {"outcome": "mistyped", "title": message("codes-no-label-title"), "sentence": sentence}


def _foreign(text: str) -> dict:
    held = text if len(text) <= 120 else text[:119] + "…"
    return {
        "outcome": "foreign",
        "title": message("codes-foreign-title"),
        "sentence": message("codes-foreign", text=held),
        "holds": held,
    }


def _all_in(text: str, characters: str) -> bool:
    for character in text:
        if character not in characters:
            return False
    return True


def upper_ascii(text: str) -> str:
    """Upper-case ASCII letters only, so that both hosts agree on every text."""
    return "".join([chr(ord(c) - 32) if "a" <= c <= "z" else c for c in text])
