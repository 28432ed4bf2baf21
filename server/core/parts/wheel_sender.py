"""Wheel-speed senders of the brake control unit, one at each of four wheels; the test reads them as it rolls.

All figures and steps are common practice, no source: the data of the vehicle at hand come first. What stays
at a wheel when its sender moves may be the ring that it reads, so that counts among its wiring.
"""

from ..messages import message
from . import declared
from .layouts import layout
from .layouts import position
from .sort import Sort

# Where they lie on the vehicle from above: (name, group, edge, (x, y)).
_WHEELS = (
    ("front left", "front", "left", (20, 250)),
    ("front right", "front", "right", (980, 250)),
    ("rear left", "rear", "left", (20, 765)),
    ("rear right", "rear", "right", (980, 765)),
)


def _say(name: str) -> dict:
    return message("wheel-sender-{}".format(name))


def _layouts() -> list[dict]:
    wheels = []
    for name, group, edge, place in _WHEELS:
        identity = "wheel-" + name.replace(" ", "-")
        wheels.append(position(identity, name + " wheel", group, edge, 8, place))
    return [layout("wheels-4", _say("layout"), wheels)]


WHEEL_SENDER = Sort(
    identity="wheel-sender",
    layouts=_layouts,
    position_names={
        name + " wheel": "wheel-sender-at-" + name.replace(" ", "-") for name, _, _, _ in _WHEELS
    },
    lamps=(declared.key_on(_say, "as_it_should", "stays_on", "never_on", "not_sure"),),
    look=declared.look(_say, "dirt", "pushed_in"),
    photograph=_say("photograph"),
    self_test=declared.self_test(_say),
    handling=declared.handling(_say),
    fit_checks=declared.fit_checks(_say, "seat", "tip", "bolt", "wire", "lock"),
    circuit_checks=(
        declared.circuit_check(_say, "connector"),
        declared.circuit_check(_say, "ring"),
        declared.circuit_check(_say, "supply", "V", declared.LIKE_THE_OTHERS),
        declared.circuit_check(_say, "signal", "Ω", declared.at_most(2), metres=5),
    ),
    sounder=declared.unproven(_say, "tester", "speeds", "fuse"),
    obstruction=declared.obstruction(_say),
    walk=declared.walk(_say),
    cautions=declared.cautions(
        _say,
        (
            ("ground", "ground"),
            ("stand", "stand"),
            ("brakes", "hot"),
            ("key_off", "key_off"),
            ("roll", "stop"),
            ("braking", "caution"),
            ("local", "local"),
        ),
    ),
    at_step={
        "cautions": ("ground", "stand", "brakes", "key_off", "roll", "braking", "local"),
        "test": ("roll",),
        "pull": ("ground", "stand", "key_off", "brakes"),
        "fit": ("stand", "key_off", "brakes"),
        "seat": ("stand", "key_off"),
        "clean": ("stand", "brakes"),
        "measure": ("ground", "stand", "key_off", "brakes"),
        "sounder.speeds": ("roll",),
        "sounder.fuse": ("key_off",),
        "walk": ("roll", "braking"),
        "close": ("braking",),
    },
    caution_in_report="braking",
    # Its ring is among what stays (common practice, no source); each has its own pair of wires to the unit.
    rates={"circuit": 0.02},
    minutes={"pull": 6.0, "plug": 6.0, "fit": 6.0, "test": 4.0, "meter": 6.0},
    complaints=declared.complaints(_say, "lamp", "pulses", "speed"),
    without=("feed",),
    hangs=False,
    segments=("ring", "pins", "connector", "wire", "splice", "control-plug", "channel"),
)
