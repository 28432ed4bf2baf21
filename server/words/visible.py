"""Shows the signs of a text that nobody sees, or that turn the writing round, as their codes.

Two names that look alike are alike. The rule of static/words/visible.js, to the letter.
"""

import re

# Controls but tab and line end, soft hyphen, marks of direction, blanks without width, tags.
_SIGNS = re.compile(
    "[\0-\x08\x0b-\x1f\x7f-\x9f\xad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"
    "\U000e0000-\U000e007f]"
)
# They join emoji and letters of some scripts; behind Latin ones they only hide.
_JOINERS = re.compile("(^|[\0-\u024f])([\u200c\u200d]+)")


def visible(text: str) -> str:
    """Returns a text with `[U+202E]` and the like in place of such signs."""
    shown = _SIGNS.sub(lambda found: _code(found[0]), text)
    return _JOINERS.sub(lambda found: found[1] + "".join(map(_code, found[2])), shown)


def _code(sign: str) -> str:
    return f"[U+{ord(sign):04X}]"
