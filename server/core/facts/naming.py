"""Fields that name what is on record: positions of the job, units, causes, label codes.

Besides the form of its values such a field knows which ids they name, and gives the units among them the
ids under which they are on record by now. From that follows what is refused before it is recorded
(`unknown`), and what the fold keeps without understanding it (`misfit`).
"""

from ..messages import message
from ..state.kept_facts import position_of
from .fields import NAME
from .fields import TEXT
from .fields import Field
from .fields import Name
from .fields import Text
from .fields import bound_id
from .fields import check_name
from .fields import check_names
from .fields import check_text


def _no_position(identity: str) -> dict:
    return message("refusals-no-position", position=identity)


class NamingField(Field):
    """A field whose values name positions, units, or both; "" names none."""

    def bound(self, path, value):
        """Refuse an id outside the pattern among those that it names."""
        for named in (self.positions(value), self.units(value)):
            for index in range(len(named)):
                if named[index]:
                    bound_id(path + self.place_of(value, index), named[index])

    def positions(self, value) -> list[str]:
        """Return the ids of the positions that a well-formed value names, in order."""
        return []

    def units(self, value) -> list[str]:
        """Return the ids of the units that a well-formed value names and that must be on record, in order."""
        return []

    def every_unit(self, value) -> list[str]:
        """Return the ids of all units that a well-formed value names."""
        return self.units(value)

    def place_of(self, value, index: int) -> str:
        """Return where in the value the id with this index stands, to go behind the field's name."""
        return ""

    def misfit(self, value, job: dict) -> dict | None:
        """Return why the fold can't understand a well-formed value on this job, or None."""
        unknown = self.unknown_position(value, job)
        return unknown[3] if unknown else None

    def unknown_position(self, value, job: dict) -> tuple | None:
        """Return (place, id, what is wanted, sentence) of the first position that the job lacks, or None."""
        named = self.positions(value)
        for index in range(len(named)):
            if named[index] and position_of(job, named[index]) is None:
                place = self.place_of(value, index)
                return place, named[index], message("refusals-position"), _no_position(named[index])
        return None

    def unknown_unit(self, value, units: dict) -> tuple | None:
        """Return (place, id, what is wanted, sentence) of the first unit not among `units`, or None."""
        named = self.units(value)
        for index in range(len(named)):
            if named[index] and named[index] not in units:
                said = message("refusals-not-on-record")
                return self.place_of(value, index), named[index], message("refusals-unit"), said
        return None

    def under_present_ids(self, value, now):
        """Return the value with its units under the ids that they are on record by now; `now(id)` says."""
        return value


class Position(NamingField):
    """A position of the job; with `or_none` it may be "", where none is meant."""

    names_positions = True

    def __init__(self, name: str, or_none: bool = False):
        """Name the field."""
        super().__init__(name)
        self._or_none = or_none
        self.length = TEXT if or_none else NAME

    def check(self, path, value):
        """Refuse what is no text of this length."""
        if self._or_none:
            check_text(path, value)
        else:
            check_name(path, value)

    def positions(self, value):
        """Return it."""
        return [value]

    def misfit(self, value, job):
        """Return that the job has no such position; most kinds ask for one, so without a list of it."""
        return _no_position(value) if value and position_of(job, value) is None else None

    def told(self, value, names):
        """Return its name."""
        return names.position(value)


class Positions(NamingField):
    """Several positions of the job.

    With `kept` the fold keeps them also where the job does not know them: it did so from the first release,
    and states rest on it. Recording them is refused all the same.
    """

    names_positions = True

    def __init__(self, name: str, later: bool = False, kept: bool = False):
        """Name the field."""
        super().__init__(name, later)
        self._kept = kept

    def check(self, path, value):
        """Refuse what is no list of ids, each once."""
        check_names(path, value)

    def positions(self, value):
        """Return them."""
        return value

    def place_of(self, value, index):
        """Return the place in the list."""
        return "[{}]".format(index)

    def misfit(self, value, job):
        """Return that the job has no such position, unless they are kept."""
        return None if self._kept else super().misfit(value, job)

    def told(self, value, names):
        """Return their names."""
        return names.positions(value)


class Unit(NamingField):
    """A unit that is on record; with `or_none` it may be "", and `besides` stands for no unit."""

    names_units = True

    def __init__(self, name: str, or_none: bool = False, besides: str = ""):
        """Name the field."""
        super().__init__(name)
        self._or_none = or_none
        self.length = TEXT if or_none else NAME
        self._besides = besides

    def check(self, path, value):
        """Refuse what is no text of this length."""
        if self._or_none:
            check_text(path, value)
        else:
            check_name(path, value)

    def units(self, value):
        """Return it."""
        return [] if value == self._besides else [value]

    def under_present_ids(self, value, now):
        """Return its present id."""
        return now(value)

    def told(self, value, names):
        """Return how it is called."""
        return names.unit(value)


class NewUnit(Unit):
    """A unit that need not be on record: this event may be the first to name it."""

    def bound(self, path, value):
        """Refuse an id outside the pattern."""
        bound_id(path, value)

    def units(self, value):
        """Return none."""
        return []

    def every_unit(self, value):
        """Return it."""
        return [value]


class Units(NamingField):
    """Several units that are on record."""

    names_units = True

    def check(self, path, value):
        """Refuse what is no list of ids, each once."""
        check_names(path, value)

    def units(self, value):
        """Return them."""
        return value

    def place_of(self, value, index):
        """Return the place in the list."""
        return "[{}]".format(index)

    def under_present_ids(self, value, now):
        """Return their present ids."""
        return [now(unit) for unit in value]

    def told(self, value, names):
        """Return how they are called."""
        return names.units(value)


class LabelCode(Name):
    """The code on a label."""

    def told(self, value, names):
        """Return the code as people read it."""
        return names.code(value)


class LabelCodeOrNone(Text):
    """The code on a label; "" where there is none."""

    def told(self, value, names):
        """Return the code as people read it."""
        return names.code(value)
