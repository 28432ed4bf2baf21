"""The answer in the decimals of the published interface.

Inside, figures are integers so that both hosts agree to the byte; the command line prints them as
the decimals that a person expects.
"""

from .figures import WHOLE

_BILLIONTHS = ["probability", "clear", "chance", "unlisted", "lowest"]
_RENAMED = {"minutes_x100": ("minutes", 100), "bits_x1000": ("bits", 1000), "breaks_x10": ("breaks", 10)}
# The order in which the published interface names them; other keys follow by name.
_ORDER = [
    "test",
    "move",
    "cause",
    "causes",
    "fitted",
    "position",
    "positions",
    "faulted",
    "reads",
    "probability",
    "chance",
    "explanations",
    "verdict",
    "holds",
    "lowest",
    "when",
    "breaks_x10",
    "clear",
    "clear_holds",
    "certain",
    "ignored",
    "next",
    "minutes_x100",
    "bits_x1000",
    "reason",
    "then",
    "outlook",
]


def to_decimals(value):
    """Return a copy of the answer with every integer figure as its decimal number."""
    if isinstance(value, list):
        return [to_decimals(entry) for entry in value]
    if not isinstance(value, dict):
        return value
    result = {}
    for key in sorted(value, key=_by_order):
        if key in _RENAMED:
            name, scale = _RENAMED[key]
            result[name] = _divided(value[key], scale)
        elif key in _BILLIONTHS:
            result[key] = value[key] / WHOLE
        else:
            result[key] = to_decimals(value[key])
    return result


def _divided(value, scale: int):
    """Return a figure, or each figure of an object, in its unit."""
    if isinstance(value, dict):
        return {key: value[key] / scale for key in sorted(value)}
    return value / scale


def _by_order(key: str) -> tuple:
    return (_ORDER.index(key) if key in _ORDER else len(_ORDER), key)
