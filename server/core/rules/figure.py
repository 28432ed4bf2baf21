"""A figure is one that a meter shows, in the unit of its check, and tells one thing."""

from ..errors import BadInput
from ..messages import message
from ..meter import figure
from ..meter import limits
from ..parts import wires
from .refusal import refusal

_FIELDS = ("value", "compared")


def refuse(fold, draft, job):
    """Refuse a figure that cannot be read; the refusal has its field under `fault`, as `form` has."""
    if draft["kind"] != "circuit_measured":
        return None
    data = draft["data"]
    check = job.sort.circuit_check(data["check"])
    if not check:
        return None
    check = wires.on(check, job.wire_at(data["position"]))
    read = {}
    for field in _FIELDS:
        typed = data.get(field, "")
        read[field], problem = figure.read(typed, check["unit"])
        if problem:
            wanted = message("rules-figure-wanted", unit=check["unit"])
            title = message("rules-figure-title", field=field)
            return _refused(field, typed, wanted, title, problem, check["unit"])
    for field in _FIELDS:
        typed = data.get(field, "")
        other = figure.with_thousands(typed, check["unit"])
        if other and _judged(check, read) != _judged(check, dict(read, **{field: other[0]})):
            wanted = message("rules-figure-either", thousands=other[1], decimals=other[2])
            title = message("rules-figure-thousands", field=field)
            return _refused(field, typed, wanted, title, "thousands", check["unit"])
    return None


def _judged(check: dict, read: dict) -> str | None:
    return limits.judge(check, read["value"], read["compared"])


def _refused(field: str, typed: str, wanted: dict, title: dict, problem: str, unit: str) -> dict:
    fault = BadInput("data." + field, typed, wanted)
    made = refusal(
        "figure",
        title,
        message("rules-figure", found=fault.found, wanted=fault.wanted),
        message("rules-figure-do", problem=problem, unit=unit),
    )
    made["fault"] = fault.as_dict()
    return made
