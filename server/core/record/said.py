"""Whether a value that somebody else wrote is a message that can be said, whatever its id."""

_SURE = 1000000000  # parts per billion
_MOST_PLACES = 9
_MOST_TIME = 100000000000000  # milliseconds; a year of four digits in every zone
_MOST = 1 << 53
_DEEPEST = 12
_NAME = "abcdefghijklmnopqrstuvwxyz0123456789-_"


def is_said(value, deep: int = 0) -> bool:
    """Tell whether a value is text, a message or a figure, and so is all that is in it."""
    if isinstance(value, str):
        return True
    if not isinstance(value, dict) or deep > _DEEPEST:
        return False
    if sorted(value) == ["args", "msg"]:
        args = value["args"]
        if not _is_name(value["msg"]) or not isinstance(args, dict):
            return False
        return all(
            [_is_name(name) and (_whole(args[name]) or is_said(args[name], deep + 1)) for name in args]
        )
    return sorted(value) == ["figure", "of"] and _is_figure(value["figure"], value["of"], deep)


def _is_figure(kind, of, deep: int) -> bool:
    if kind in ("and", "or", "sentences"):
        return isinstance(of, list) and all([is_said(each, deep + 1) for each in of])
    if kind == "decimal":
        return isinstance(of, list) and len(of) == 2 and _whole(of[0]) and _between(of[1], _MOST_PLACES)
    if kind == "percent":
        return _between(of, _SURE)
    if kind in ("day", "time", "moment"):
        return _between(of, _MOST_TIME)
    return kind == "whole" and _whole(of)


def _is_name(text) -> bool:
    return isinstance(text, str) and 0 < len(text) and not text.strip(_NAME)


def _whole(value) -> bool:
    return isinstance(value, int) and value is not True and value is not False and -_MOST < value < _MOST


def _between(value, most: int) -> bool:
    return _whole(value) and 0 <= value <= most
