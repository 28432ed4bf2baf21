"""The trail: which unit sat where in each test, and what was read there; drawn as lines by the app."""

from ..evidence import ways
from ..evidence import who_is_who
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..words import causes
from ..words import words
from ..words.words import unit_name

# A part that is a unit with less than this chance (parts per billion) is not drawn as maybe it.
_MAY_BE = 50000000


def trail(job: Job, result: dict | None) -> dict:
    """Return the tests left to right, the positions (rows) top to bottom, and a line a unit.

    Where units got mixed up their lines end and those of the parts in the hand begin; a part that the tests
    know again goes on the line of its unit. `joins` are what the others may be, from line to line;
    `mixed_words` say the same.
    """
    aside = set_aside(result)
    suspects = _suspects(result)
    rows = [
        {
            "position": position["id"],
            "name": message("views-heading", words=words.called(job, position)),
            "suspect": _stays(suspects, position["id"]),
        }
        for position in job.positions
    ]
    lines, joins = _lines(job, result, aside, suspects)
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
        "joins": joins,
        "mixed_words": _mixed(job, result),
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


def _lines(job: Job, result, aside, suspects) -> tuple:
    """Return (the lines, the joins between them)."""
    known = who_is_who.known(job, result)
    ended, began, joins = {}, {}, []
    for entry in ways.open_sets(job):
        for unit in entry["open"]:
            ended[unit] = entry["tests"]
        for body in entry["bodies"]:
            began[body] = entry["tests"]
    units = {}
    for test in job.tests:
        for position in test["fitted"]:
            units[test["fitted"][position]] = True
    joined = {known[body]: body for body in known if body in units}
    lines = []
    for unit in sorted(units):
        if unit in joined:
            continue
        whole = [known[unit], unit] if unit in known else [unit]
        whole = [each for each in whole if each in units]
        first = 0 if unit in known else began.get(unit, _came(job, whole))
        last = len(job.tests) if unit in known else ended.get(unit, len(job.tests))
        line = _line(job, whole, aside, suspects)
        line["points"] = [point for point in line["points"] if first <= point["test"] < last]
        if line["points"]:
            lines.append(line)
    drawn = [line["unit"] for line in lines]
    possible = who_is_who.chances(result)
    for body in sorted(possible):
        for identity, chance in possible[body]:
            if body in drawn and identity in drawn and chance >= _MAY_BE:
                joins.append({"start": identity, "end": body})
    return lines, joins


def _came(job: Job, whole: list) -> int:
    """Return the first test on the line of a unit; one that came during the job was not in hand before."""
    if [unit for unit in whole if unit in job.units_at_opening]:
        return 0
    for index in range(len(job.tests)):
        fitted = job.tests[index]["fitted"]
        if [position for position in fitted if fitted[position] in whole]:
            return index
    return 0


def _mixed(job: Job, result):
    """Return who is who among those that got mixed up and were tested since, "" without any."""
    said = [
        who_is_who.told(job, result, entry)
        for entry in ways.open_sets(job)
        if len(job.tests) > entry["tests"]
    ]
    said = [each for each in said if each]
    return sentences(said) if said else ""


def _line(job: Job, whole: list, aside, suspects) -> dict:
    """Return the line of a unit; `whole` are the ids that it was tested under, the present one last."""
    unit = whole[-1]
    points = []
    for index in range(len(job.tests)):
        fitted = job.tests[index]["fitted"]
        where = [position for position in sorted(fitted) if fitted[position] in whole]
        position = where[0] if where else None
        mark = reading(job, index, position, aside) if position else "untested"
        points.append({"test": index, "position": position, "mark": mark})
    return {
        "unit": unit,
        "shown": unit_name(job.unit(unit)) if job.unit(unit).is_labelled() else "",
        "suspect": "unit:" + unit in suspects,
        "points": points,
    }


def _suspects(result) -> list:
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
