"""Folding of evidence: tests, meter readings, cleaning, and how parts were fitted."""

from ..codes import troublecode
from ..log import envelope
from ..messages import decimal
from ..messages import message
from ..messages import sentences
from ..meter import copper
from ..meter import figure
from ..state import contradictions
from ..state import stories
from ..state.state import is_hanging
from .fields import MOST_CENTIMETRES
from .fields import Celsius
from .fields import Choice
from .fields import Count
from .fields import Flag
from .fields import Name
from .fields import Names
from .fields import Text
from .fields import WireLength
from .kind import Kind
from .naming import Position
from .naming import Positions
from .naming import Unit
from .places import fitted_on
from .several import Codes
from .several import Meanings

# The wires that lead to a position.
WIRES = ("signal", "supply", "ground")
AT_ONCE = "at_once"
# What was done to bring out a fault that comes and goes, since the test before; at once: nothing.
PROVOKED = (AT_ONCE, "water", "heat", "cold", "loom", "drive", "another_day")


def provoked_words(what: str) -> dict:
    """Return what a test came after, as it stands in a list."""
    return message("facts-provoked", what=what)


def brought_out(what: str):
    """Return how a reading was made warm, or what else it came after; "" for nothing: cold it proves less."""
    return message("facts-reading-after", what=what, after=provoked_words(what)) if what else ""


def _test_run(state, event, job) -> None:
    """Keep the test with what sat where; places in dispute are noted, their readings count for nobody."""
    data = event["data"]
    holds = state.vehicles[job["vehicle"]]["holds"]
    fitted = fitted_on(state, job)
    job["tests"].append(
        {
            "event": envelope.identity(event),
            "n": job["entries"],
            "at": event["at"],
            "actor": event["actor"],
            "heard": data["heard"],
            "faulted": sorted(data["faulted"]),
            "silent": sorted(data["silent"]),
            "unplugged": sorted(data["unplugged"]),
            "codes": data["codes"],
            "came_and_went": data["came_and_went"],
            "note": data["note"],
            "fitted": fitted,
            "disputed": contradictions.disputed_positions(state, job["vehicle"]),
            "cleaned": job["pending"]["cleaned"],
            "repaired": job["pending"]["repaired"],
        }
    )
    others = [test["event"] for test in job["tests"][:-1]]
    apart = [each for each in others if stories.is_unknown(each, event)]
    if apart:
        job["tests"][-1]["apart"] = apart
    if "provoked" in data:
        job["tests"][-1]["provoked"] = data["provoked"]
    for name in ("open_list", "means"):
        if name in data:
            job["tests"][-1][name] = data[name]
    job["pending"] = {"cleaned": [], "repaired": []}
    job["plugged_off"] = [place for place in sorted(data["unplugged"]) if place in fitted]
    if data["came_and_went"] and data["heard"]:
        job["comes_and_goes"] = True
    if job["move"] and _reached(job["move"], holds):
        job["move"] = None


def _reached(move, holds) -> bool:
    """Tell whether every unit of a move sits where the move wants it; a test then ends the move."""
    for position in move["fitted"]:
        if holds.get(position) != move["fitted"][position]:
            return False
    return True


def _cleaned(state, event, job) -> None:
    job["walk"] = None
    _once(job["pending"]["cleaned"], event["data"]["position"])


def _circuit_measured(state, event, job) -> None:
    data = event["data"]
    entry = {
        "position": data["position"],
        "check": data["check"],
        "value": data["value"],
        "reads": data["reads"],
        "repairs_before": len(job["repairs"]),
    }
    for name in ("since", "provoked"):
        if name in data:
            entry[name] = data[name]
    job["meter"].append(entry)


def _wire_noted(state, event, job) -> None:
    # Jobs from before this kind was there have no such dict.
    job.setdefault("wires", {})[event["data"]["position"]] = event["data"]
    # Who notes the wire anew says its colours and pins with it.
    job.get("marks", {}).pop(event["data"]["position"], None)


def _wires_marked(state, event, job) -> None:
    job.setdefault("marks", {})[event["data"]["position"]] = event["data"]


def _connector_locked(state, event, job) -> None:
    place = event["data"]["position"]
    job["locked"][place] = True
    job["plugged_off"] = [each for each in job["plugged_off"] if each != place]


def _fit_checked(state, event, job) -> None:
    data = event["data"]
    job["fit_checks"][data["position"]] = {"unit": data["unit"], "checks": data["checks"]}
    unit = state.units.get(data["unit"])
    if unit and is_hanging(unit) and unit["position"] == data["position"]:
        unit["moves"][-1]["hanging"] = False


def _once(items, item) -> None:
    if item not in items:
        items.append(item)


def _tell_test_run(names, data) -> dict:
    said, codes = [_tell_result(names, data)], troublecode.told(data, names.position)
    if codes:
        said.append(codes)
    if "provoked" in data:
        said.append(message("facts-test-provoked", what=provoked_words(data["provoked"])))
    return said[0] if len(said) == 1 else sentences(said)


def _tell_result(names, data) -> dict:
    if not data["heard"]:
        return names.sort.says("facts-test-not-heard", proof=names.sort.self_test.not_heard)
    if data["faulted"]:
        return names.sort.says("facts-test-fault", positions=names.positions(data["faulted"]))
    return names.sort.says("facts-test-good")


def _tell_circuit_measured(names, data) -> dict:
    check = names.sort.circuit_check(data["check"])
    said = [_tell_reading(names, data, check)]
    if data.get("compared"):
        unit = figure.unit_told(data["compared"], check["unit"] if check else "")
        said.append(message("facts-measured-compared", value=data["compared"], unit=unit))
    if "provoked" in data:
        said.append(message("facts-test-provoked", what=provoked_words(data["provoked"])))
    if data.get("override"):
        said.append(message("facts-measured-all-the-same", reason=data["override"]))
    return said[0] if len(said) == 1 else sentences(said)


def wire_colours(noted: dict) -> list[tuple]:
    """Return (line, colour) of each wire of a position whose colour was typed, as `wires_marked` has it."""
    typed = [(line, noted.get(line + "_colour", "")) for line in WIRES]
    return [(line, colour) for line, colour in typed if colour]


def _tell_wire_noted(names, data) -> dict:
    said = message(
        "facts-wire-noted",
        position=names.position(data["position"]),
        size=copper.called(data["size"]),
        metres=decimal(data["centimetres"], 2),
        celsius=str(data["celsius"]),
    )
    colour = message("facts-wire-colour", colour=data["colour"]) if data["colour"] else ""
    return sentences([said, colour] + _marks(data))


def _tell_wires_marked(names, data) -> dict:
    said = message("facts-wires-marked", position=names.position(data["position"]))
    return sentences([said] + _marks(data))


def _marks(data) -> list:
    said = [
        message("facts-wire-colour-of", line=line, colour=wire_colour)
        for line, wire_colour in wire_colours(data)
    ]
    return said + ([message("facts-wire-pins", pins=data["pins"])] if data["pins"] else [])


def _tell_reading(names, data, check) -> dict:
    title = check["title"] if check else data["check"]
    place, reads = names.position(data["position"]), data["reads"]
    if not (data["value"] and check):
        return message("facts-measured", check=title, position=place, reads=reads)
    return message(
        "facts-measured-value",
        check=title,
        position=place,
        reads=reads,
        value=data["value"],
        unit=figure.unit_told(data["value"], check["unit"]),
    )


_PINS = Text("pins", called=message("steps-circuit-pins"))


def _colours(later: bool = False) -> list:
    """Return the fields with the colour of each wire that leads to a position, in a person's words."""
    return [
        Text(
            line + "_colour",
            later,
            called=message("steps-circuit-colour", line=message("steps-circuit-" + line)),
        )
        for line in WIRES
    ]


KINDS = (
    Kind(
        "test_run",
        Flag("heard"),
        Positions("faulted"),
        Positions("silent"),
        Positions("unplugged"),
        Codes("codes"),
        Flag("came_and_went"),
        Text("note"),
        Choice("provoked", PROVOKED, later=True),
        # The last entry of each phone on the job that this one knew of.
        Names("knows", later=True),
        # Whether the failure types of the codes follow the open list, and what codes mean, as somebody said.
        Flag("open_list", later=True),
        Meanings("means", later=True),
        does=_test_run,
        tells=_tell_test_run,
    ),
    Kind(
        "cleaned",
        Position("position"),
        Text("note"),
        does=_cleaned,
        tells=("facts-cleaned", "position"),
    ),
    Kind(
        "connector_locked",
        Position("position"),
        does=_connector_locked,
        tells=("facts-connector-locked", "position"),
    ),
    Kind(
        "fit_checked",
        Unit("unit"),
        Position("position"),
        Names("checks"),
        does=_fit_checked,
        tells=("facts-fit-checked", "position"),
    ),
    Kind(
        "circuit_measured",
        Position("position"),
        Name("check"),
        Text("value"),
        Choice("reads", ("good", "bad", "unclear")),
        # The same figure where it works, and why figure and reading stand though a limit is against it.
        Text("compared", later=True),
        Text("override", later=True),
        # Of which list of checks it is: a job that was complete by an earlier one stays complete.
        Count("since", later=True),
        # What was done to bring out a fault that comes and goes; it is read beside what is read without.
        Choice("provoked", PROVOKED, later=True),
        does=_circuit_measured,
        tells=_tell_circuit_measured,
    ),
    Kind(
        "wire_noted",
        Position("position"),
        # The wire that is measured there, and how warm it is; its colour and pins in a person's words.
        Choice("size", tuple(sorted(copper.AT_20))),
        WireLength("centimetres", 1, MOST_CENTIMETRES, called=message("steps-circuit-length")),
        Celsius("celsius", called=message("steps-circuit-celsius")),
        Text("colour"),
        _PINS,
        *_colours(later=True),
        does=_wire_noted,
        tells=_tell_wire_noted,
    ),
    Kind(
        "wires_marked",
        Position("position"),
        # By what a person finds them, where nobody has measured how long they are.
        *_colours(),
        _PINS,
        does=_wires_marked,
        tells=_tell_wires_marked,
    ),
)
