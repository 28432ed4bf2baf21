"""The pattern of ids: of jobs, vehicles, positions, groups, units, kinds.

An id is a key of objects, whose keys are ASCII (`canon`), a part of other ids and of addresses of screens.
What was recorded before there was a pattern may have others, and is folded all the same.
"""

from ..errors import BadInput
from ..messages import message

_FIRST = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
_FURTHER = _FIRST + "-_."


def fits(text: str) -> bool:
    """Tell whether a text is ASCII letters, digits, "-", "_" and ".", the first a letter or digit."""
    return bool(text) and text[0] in _FIRST and not text.strip(_FURTHER)


def bound(path: str, text: str) -> None:
    """Raise BadInput where a text does not have the form of an id."""
    if not fits(text):
        raise BadInput(path, text, message("refusals-id"))
