"""Ultrasonic parking sensors in a bumper, with a control unit that tests itself and sounds as it does.

All figures and steps are common practice, no source: the data of the vehicle at hand come first.
"""

from ..messages import message
from .layouts import layout
from .layouts import position
from .parking_sounder import SOUNDER
from .parking_wiring import CHECKS
from .parking_wiring import HARNESS
from .sort import Caution
from .sort import Handling
from .sort import Lamp
from .sort import Listen
from .sort import Look
from .sort import Obstruction
from .sort import SelfTest
from .sort import Sort
from .sort import Walk

_FOUR = ("left outer", "left inner", "right inner", "right outer")
_SIX = ("left outer", "left middle", "left inner", "right inner", "right middle", "right outer")
_SIDES = ("left-front-side", "left-rear-side", "right-front-side", "right-rear-side")

# What ready-made positions are called: ids of messages. Logs carry their last words, as in "left outer".
_AT = "parking-sensor-at-"
_CALLED = (
    "parking-sensor-at-left-outer",
    "parking-sensor-at-left-middle",
    "parking-sensor-at-left-inner",
    "parking-sensor-at-right-inner",
    "parking-sensor-at-right-middle",
    "parking-sensor-at-right-outer",
    "parking-sensor-at-front-left-outer",
    "parking-sensor-at-front-left-middle",
    "parking-sensor-at-front-left-inner",
    "parking-sensor-at-front-right-inner",
    "parking-sensor-at-front-right-middle",
    "parking-sensor-at-front-right-outer",
    "parking-sensor-at-rear-left-outer",
    "parking-sensor-at-rear-left-middle",
    "parking-sensor-at-rear-left-inner",
    "parking-sensor-at-rear-right-inner",
    "parking-sensor-at-rear-right-middle",
    "parking-sensor-at-rear-right-outer",
    "parking-sensor-at-left-front-side",
    "parking-sensor-at-left-rear-side",
    "parking-sensor-at-right-front-side",
    "parking-sensor-at-right-rear-side",
)


def _layouts() -> list[dict]:
    rear4, front4 = _bumper("rear", _FOUR), _bumper("front", _FOUR)
    return [
        layout("rear-4", message("parking-sensor-layout-rear-4"), rear4),
        layout("rear-6", message("parking-sensor-layout-rear-6"), _bumper("rear", _SIX)),
        layout("front-4", message("parking-sensor-layout-front-4"), front4),
        layout("front-6", message("parking-sensor-layout-front-6"), _bumper("front", _SIX)),
        layout("both-8", message("parking-sensor-layout-both-8"), _named(front4) + _named(rear4)),
        layout("both-12", message("parking-sensor-layout-both-12"),
               _named(_bumper("front", _SIX)) + _named(_bumper("rear", _SIX))),
        layout("around-12", message("parking-sensor-layout-around-12"),
               _named(front4) + _named(rear4) + _sides()),
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
    for identity in _SIDES:
        edge, group, _ = identity.split("-")
        positions.append(position(identity, identity.replace("-", " "), group, edge, 3))
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
    layouts=_layouts,
    position_names={name[len(_AT) :].replace("-", " "): name for name in _CALLED},
    lamps=(
        Lamp(
            "key_on",
            message("parking-sensor-key-on-heading"),
            message("parking-sensor-key-on-text"),
            (
                ("as_it_should", message("parking-sensor-key-on-right")),
                ("stays_on", message("parking-sensor-key-on-stays")),
                ("flashes", message("parking-sensor-key-on-flashes")),
                ("never_on", message("parking-sensor-key-on-never")),
                ("not_sure", message("parking-sensor-lamps-not-sure")),
            ),
        ),
        Lamp(
            "reverse",
            message("parking-sensor-reverse-heading"),
            message("parking-sensor-reverse-text"),
            (
                ("as_it_should", message("parking-sensor-reverse-right")),
                ("not_as_it_should", message("parking-sensor-reverse-wrong")),
                ("not_sure", message("parking-sensor-lamps-not-sure")),
            ),
        ),
    ),
    look=Look(
        message("parking-sensor-look-heading"),
        message("parking-sensor-look-text"),
        (
            ("dirt", message("parking-sensor-found-dirt")),
            ("ice", message("parking-sensor-found-ice")),
            ("paint", message("parking-sensor-found-paint")),
            ("pushed_in", message("parking-sensor-found-pushed-in")),
            ("repaired_bumper", message("parking-sensor-found-repaired-bumper")),
        ),
    ),
    photograph=message("parking-sensor-photograph"),
    self_test=SelfTest(
        start=message("parking-sensor-test-start"),
        start_again=message("parking-sensor-test-start-again"),
        heard=message("parking-sensor-test-heard"),
        not_heard=message("parking-sensor-test-not-heard"),
        was_not_heard=message("parking-sensor-test-was-not-heard"),
        whose_was_heard=message("parking-sensor-test-whose-heard"),
        provoke=message("parking-sensor-test-provoke"),
        question=message("parking-sensor-test-question"),
        asked=message("parking-sensor-test-asked"),
        yes=message("parking-sensor-test-ran"),
        no=message("parking-sensor-test-not-proven"),
    ),
    handling=Handling(
        take_out=message("parking-sensor-take-out"),
        put_in=message("parking-sensor-put-in"),
        plug=message("parking-sensor-plug"),
    ),
    fit_checks=(
        {"id": "bore_clean", "words": message("parking-sensor-fit-bore")},
        {"id": "right_way", "words": message("parking-sensor-fit-right-way")},
        {"id": "catches_home", "words": message("parking-sensor-fit-catches")},
        {"id": "flush", "words": message("parking-sensor-fit-flush")},
        {"id": "connector_straight", "words": message("parking-sensor-fit-connector")},
        {"id": "lock_closed", "words": message("parking-sensor-fit-lock")},
    ),
    circuit_checks=CHECKS,
    harness=HARNESS,
    obstruction=Obstruction(
        words=message("parking-sensor-blocked"),
        for_customer=message("parking-sensor-blocked-for-customer"),
        state=message("parking-sensor-blocked-state"),
        clean=message("parking-sensor-clean"),
        clean_and_look=message("parking-sensor-clean-and-look"),
        check=message("parking-sensor-blocked-check"),
        outside=True,
    ),
    walk=Walk(
        heading=message("parking-sensor-walk-heading"),
        text=message("parking-sensor-walk-text"),
        button=message("parking-sensor-walk-all"),
        again_heading=message("parking-sensor-walk-again-heading"),
        again_text="parking-sensor-walk-again-text",
        accepted=message("parking-sensor-walk-accepted"),
        name=message("parking-sensor-walk-name"),
        missed="parking-sensor-walk-missed",
        all_well=message("parking-sensor-walk-all-well"),
        report_name=message("parking-sensor-walk-report-name"),
        report_all_well=message("parking-sensor-walk-report-all-well"),
        works=message("parking-sensor-walk-works"),
        fails=message("parking-sensor-walk-fails"),
        left=message("parking-sensor-walk-left"),
        first=message("parking-sensor-walk-first"),
    ),
    cautions={
        "ground": Caution(
            "ground", message("parking-sensor-caution-ground"), message("parking-sensor-caution-ground-short")
        ),
        "reverse": Caution(
            "reverse",
            message("parking-sensor-caution-reverse"),
            message("parking-sensor-caution-reverse-short"),
        ),
        "listen": Caution(
            "reverse",
            message("parking-sensor-caution-listen"),
            message("parking-sensor-caution-listen-short"),
        ),
        "key_off": Caution(
            "key_off",
            message("parking-sensor-caution-key-off"),
            message("parking-sensor-caution-key-off-short"),
        ),
        "stand": Caution(
            "stand", message("parking-sensor-caution-stand"), message("parking-sensor-caution-stand-short")
        ),
        "hot": Caution(
            "hot", message("parking-sensor-caution-hot"), message("parking-sensor-caution-hot-short")
        ),
        "airbag": Caution(
            "airbag", message("parking-sensor-caution-airbag"), message("parking-sensor-caution-airbag-short")
        ),
        "battery": Caution(
            "battery",
            message("parking-sensor-caution-battery"),
            message("parking-sensor-caution-battery-short"),
        ),
        "aid": Caution(
            "aid", message("parking-sensor-caution-aid"), message("parking-sensor-caution-aid-short")
        ),
        "local": Caution(
            "local", message("parking-sensor-caution-local"), message("parking-sensor-caution-local-short")
        ),
    },
    at_step={
        "warm": ("hot", "key_off", "airbag", "battery"),
        "cautions": ("ground", "reverse", "key_off", "stand", "hot", "airbag", "battery", "local"),
        "look": ("reverse",),
        "test": ("reverse", "battery"),
        "pull": ("key_off", "hot", "airbag"),
        "fit": ("key_off",),
        "measure": ("key_off", "airbag", "battery"),
        "found": ("key_off", "airbag"),
        "listen": ("ground", "listen", "battery"),
        "sounder.supply": ("battery",),
        "sounder.reverse": ("reverse",),
        "sounder.control": ("key_off", "battery"),
        "walk": ("ground", "aid"),
        "close": ("aid",),
    },
    caution_in_report="aid",
    sounder=SOUNDER,
    complaints=(
        message("parking-sensor-complaint-beeps"),
        message("parking-sensor-complaint-silent"),
        message("parking-sensor-complaint-lamp"),
    ),
    pole=True,
    listen=Listen(
        text=message("parking-sensor-listen-text"),
        ticks=message("parking-sensor-listen-ticks"),
        silent=message("parking-sensor-listen-silent"),
    ),
)
