"""Loudspeakers in four doors: no control unit tests them, a person listens to one after the other.

All figures and steps are common practice, no source: the data of the vehicle at hand come first. Each has two
wires of its own to an output of the radio, so that nothing is shared and an output counts among its wiring.
"""

from ..messages import message
from . import declared
from .layouts import layout
from .layouts import position
from .sort import Sort

# Where they lie on the vehicle from above: (name, group, edge, (x, y)).
_DOORS = (
    ("front left", "front", "left", (60, 450)),
    ("front right", "front", "right", (940, 450)),
    ("rear left", "rear", "left", (60, 660)),
    ("rear right", "rear", "right", (940, 660)),
)


def _say(name: str) -> dict:
    return message("door-speaker-{}".format(name))


def _layouts() -> list[dict]:
    doors = []
    for name, group, edge, place in _DOORS:
        identity = "door-" + name.replace(" ", "-")
        doors.append(position(identity, name + " door", group, edge, 12, place))
    return [layout("doors-4", _say("layout"), doors)]


DOOR_SPEAKER = Sort(
    identity="door-speaker",
    layouts=_layouts,
    position_names={name + " door": "door-speaker-at-" + name.replace(" ", "-") for name, _, _, _ in _DOORS},
    lamps=(),
    look=declared.look(_say, "dirt", "pushed_in"),
    photograph=_say("photograph"),
    self_test=declared.self_test(_say),
    handling=declared.handling(_say),
    fit_checks=declared.fit_checks(_say, "foil", "seal", "screws", "lock"),
    circuit_checks=(
        declared.circuit_check(_say, "connector"),
        declared.circuit_check(_say, "wires", "Ω", declared.at_most(2), metres=5),
        declared.circuit_check(_say, "hinge"),
        declared.circuit_check(_say, "output"),
    ),
    sounder=declared.unproven(_say, "volume", "fuse", "amplifier"),
    obstruction=declared.obstruction(_say, outside=True),
    walk=declared.walk(_say),
    cautions=declared.cautions(
        _say,
        (
            ("ground", "ground"),
            ("airbag", "airbag"),
            ("key_off", "key_off"),
            ("window", "stop"),
            ("ears", "sound"),
            ("local", "local"),
        ),
    ),
    at_step={
        "cautions": ("ground", "airbag", "key_off", "window", "local"),
        "test": ("ears",),
        "pull": ("key_off", "airbag", "window"),
        "fit": ("key_off", "airbag", "window"),
        "seat": ("airbag", "window"),
        "measure": ("key_off", "airbag", "window"),
        "sounder.volume": ("ears",),
        "sounder.fuse": ("key_off",),
        "sounder.amplifier": ("key_off", "airbag"),
        "walk": ("ears",),
        "close": ("local",),
    },
    caution_in_report="local",
    # A door bends its wires each time it opens (common practice, no source).
    rates={"circuit": 0.02},
    minutes={"pull": 2.0, "plug": 0.5, "fit": 4.0, "test": 2.0, "meter": 6.0},
    complaints=declared.complaints(_say, "silent", "rattles", "crackles"),
    without=("feed", "control"),
    codes=False,
    segments=("pins", "connector", "wire", "hinge", "control-plug", "channel"),
)
