"""What was measured on the circuit of a position, and what is known of its wires."""

from ..messages import decimal
from ..messages import message
from ..messages import sentences
from ..meter import copper
from ..meter import figure
from .amounts import MOST_CENTIMETRES
from .amounts import Celsius
from .amounts import Count
from .amounts import WireLength
from .evidence import PROVOKED
from .evidence import provoked_words
from .fields import Choice
from .fields import Name
from .fields import Text
from .kind import Kind
from .naming import Position

# The wires that lead to a position.
WIRES = ("signal", "supply", "ground")


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
