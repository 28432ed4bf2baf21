"""The trail: which unit sat where in each test, and what was read there; drawn as lines by the app."""

from ..messages import message
from ..state.job import Job
from ..words import causes
from ..words import words
from ..words.words import unit_name

IN_HAND = "in_hand"


def trail(job: Job, result: dict | None) -> dict:
    """Return {"tests", "rows", "lines"}: tests left to right, positions top to bottom, a line a unit."""
    aside = set_aside(result)
    suspects = _suspects(job, result)
    rows = [
        {
            "position": position["id"],
            "name": message("views-heading", words=words.called(job, position)),
            "suspect": _stays(suspects, position["id"]),
        }
        for position in job.positions
    ]
    units = {}
    for test in job.tests:
        for position in test["fitted"]:
            units[test["fitted"][position]] = True
    lines = [_line(job, unit, aside, suspects) for unit in sorted(units)]
    return {
        "tests": [
            {
                "n": index + 1,
                "label": message("views-trail-test", number=str(index + 1)),
                "counted": index not in aside,
                "why": aside.get(index, ""),
            }
            for index in range(len(job.tests))
        ],
        "rows": rows,
        "lines": lines,
    }


def set_aside(result: dict | None) -> dict:
    """Return number of the test -> why, for the tests that the reasoning sets aside."""
    return {entry["test"]: entry["reason"] for entry in result["ignored"]} if result else {}


def reading(job: Job, index: int, position: str, aside: dict) -> str:
    """Return the mark of one position in one test: fault, clean, aside or untested."""
    test = job.tests[index]
    if index in aside or position in test["disputed"]:
        return "aside"
    if position in test["silent"] or position in test["unplugged"]:
        return "untested"
    return "fault" if position in test["faulted"] else "clean"


def _line(job: Job, unit, aside, suspects) -> dict:
    points = []
    for index in range(len(job.tests)):
        fitted = job.tests[index]["fitted"]
        where = [position for position in sorted(fitted) if fitted[position] == unit]
        position = where[0] if where else None
        mark = reading(job, index, position, aside) if position else "untested"
        points.append({"test": index, "position": position, "mark": mark})
    return {
        "unit": unit,
        "shown": unit_name(job.unit(unit)) if job.unit(unit).is_labelled() else "",
        "suspect": "unit:" + unit in suspects,
        "points": points,
    }


def _suspects(job, result) -> list:
    """Return the causes of the verdict, or of the likeliest explanation that is not empty."""
    if not result:
        return []
    if result["verdict"]:
        return result["verdict"]["causes"]
    for explanation in result["explanations"]:
        if explanation["causes"]:
            return explanation["causes"]
    return []


def _stays(suspects, position) -> bool:
    for cause in suspects:
        kind, what, _ = causes.split(cause)
        if kind == "circuit" and what == position:
            return True
    return False
