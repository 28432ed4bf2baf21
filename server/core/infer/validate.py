"""Small checks on values that came from outside, each naming the field it looked at.

They stand apart from case.py so that the form of a case can be read there without the plumbing.
"""

from ..errors import BadInput
from ..messages import message

_CHANCE = message("case-chance")


def an_object(value, field: str, known: list, needed: list) -> dict:
    """Return `value` when it is an object with no key but the `known` ones."""
    if not isinstance(value, dict):
        raise BadInput(field, value, message("refusals-object"))
    prefix = field + "." if field else ""
    for key in needed:
        if key not in value:
            raise BadInput(prefix + key, None, message("case-key-there"))
    for key in sorted(value):
        if key not in known:
            raise BadInput(prefix + key, value[key], message("case-keys", keys=", ".join(known)))
    return value


def a_list(value, field: str) -> list:
    """Return `value` when it is a list."""
    if not isinstance(value, list):
        raise BadInput(field, value, message("refusals-list"))
    return value


def a_text(value, field: str) -> str:
    """Return `value` when it is a text that is not empty."""
    if not isinstance(value, str) or value == "":
        raise BadInput(field, value, message("case-text"))
    return value


def a_name(value, field: str):
    """Return what a thing is called: a text, or a message in a tuple, which no JSON from outside can hold."""
    return value[0] if isinstance(value, tuple) else a_text(value, field)


def an_id(value, field: str) -> str:
    """Return `value` when it can name a position or a group; # is kept for later generations."""
    text = a_text(value, field)
    if "#" in text:
        raise BadInput(field, value, message("case-id"))
    return text


def a_flag(value, field: str) -> bool:
    """Return `value` when it is true or false."""
    if value is not True and value is not False:
        raise BadInput(field, value, message("refusals-flag"))
    return value


def a_count(value, field: str) -> int:
    """Return `value` when it is a whole number from 1."""
    if isinstance(value, bool) or not isinstance(value, int) or value < 1:
        raise BadInput(field, value, message("case-whole-from-1"))
    return value


def a_number(value, field: str, low: float, high: float, wanted: dict) -> float:
    """Return `value` as a float when it is a number from `low` to `high`."""
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise BadInput(field, value, wanted)
    # Written so that not-a-number fails too.
    if not (value >= low and value <= high):
        raise BadInput(field, value, wanted)
    return float(value)


def a_chance(value, field: str) -> float:
    """Return `value` when it is a probability, both ends allowed."""
    return a_number(value, field, 0, 1, _CHANCE)


def one_of(value, field: str, choices: list):
    """Return `value` when it is one of the texts in `choices`."""
    if not isinstance(value, str) or value not in choices:
        raise BadInput(field, value, message("refusals-one-of", choices=", ".join(choices)))
    return value


def places(value, field: str, known: dict) -> list:
    """Return the numbers of the positions that a list names, each position once."""
    numbers = []
    for n, name in enumerate(a_list(value, field)):
        here = "{}[{}]".format(field, n)
        if not isinstance(name, str) or name not in known:
            raise BadInput(here, name, message("case-position"))
        if known[name] in numbers:
            raise BadInput(here, name, message("case-position-once"))
        numbers.append(known[name])
    return numbers
