"""Lists of the parts counter: what waits, what was decided in a span of time, what a search finds.

Each is a view of the units' returns, so a counter without a network has them too.
"""

from ..codes import labels
from ..facts.returns import open_return
from ..messages import message
from ..returns.about import about
from ..state.job import known_job
from ..state.serials import serials_of
from ..state.unit import Unit
from ..words import words
from ..words.people import who
from . import search
from .counter import DECISIONS
from .counter import past_of
from .counter import shown
from .counter import word_of

MOST_FOUND = 200
MOST_OF_A_SERIAL = 5  # one has it, unless a label was moved


def waiting(state) -> list[dict]:
    """Return the returns that are received or held and not decided, the longest waiting first."""
    found = []
    for identity in state.units:
        unit = state.units[identity]
        entry = open_return(unit)
        if entry:
            line = _unit_line(state, unit, entry)
            line["at"] = entry["at"]
            line["by"] = who(state, entry["event"], entry["actor"])
            line["held"] = _decision(entry["decision"]) if entry["decision"] else None
            found.append(line)
    return sorted(found, key=lambda line: (line["at"], line["unit"]))


def decided(state, start: int, end: int) -> dict:
    """Return every decision from `start` to before `end` (ms), the latest first, and how many of each."""
    lines = []
    for identity in state.units:
        unit = state.units[identity]
        for entry in unit["returns"]:
            for made in entry["decisions"]:
                if start <= made["at"] < end:
                    line = _unit_line(state, unit, entry)
                    line.update(_decision(made))
                    line["stands"] = entry["decision"] == made
                    line["serial_read"] = entry["serial"]
                    line["host"] = line["code"].partition("@")[2]
                    lines.append(line)
    counts = {name: 0 for name in DECISIONS}
    for line in lines:
        counts[line["decision"]] += 1
    return {
        "lines": sorted(lines, key=lambda line: (-line["at"], line["event"])),
        "counts": [
            {"decision": name, "word": word_of(name), "past": past_of(name), "count": counts[name]}
            for name in DECISIONS
        ],
        "total": len(lines),
    }


def find(state, findable, text: str) -> list[dict]:
    """Return the units that a text finds by what is on record of them and of their jobs.

    Where none has exactly that, those that come near. Each line says by what it was found (`found_by`); more
    than `MOST_FOUND` are no answer to look through.
    """
    asked = search.Asked(text)
    if asked.is_empty():
        return []
    found = asked.among(findable.units())
    near = not found
    lines = []
    for identity in sorted(found or asked.nearly_among(findable.units()))[:MOST_FOUND]:
        line = found_line(state, identity)
        line["near"] = near
        line["found_by"] = search.reasons(asked, _facts(state, identity, near), near)
        lines.append(line)
    return sorted(lines, key=lambda line: (line["decided"] is None, line["code"] == "", line["unit"]))


def with_serial(state, serial: str) -> list[dict]:
    """Return up to `MOST_OF_A_SERIAL` units off which this serial number was read, whatever its signs."""
    return [found_line(state, identity) for identity in sorted(state.with_serial(serial))[:MOST_OF_A_SERIAL]]


def found_line(state, identity: str) -> dict:
    """Return one unit as a search shows it."""
    unit = state.units[identity]
    line = _unit_line(state, unit, unit["returns"][-1] if unit["returns"] else None)
    last = [entry["decision"] for entry in unit["returns"] if entry["decision"]]
    line["decided"] = _decision(last[-1]) if last else None
    return line


def _facts(state, identity: str, near: bool) -> list[tuple[str, str]]:
    """Return the (sort, text) of what a unit is found by and its line does not show, or all where `near`."""
    unit = state.units[identity]
    line = _unit_line(state, unit, unit["returns"][-1] if unit["returns"] else None)
    on_it = [("sensor", code) for code in search.codes_of_unit(unit)]
    on_it.extend([("serial", serial) for serial in serials_of(unit)])
    on_it.extend([("part", part) for part in [unit["part"]] + [entry["part"] for entry in unit["returns"]]])
    for job in unit["jobs"]:
        known = state.job_line(job)
        vehicle = state.vehicles[known["vehicle"]]
        on_it.extend([("plate", vehicle.get("plate", "")), ("vehicle", vehicle["name"])])
        on_it.extend([("vin", vehicle["vin"]), ("complaint", known["complaint"]), ("part", known["part"])])
    for text in search.of_unit(unit)[0]:
        on_it.append(("said", text))
    shown_of_it = {line["vehicle"]: True, line["part"]: True, labels.shown(line["code"]): True}
    return [fact for fact in on_it if near or fact[1] not in shown_of_it]


def returns_of(unit: dict) -> list[dict]:
    """Return the returns of a unit in order of time, each with the decision that stands in words."""
    found = []
    for entry in unit["returns"]:
        line = dict(entry)
        line["decisions"] = [_decision(made) for made in entry["decisions"]]
        line["decision"] = _decision(entry["decision"]) if entry["decision"] else None
        found.append(line)
    return found


def _unit_line(state, unit, entry) -> dict:
    code = unit["code"] or (entry["code"] if entry else "")
    # Its line does: a phone has few of the jobs in memory, and a list names as many as it is long.
    job = state.job_line(unit["jobs"][-1]) if unit["jobs"] else None
    return {
        "unit": unit["id"],
        "code": code,
        "shown": shown(code) or _name_without_code(state, unit),
        "part": unit["part"],
        "serial": unit["serial"],
        "job": job["id"] if job else None,
        "vehicle": state.vehicles[job["vehicle"]]["name"] if job else "",
        "complaint": job["complaint"] if job else "",
        "how": entry["how"] if entry else "",
        "twice": entry["twice"] if entry else False,
    }


def _name_without_code(state, unit) -> dict:
    job = known_job(state, unit["jobs"][-1]) if unit["jobs"] else None
    return message("views-heading", words=words.unit_name(Unit(state, unit["id"], job)))


def _decision(made) -> dict:
    line = dict(made)
    line["word"] = word_of(made["decision"])
    line["past"] = past_of(made["decision"])
    line["proposed_word"] = word_of(made["proposed"])
    line["about"] = [about(rule) for rule in made["reasons"]]
    return line
