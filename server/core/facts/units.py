"""What a unit is: added to the record, labelled, its part number and serial read off it."""

from ..log import envelope
from ..messages import message
from ..messages import sentences
from ..state.contradictions import NUMBERS
from ..state.kept_facts import new_unit
from ..state.stories import device_of
from . import labelling
from .conflicts import flag
from .fields import HOW
from .fields import Names
from .fields import Place
from .fields import Reason
from .fields import Text
from .kind import KEPT
from .kind import MAY_HAVE_JOB
from .kind import Kind
from .naming import LabelCode
from .naming import LabelCodeOrNone
from .naming import NewUnit
from .naming import Unit
from .places import claim_of
from .places import contradict
from .places import known
from .places import note_move
from .places import put


def _unit_added(state, event, job) -> None:
    data = event["data"]
    if data["unit"] in state.units:
        contradict(state, event, job, data["unit"], claim_of(data["place"], None, None))
        return
    unit = new_unit(data["unit"], data["part"], data["serial"])
    state.add_unit(unit)
    put(state, event, job, unit, data["place"], None, data["how"])
    if data["code"]:
        _label(state, event, job, unit, data["code"])


def _unit_labelled(state, event, job) -> None:
    unit = known(state, event, job)
    _label(state, event, job, unit, event["data"]["code"])
    note_move(event, job, unit, "labelled", event["data"]["how"])


def _label_voided(state, event, job) -> None:
    unit = known(state, event, job)
    labelling.void(state, unit, event["data"]["code"])
    note_move(event, job, unit, "label void", "tapped")


def _part_noted(state, event, job) -> None:
    unit, data = known(state, event, job), event["data"]
    standing = unit.get("noted", [])
    if [each for each in standing if envelope.identity(event) in each["knew"]]:
        return  # it came late, by a file: a later reading knew of it
    if "over" in data:
        _note_reading(unit, event, standing)
    else:
        unit.pop("noted", None)
        for name in NUMBERS:
            unit[name] = data[name] or unit[name]
    state.note_serials(unit)


def _note_reading(unit, event, standing: list) -> None:
    """Keep the readings of a unit's numbers that did not know of each other, and what they changed.

    `was` is what was on record before the first of them, `knew` the readings that one knew of. Where two
    changed one number, the last has it until somebody settles which is right.
    """
    data, over = event["data"], event["data"]["over"]
    apart, knew = [], list(over)
    for each in standing:
        if each["by"] in over or device_of(each["by"]) == event["device"]:
            knew.extend([one for one in each["knew"] if one not in knew])
        else:
            apart.append(each)
    was = apart[0]["was"] if apart else {name: unit[name] for name in NUMBERS}
    said = {name: data[name] or was[name] for name in NUMBERS}
    said["unit"] = unit["id"]
    reading = {"by": envelope.identity(event), "at": event["at"], "actor": event["actor"]}
    reading.update({"kind": event["kind"], "data": said, "was": was, "knew": knew})
    unit["noted"] = apart + [reading]
    for name in NUMBERS:
        changed = [each["data"][name] for each in unit["noted"] if each["data"][name] != was[name]]
        unit[name] = changed[-1] if changed else was[name]


def _label(state, event, job, unit, code) -> None:
    """Bind a code to a unit, and flag what needs a person to look at it."""
    about = labelling.put_on(state, unit, code)
    if about:
        flag(state, event, job, unit["id"], about, code)


def _tell_unit_added(names, data) -> dict:
    unit = names.code(data["code"]) or message("facts-a-unit", sort=names.sort.identity)
    if data["part"]:
        return _with_reason(message("facts-unit-added-with-part", unit=unit, part=data["part"]), data)
    return message("facts-unit-added", unit=unit)


def _tell_part_noted(names, data) -> dict:
    unit, part, serial = names.unit(data["unit"]), data["part"], data["serial"]
    if not part:
        return message("facts-serial-noted", unit=unit, serial=serial)
    if not serial:
        return _with_reason(message("facts-part-noted", unit=unit, part=part), data)
    return _with_reason(message("facts-numbers-noted", unit=unit, part=part, serial=serial), data)


def _with_reason(said: dict, data) -> dict:
    """Return what is said of a part number, and why it stands though it reads as a label's code."""
    reason = data.get("override", "")
    return sentences([said, message("facts-measured-all-the-same", reason=reason)]) if reason else said


KINDS = (
    Kind(
        "unit_added",
        NewUnit("unit"),
        Text("part"),
        Text("serial"),
        LabelCodeOrNone("code"),
        HOW,
        Place("place", ("out", "stock")),
        # Why the part number stands, though it reads as the code of a label.
        Text("override", later=True),
        does=_unit_added,
        tells=_tell_unit_added,
        job=MAY_HAVE_JOB,
    ),
    Kind(
        "unit_labelled",
        Unit("unit"),
        LabelCode("code"),
        HOW,
        does=_unit_labelled,
        tells=("facts-unit-labelled", "code", "how"),
        job=MAY_HAVE_JOB,
        after_closing=KEPT,
    ),
    Kind(
        "label_voided",
        Unit("unit"),
        LabelCode("code"),
        Reason("reason"),
        does=_label_voided,
        tells=("facts-label-void", "code", "reason"),
        job=MAY_HAVE_JOB,
        after_closing=KEPT,
    ),
    Kind(
        "part_noted",
        Unit("unit"),
        Text("part"),
        Text("serial"),
        Text("override", later=True),
        # The readings of the same unit that this one knew of and that stood.
        Names("over", later=True),
        does=_part_noted,
        tells=_tell_part_noted,
        job=MAY_HAVE_JOB,
        after_closing=KEPT,
    ),
)
