"""Why a parking aid may stay silent in its self-test, by what its lamps show: common practice, no source."""

from ..messages import message
from .sort import Sounder

_SUPPLY_FIRST = ("fuse", "supply", "switch", "sounder", "start", "control")
_ALIVE = ("start", "sounder", "switch", "control", "fuse", "supply")
_NO_REVERSE = ("reverse", "switch", "start", "sounder", "fuse", "supply", "control")

SOUNDER = Sounder(
    checks=(
        {
            "id": "fuse",
            "title": message("parking-sensor-sounder-fuse"),
            "text": message("parking-sensor-sounder-fuse-text"),
            "good": message("parking-sensor-sounder-fuse-good"),
        },
        {
            "id": "supply",
            "title": message("parking-sensor-sounder-supply"),
            "text": message("parking-sensor-sounder-supply-text"),
            "good": message("parking-sensor-sounder-supply-good"),
        },
        {
            "id": "switch",
            "title": message("parking-sensor-sounder-switch"),
            "text": message("parking-sensor-sounder-switch-text"),
            "good": message("parking-sensor-sounder-switch-good"),
        },
        {
            "id": "reverse",
            "title": message("parking-sensor-sounder-reverse"),
            "text": message("parking-sensor-sounder-reverse-text"),
            "good": message("parking-sensor-sounder-reverse-good"),
        },
        {
            "id": "sounder",
            "title": message("parking-sensor-sounder-itself"),
            "text": message("parking-sensor-sounder-itself-text"),
            "good": message("parking-sensor-sounder-itself-good"),
        },
        {
            "id": "start",
            "title": message("parking-sensor-sounder-start"),
            "text": message("parking-sensor-sounder-start-text"),
            "good": message("parking-sensor-sounder-start-good"),
        },
        {
            "id": "control",
            "title": message("parking-sensor-sounder-control"),
            "text": message("parking-sensor-sounder-control-text"),
            "good": message("parking-sensor-sounder-control-good"),
        },
    ),
    order=(
        ("key_on", "never_on", _SUPPLY_FIRST),
        ("key_on", "stays_on", _ALIVE),
        ("key_on", "flashes", _ALIVE),
        ("reverse", "not_as_it_should", _NO_REVERSE),
        ("key_on", "as_it_should", _ALIVE),
        ("", "", _SUPPLY_FIRST),
    ),
    rest=message("parking-sensor-sounder-rest"),
    # A lamp that never comes on wants supply or a control unit; one that flashes reports on the unit itself.
    controls=(("key_on", "never_on", 10), ("key_on", "flashes", 3)),
)
