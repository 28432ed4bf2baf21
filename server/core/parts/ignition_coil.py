"""Ignition coils, one on each spark plug of a four-cylinder engine; the test counts misfires by cylinder.

All figures and steps are common practice, no source: the data of the vehicle at hand come first. What stays
at a cylinder when its coil moves is most often the spark plug, so that counts among its wiring.
"""

from ..messages import message
from . import declared
from .layouts import layout
from .layouts import position
from .sort import Sort

_CYLINDERS = 4


def _say(name: str) -> dict:
    return message("ignition-coil-{}".format(name))


def _layouts() -> list[dict]:
    row = []
    for n in range(1, _CYLINDERS + 1):
        # The engine is drawn from above, its cylinders from left to right.
        place = (1000 * (2 * n - 1) // (2 * _CYLINDERS), 500)
        row.append(position("cylinder-{}".format(n), "cylinder {}".format(n), "engine", "front", 5, place))
    return [layout("row-4", _say("layout"), row)]


IGNITION_COIL = Sort(
    identity="ignition-coil",
    layouts=_layouts,
    position_names={
        "cylinder {}".format(n): "ignition-coil-at-{}".format(n) for n in range(1, _CYLINDERS + 1)
    },
    lamps=(declared.key_on(_say, "as_it_should", "stays_on", "flashes", "never_on", "not_sure"),),
    look=declared.look(_say, "dirt", "pushed_in"),
    photograph=_say("photograph"),
    self_test=declared.self_test(_say),
    handling=declared.handling(_say),
    fit_checks=declared.fit_checks(_say, "well", "boot", "seated", "bolt", "lock"),
    circuit_checks=(
        declared.circuit_check(_say, "connector"),
        declared.circuit_check(_say, "spark-plug"),
        declared.circuit_check(_say, "supply", "V", declared.LIKE_THE_OTHERS),
        declared.circuit_check(_say, "ground", "Ω", declared.at_most(1), metres=2),
    ),
    sounder=declared.unproven(_say, "tester", "counters", "fuse"),
    obstruction=declared.obstruction(_say),
    walk=declared.walk(_say),
    cautions=declared.cautions(
        _say,
        (
            ("voltage", "caution"),
            ("hot", "hot"),
            ("belts", "stop"),
            ("brake", "ground"),
            ("key_off", "key_off"),
            ("catalyst", "hot"),
            ("road", "aid"),
            ("local", "local"),
        ),
    ),
    at_step={
        "cautions": ("voltage", "hot", "belts", "brake", "key_off", "catalyst", "local"),
        "test": ("belts", "voltage", "catalyst"),
        "pull": ("key_off", "hot"),
        "fit": ("key_off", "hot"),
        "seat": ("key_off",),
        "clean": ("key_off", "hot"),
        "measure": ("key_off", "voltage", "hot"),
        "sounder.counters": ("belts", "catalyst"),
        "sounder.fuse": ("key_off",),
        "walk": ("road",),
        "close": ("road",),
    },
    caution_in_report="catalyst",
    # The spark plug is among what stays, and wears out (common practice, no source).
    rates={"circuit": 0.03},
    minutes={"pull": 1.0, "plug": 1.5, "fit": 1.5, "test": 4.0, "meter": 6.0},
    complaints=declared.complaints(_say, "shakes", "lamp", "power"),
    outline="engine",
    segments=("pins", "connector", "spark-plug", "wire", "control-plug", "channel", "supply", "ground"),
    hangs=False,
)
