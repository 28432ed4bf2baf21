"""The vehicles of the demo: invented, each with the fault it really has and how its bumper looks."""

from demo_db.dice import identity
from demo_db.pictures import Finish

# Of vehicles that nobody photographs.
_BARE = Finish(bumper=(60, 62, 64), body=(60, 62, 64), painted=False, dirt=0.2)
_CODE = "B1F{:02X}"  # the form of a code; what it stands for is ours


class Car:
    """A vehicle and the truth about it, which the people in the demo do not know."""

    def __init__(self, name: str, vin: str, part: str, finish: Finish):
        """Begin with a vehicle on which everything works."""
        self.id = identity("v", name)
        self.name = name
        self.vin = vin
        self.part = part
        self.finish = finish
        self.bad_units: list[str] = []
        self.bad_circuits: list[str] = []
        self.blocked: list[str] = []

    def first_unit(self, position: str) -> str:
        """Return the id of the unit that sat at a position when the vehicle was first seen."""
        return f"{self.id}.{position}"

    def faulted(self, sitting: dict[str, str]) -> list[str]:
        """Return the positions that the control unit reports, with what sits where."""
        return [
            position
            for position in sorted(sitting)
            if sitting[position] in self.bad_units or position in self.bad_circuits + self.blocked
        ]

    def code(self, position: str) -> dict:
        """Return the trouble code that is stored for a position."""
        number = sum(position.encode()) % 15 + 1
        open_wire = position in self.bad_circuits
        return {
            "position": position,
            "code": _CODE.format(number),
            "failure_type": "13" if open_wire else "96",
        }


def blue_estate() -> Car:
    """Return the estate that comes back after three weeks."""
    finish = Finish(bumper=(52, 88, 132), body=(48, 82, 126), painted=True, dirt=0.25)
    return Car("Blue estate", "00SWAPTR0AXDEM001", "ST-0417", finish)


def white_van() -> Car:
    """Return the van with two bumpers of bare plastic."""
    finish = Finish(bumper=(58, 60, 63), body=(222, 222, 218), painted=False, dirt=0.8)
    return Car("White van", "", "ST-0522", finish)


def grey_saloon() -> Car:
    """Return the saloon with four ignition coils."""
    return Car("Grey saloon", "00SWAPTR0CXDEM003", "IC-0206", _BARE)


def green_pickup() -> Car:
    """Return the pick-up with a sender at each wheel."""
    return Car("Green pick-up", "", "WS-0311", _BARE)


def black_estate() -> Car:
    """Return the estate with a loudspeaker in each door."""
    return Car("Black estate", "", "DL-0165", _BARE)


def red_hatchback() -> Car:
    """Return the hatchback with eight sensors."""
    finish = Finish(bumper=(158, 38, 34), body=(150, 34, 32), painted=True, dirt=0.12)
    return Car("Red hatchback", "00SWAPTR0BXDEM002", "ST-0880", finish)
