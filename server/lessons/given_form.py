"""The form of the figures that a yard gives, and the bounds within which they can be so."""

import re

from server.core.errors import BadInput
from server.core.infer.variations import CLASSES
from server.core.parts.layouts import MOST_POSITIONS
from server.lessons.rates import CHECKS

APP, VERSION = "swaptrail-lessons", 1
MOST_BYTES = 1_000_000
#: Bounds of what can be so: jobs of a yard, readings of one job, causes at one position, files of a yard.
MOST_JOBS, MOST_READINGS, MOST_CAUSES, MOST_NUMBER = 100_000, 10_000, 10, 1_000_000
_PPM, _PPB = 1_000_000, 1_000_000_000
_SLACK = _PPB // 100  # what is too unlikely is left out, and each share is rounded
_FIELDS = {"app", "v", "key", "number", "first", "last", "jobs", "causes", "readings", "checks"}


def check(body: dict) -> None:
    """Raises BadInput, with its place, for what is not of the form, or cannot be so."""
    if set(body) != _FIELDS:
        raise BadInput("file", "", "")
    _whole("number", body["number"], 1, MOST_NUMBER)
    _whole("jobs", body["jobs"], 1, MOST_JOBS)
    for name in ("first", "last"):
        if not isinstance(body[name], str) or not re.fullmatch(r"(\d{4}-Q[1-4])?", body[name]):
            raise BadInput(name, "", "")
    for name, fields, look in (
        ("causes", {"has", "weights", "count"}, _causes),
        ("readings", {"base", "explained", "count"}, _readings),
    ):
        jobs = 0
        for n, each in enumerate(_list(name, body[name])):
            place = f"{name}[{n}]"
            if not isinstance(each, dict) or set(each) != fields:
                raise BadInput(place, "", "")
            jobs += _whole(f"{place}.count", each["count"], 1, MOST_JOBS)
            look(place, each)
        if jobs > body["jobs"] or (name == "causes" and jobs < body["jobs"]):
            raise BadInput(name, "", "")
    _checks(body["checks"], body["jobs"])


def _causes(place: str, each: dict) -> None:
    has = _wholes(f"{place}.has", each["has"], len(CLASSES), MOST_POSITIONS)
    if not sum(has):
        raise BadInput(f"{place}.has", "", "")
    _shares(f"{place}.weights", [share for _, share in _pairs(f"{place}.weights", each["weights"])])
    for causes, _ in each["weights"]:
        _wholes(f"{place}.weights", causes, len(CLASSES), MOST_POSITIONS * MOST_CAUSES)


def _readings(place: str, each: dict) -> None:
    for rate in _wholes(f"{place}.base", each["base"], 2, _PPM - 1):
        _whole(f"{place}.base", rate, 1, _PPM - 1)
    _shares(f"{place}.explained", [share for share, _ in _pairs(f"{place}.explained", each["explained"])])
    for _, counts in each["explained"]:
        for one in _list(f"{place}.explained", counts):
            causes, *_ = _wholes(f"{place}.explained", one, 3, MOST_READINGS)
            _whole(f"{place}.explained", causes, 0, MOST_CAUSES)


def _checks(checks: object, jobs: int) -> None:
    if not isinstance(checks, dict) or not set(checks) <= set(CHECKS):
        raise BadInput("checks", "", "")
    for rate, counts in checks.items():
        hits, tries = _wholes(f"checks.{rate}", counts, 2, MOST_READINGS * jobs)
        _whole(f"checks.{rate}", hits, 0, tries)


def _shares(place: str, shares: list) -> None:
    total = sum(_whole(place, share, 1, _PPB + 1) for share in shares)
    if not _PPB - _SLACK <= total <= _PPB + len(shares):
        raise BadInput(place, "", "")


def _pairs(place: str, value: object) -> list:
    pairs = _list(place, value)
    if not pairs or any(not isinstance(each, list) or len(each) != 2 for each in pairs):
        raise BadInput(place, "", "")
    return pairs


def _list(place: str, value: object) -> list:
    if not isinstance(value, list):
        raise BadInput(place, "", "")
    return value


def _wholes(place: str, value: object, count: int, most: int) -> list[int]:
    if len(_list(place, value)) != count:
        raise BadInput(place, "", "")
    return [_whole(place, each, 0, most) for each in _list(place, value)]


def _whole(place: str, value: object, least: int, most: int) -> int:
    if not isinstance(value, int) or isinstance(value, bool) or not least <= value <= most:
        raise BadInput(place, "", "")
    return value
