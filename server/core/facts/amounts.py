"""The fields that hold numbers: counts, lengths, temperatures, minutes, chances.

All are whole numbers, for both hosts of the core have those alike: chances in parts per million.
"""

from ..errors import BadInput
from ..log import ids
from ..messages import message
from ..messages import minutes
from .fields import Field
from .fields import check_name
from .fields import check_object

# Products of two of them are still integers that every host holds exactly (log/canon.py).
MOST_COUNT = 1000000000
# The longest wire of a vehicle.
MOST_CENTIMETRES = 10000


class Count(Field):
    """A whole number from 0."""

    def check(self, path, value):
        """Refuse what is no whole number, or a negative one."""
        check_count(path, value)

    def bound(self, path, value):
        """Refuse a number that no count of ours reaches."""
        if value > MOST_COUNT:
            raise BadInput(path, value, message("refusals-whole-most", most=MOST_COUNT))

    def told(self, value, names):
        """Return its digits."""
        return str(value)


class Measured(Count):
    """What is measured, from the `least` to the `most` that a person can mean."""

    def __init__(self, name: str, least: int, most: int, **more):
        """Take both in the unit of the field."""
        super().__init__(name, **more)
        self.ends = (least, most)

    def meant(self, path, value):
        """Refuse less and more."""
        if not self.ends[0] <= value <= self.ends[1]:
            raise BadInput(path, value, between(self.ends))


class Centimetres(Measured):
    """A length in whole centimetres."""

    def check(self, path, value):
        """Refuse what is no whole number, and say all that is wanted."""
        if not _is_whole(value) or value < 0:
            raise BadInput(path, value, between(self.ends))


class WireLength(Centimetres):
    """The length of a wire."""

    def bound(self, path, value):
        """Refuse one that no vehicle has."""
        if value > MOST_CENTIMETRES:
            raise BadInput(path, value, between(self.ends))


class Celsius(Measured):
    """A temperature in whole degrees Celsius; what a person can mean is any weather, or less of it."""

    # What the fold understands.
    LEAST, MOST = -90, 90

    def __init__(self, name: str, least: int = LEAST, most: int = MOST, **more):
        """Take both in degrees."""
        super().__init__(name, least, most, **more)

    def check(self, path, value):
        """Refuse what is no whole number, and what no weather is."""
        if not _is_whole(value) or not self.LEAST <= value <= self.MOST:
            raise BadInput(path, value, between(self.ends))


class Minutes(Count):
    """Whole minutes."""

    def told(self, value, names):
        """Return the duration in words."""
        return minutes(value * 100)


class Rates(Field):
    """Chances by name, in parts per million."""

    def check(self, path, value):
        """Refuse what is no such object."""
        check_object(path, value, ())
        for name in sorted(value):
            check_count(path + "." + name, value[name])
            if value[name] > 1000000:
                raise BadInput(path + "." + name, value[name], message("refusals-rate"))


class Counts(Field):
    """Whole numbers by name."""

    def check(self, path, value):
        """Refuse what is no such object."""
        check_object(path, value, ())
        for name in sorted(value):
            check_name("{}.{}".format(path, name), name)
            check_count("{}.{}".format(path, name), value[name])

    def bound(self, path, value):
        """Refuse names outside the pattern, and numbers that no count of ours reaches."""
        for name in sorted(value):
            ids.bound("{}.{}".format(path, name), name)
            Count("").bound("{}.{}".format(path, name), value[name])


class Confidence(Field):
    """A confidence asked for, in parts per million; 0 leaves it as it was."""

    def check(self, path, value):
        """Refuse less than an even chance, and certainty."""
        check_count(path, value)
        if value and not 500000 <= value <= 999999:
            raise BadInput(path, value, message("refusals-confidence"))


def _is_whole(value) -> bool:
    return isinstance(value, int) and not isinstance(value, bool)


def check_count(path: str, value) -> None:
    """Raise BadInput where `value` is no whole number from 0."""
    if not _is_whole(value) or value < 0:
        raise BadInput(path, value, message("refusals-whole-from", least=0))


def between(ends: tuple) -> dict:
    """Return that a whole number between two ends is wanted."""
    return message("refusals-between", least=str(ends[0]), most=str(ends[1]))
