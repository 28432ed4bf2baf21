"""Part numbers and serial numbers as they are compared: here and there they are printed differently."""

_SEPARATORS = " -./_"
# Spaces and dashes of all widths, and signs without any: who copies a number from a page brings them along.
# From, to; then those that stand alone.
_ODD_SPACES = (0x2000, 0x2015)
_ODD = "\xa0\xad\u202f\u205f\u2060\u2212\u3000\ufeff"
_WIDE = (0xFF01, 0xFF5E)  # the signs of ASCII, as wide as a Chinese character


def plain(text: str) -> str:
    """Return a number without its separators, in capitals; "" where it is nothing else."""
    if len(text) != len(text.encode()):
        text = "".join([_common(c) for c in text])
    return "".join([chr(ord(c) - 32) if "a" <= c <= "z" else c for c in text if c not in _SEPARATORS])


def _common(sign: str) -> str:
    """Return the sign of ASCII that a sign stands for; "" for a separator, itself where there is none."""
    code = ord(sign)
    if _WIDE[0] <= code <= _WIDE[1]:
        return chr(code - _WIDE[0] + 0x21)
    return "" if sign in _ODD or _ODD_SPACES[0] <= code <= _ODD_SPACES[1] else sign


def by_eye(text: str) -> str:
    """Return a number as it is told from others by eye: O is read as 0, I and L as 1, `plain` all else.

    As in Crockford's base32 (crockford.com/base32.html).
    """
    return plain(text).replace("O", "0").replace("I", "1").replace("L", "1")


def tells_apart(serial: str) -> bool:
    """Tell whether a serial number can be one: people type "n/a", "none", "?" or "0000" where they find none.

    One has a figure in it, and two signs that differ (common practice, no source).
    """
    number = plain(serial)
    return bool([c for c in number if "0" <= c <= "9"]) and number.strip(number[0]) != ""
