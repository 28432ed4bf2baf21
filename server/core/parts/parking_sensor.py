"""Ultrasonic parking sensors in a bumper, with a control unit that tests itself and sounds as it does.

All figures and steps are common practice, no source: the data of the vehicle at hand come first.
"""

from .layouts import layout
from .layouts import position
from .sort import Caution
from .sort import Handling
from .sort import Lamp
from .sort import Look
from .sort import Obstruction
from .sort import SelfTest
from .sort import Sort
from .sort import Walk

_FOUR = ("left outer", "left inner", "right inner", "right outer")
_SIX = ("left outer", "left middle", "left inner", "right inner", "right middle", "right outer")
_SIDES = (("left", "left front side"), ("left", "left rear side"),
          ("right", "right front side"), ("right", "right rear side"))  # fmt: skip


def _layouts() -> list[dict]:
    rear4, front4 = _bumper("rear", _FOUR), _bumper("front", _FOUR)
    return [
        layout("rear-4", "Rear, 4 sensors", rear4),
        layout("rear-6", "Rear, 6 sensors", _bumper("rear", _SIX)),
        layout("front-4", "Front, 4 sensors", front4),
        layout("front-6", "Front, 6 sensors", _bumper("front", _SIX)),
        layout("both-8", "Front and rear, 8 sensors", _named(front4) + _named(rear4)),
        layout("both-12", "Front and rear, 12 sensors",
               _named(_bumper("front", _SIX)) + _named(_bumper("rear", _SIX))),
        layout("around-12", "All round, 12 sensors", _named(front4) + _named(rear4) + _sides()),
    ]  # fmt: skip


def _bumper(edge: str, names: tuple) -> list[dict]:
    """Outer corners are easier to reach than the middle behind the plate (common practice, no source)."""
    positions = []
    for name in names:
        reach = 2 if "outer" in name else 3
        positions.append(position(edge + "-" + name.replace(" ", "-"), name, edge, edge, reach))
    return positions


def _sides() -> list[dict]:
    """Side sensors take supply and ground from the bumper next to them (common practice, no source)."""
    positions = []
    for edge, name in _SIDES:
        group = "front" if "front" in name else "rear"
        positions.append(position(name.replace(" ", "-"), name, group, edge, 3))
    return positions


def _named(positions: list[dict]) -> list[dict]:
    """Put the bumper into the name, needed once a vehicle has more than one bumper with sensors."""
    named = []
    for each in positions:
        copy = dict(each)
        copy["name"] = each["edge"] + " " + each["name"]
        named.append(copy)
    return named


PARKING_SENSOR = Sort(
    identity="parking-sensor",
    unit="sensor",
    units="sensors",
    full_names="parking sensors",
    system="parking aid",
    shares_a_feed="bumper",
    layouts=_layouts,
    lamps=(
        Lamp(
            "key_on",
            "Turn the key on. Does the parking-aid lamp come on, then go out?",
            "If it never comes on, the control unit may have no supply, or the lamp or its button is "
            "not connected.",
            (
                ("as_it_should", "It comes on, then goes out"),
                ("not_as_it_should", "It stays on, flashes, or never comes on"),
                ("not_sure", "I can't tell"),
            ),
        ),
        Lamp(
            "reverse",
            "Now reverse. Is the parking aid on?",
            "A fault that is present now usually turns the system off.",
            (
                ("as_it_should", "It is on"),
                ("not_as_it_should", "It is off, or shows a fault"),
                ("not_sure", "I can't tell"),
            ),
        ),
    ),
    look=Look(
        "Look at every sensor",
        "Dirt, ice, thick paint, a sensor pushed in, a bumper repaired lately. Tap what you see.",
        (
            ("dirt", "dirt"),
            ("ice", "ice"),
            ("paint", "thick paint"),
            ("pushed_in", "pushed in"),
            ("repaired_bumper", "bumper repaired"),
        ),
    ),
    photograph="Before a hand touches it: the sensor, its place, the paint around it.",
    self_test=SelfTest(
        start="Start it on the control unit. Note whether its sounder was heard: without it nothing proves "
        "that it ran.",
        heard="sounder heard",
        not_heard="sounder not heard",
        was_not_heard="its sounder was not heard",
        whose_was_heard="whose sounder was heard",
        provoke="Move the wires by hand, spray water, warm it up, and test again.",
        question="Did you hear its sounder?",
        yes="the test ran",
        no="nothing proves that it ran",
    ),
    handling=Handling(
        take_out="Key off, unplug it, release both catches.",
        put_in="push it in until both catches click",
        plug="Push it on straight until it clicks, then close its lock.",
    ),
    fit_checks=(
        {"id": "bore_clean", "words": "The bore is clean and dry"},
        {"id": "right_way", "words": "The sensor faces the right way round"},
        {"id": "catches_home", "words": "Both catches are home"},
        {"id": "flush", "words": "It sits flush with the bumper"},
        {"id": "connector_straight", "words": "The connector went on straight"},
        {"id": "lock_closed", "words": "Its lock is closed"},
    ),
    circuit_checks=(
        {
            "id": "connector",
            "title": "Look into the connector",
            "text": "Pins straight, none pushed back, no green or white crust, seal there, lock not broken. "
            "Wiggle the wires: none may slide out.",
            "unit": "",
            "good": "clean and tight",
            "bad": "bent, loose, wet or corroded",
        },
        {
            "id": "ground",
            "title": "Measure the ground wire",
            "text": "Key off, sensor unplugged. Ohms between the ground pin of the plug and bare metal of "
            "the body.",
            "unit": "Ω",
            "good": "1 Ω or less",
            "bad": "more than 1 Ω, or open",
        },
        {
            "id": "supply",
            "title": "Measure the supply",
            "text": "Key on, reverse in, foot on the brake. Volts between the supply pin and the ground pin "
            "of the plug. Compare with the plug of a sensor that works.",
            "unit": "V",
            "good": "within 0.5 V of the working one",
            "bad": "lower, or nothing",
        },
        {
            "id": "signal",
            "title": "Measure the signal wire",
            "text": "Key off, the control unit's plug off as well. Ohms along the signal wire from end to "
            "end, then from the wire to ground.",
            "unit": "Ω",
            "good": "2 Ω or less along it, open to ground",
            "bad": "high along it, or a path to ground",
        },
    ),
    obstruction=Obstruction(
        words="dirt, ice, paint or aim",
        for_customer="dirt, ice, thick paint or a wrong aim",
        state="covered or misaligned",
        clean="Wipe the face of the sensor and the edge around it",
        look_at="look at its aim",
        check="check its aim",
    ),
    walk=Walk(
        heading="Walk behind it with a pole",
        text="Key on, reverse engaged. Hold an upright pole at each sensor in turn and listen. "
        "Tap for each one what you heard.",
        button="All of them sound",
        again_heading="Listen again",
        again_text="{} stayed quiet although the self-test passes. Look at its aim and its seat, wipe it, "
        "then go round once more.",
        accepted="quiet at the pole",
        name="walk-behind check",
        missed="{} stayed quiet",
        all_well="all sounded",
        report_name="Walk-behind check with a pole",
        report_all_well="every sensor sounded",
        works="sounds",
        fails="quiet",
        left="still to hear",
        first="Listen at the others first.",
    ),
    cautions={
        "ground": Caution("ground", "Level ground, parking brake on, wheels chocked."),
        "reverse": Caution("reverse", "Engine off and foot on the brake before you engage reverse."),
        "key_off": Caution("key_off", "Key off before you unplug anything."),
        "stand": Caution("stand", "Nobody under a vehicle that stands on a jack alone."),
        "hot": Caution("hot", "The exhaust near the bumper stays hot for a long time."),
        "airbag": Caution("airbag", "Leave airbag wiring near the bumper alone."),
        "battery": Caution("battery", "For long work with the key on, support the battery."),
        "aid": Caution("aid", "A parking aid is an aid. Look behind you as well."),
        "local": Caution("local", "Local rules and licensed practice come first."),
    },
    at_step={
        "cautions": ("ground", "stand", "airbag", "local"),
        "lamps.key_on": ("ground",),
        "lamps.reverse": ("reverse",),
        "test": ("reverse", "battery"),
        "pull": ("key_off", "hot", "airbag"),
        "fit": ("key_off",),
        "measure": ("key_off", "airbag", "battery"),
        "walk": ("reverse", "aid"),
        "close": ("aid",),
    },
    caution_in_report="aid",
)
