"""Fields that hold several things: findings, codes and what they mean, a planned fitting, a cause."""

from ..errors import BadInput
from ..messages import message
from ..parts import sorts
from ..state.kept_facts import position_of
from .amounts import between
from .amounts import check_count
from .fields import Field
from .fields import bound_id
from .fields import check_list
from .fields import check_name
from .fields import check_object
from .fields import check_text
from .fields import is_name
from .fields import one_of
from .naming import NamingField


class _EachAtPosition(NamingField):
    """A list of objects, each of which says under "position" where it was seen."""

    names_positions = True

    def positions(self, value):
        """Return the positions, in the order of the list."""
        return [item["position"] for item in value]

    def place_of(self, value, index):
        """Return the place in the list."""
        return "[{}].position".format(index)


class Codes(_EachAtPosition):
    """The trouble codes that were shown: [{"position", "code", "failure_type"}, ...]; each text may be "".

    The fold keeps codes of positions that the job does not know, as `Positions` does with `kept`.
    """

    def check(self, path, value):
        """Refuse what is no such list."""
        check_list(path, value)
        for index in range(len(value)):
            item = "{}[{}]".format(path, index)
            check_object(item, value[index], ("position", "code", "failure_type"))
            for field in ("position", "code", "failure_type"):
                check_text(item + "." + field, value[index][field])

    def misfit(self, value, job):
        """Return None: they are kept."""
        return


class Meanings(Field):
    """What trouble codes mean, as somebody said: [{"code", "means"}, ...], each code once."""

    def check(self, path, value):
        """Refuse what is no such list."""
        check_list(path, value)
        known = {}
        for index in range(len(value)):
            item = "{}[{}]".format(path, index)
            check_object(item, value[index], ("code", "means"))
            for field in ("code", "means"):
                check_name(item + "." + field, value[index][field])
            if value[index]["code"] in known:
                raise BadInput(item + ".code", value[index]["code"], message("refusals-name-once"))
            known[value[index]["code"]] = True


# From and to which a person can mean each of the `Distances` that was measured.
DISTANCES = {"left": (1, 300), "tape": (1, 500), "shown": (1, 500)}


class Distances(_EachAtPosition):
    """What was measured at positions: [{"position", "left", "tape", "shown"}, ...], in cm; 0 is not measured.

    `left` is from the left end of the bumper as one faces it, `tape` to the pole, `shown` by a display.
    """

    _LENGTHS = tuple(sorted(DISTANCES))

    def check(self, path, value):
        """Refuse what is no such list."""
        check_list(path, value)
        for index in range(len(value)):
            item = "{}[{}]".format(path, index)
            check_object(item, value[index], ("position",) + self._LENGTHS)
            check_name(item + ".position", value[index]["position"])
            for field in self._LENGTHS:
                check_count(item + "." + field, value[index][field])

    def bound(self, path, value):
        """Refuse lengths that no car park has."""
        super().bound(path, value)
        for index in range(len(value)):
            for field in self._LENGTHS:
                if value[index][field] > 9999:
                    where = "{}[{}].{}".format(path, index, field)
                    raise BadInput(where, value[index][field], message("refusals-whole-most", most=9999))

    def meant(self, path, value):
        """Refuse lengths that were measured and that nobody can mean."""
        for index in range(len(value)):
            for field in self._LENGTHS:
                least, most = DISTANCES[field]
                if value[index][field] and not least <= value[index][field] <= most:
                    where = "{}[{}].{}".format(path, index, field)
                    raise BadInput(where, value[index][field], between(DISTANCES[field]))


class Findings(_EachAtPosition):
    """What could be seen at positions: [{"position", "found"}, ...]."""

    FOUND = ("nothing",) + tuple([identity for identity, _ in sorts.findings()])

    def check(self, path, value):
        """Refuse what is no such list."""
        check_list(path, value)
        for index in range(len(value)):
            if self._is_finding(value[index]):
                continue
            item = "{}[{}]".format(path, index)
            check_object(item, value[index], ("position", "found"))
            check_name(item + ".position", value[index]["position"])
            if value[index]["found"] not in self.FOUND:
                raise BadInput(item + ".found", value[index]["found"], one_of(self.FOUND))

    def _is_finding(self, item) -> bool:
        """Tell whether an item is as it should be, without naming its place."""
        return isinstance(item, dict) and is_name(item.get("position")) and item.get("found") in self.FOUND


class Fitted(NamingField):
    """Which unit is to sit where: {position: unit}."""

    names_positions = True
    names_units = True

    def check(self, path, value):
        """Refuse what is no such object."""
        check_object(path, value, ())
        for position in sorted(value):
            check_name(path + "." + position, value[position])

    def positions(self, value):
        """Return the positions in order of id."""
        return sorted(value)

    def units(self, value):
        """Return the units in the order of their positions."""
        return [value[position] for position in sorted(value)]

    def place_of(self, value, index):
        """Return the position."""
        return "." + sorted(value)[index]

    def under_present_ids(self, value, now):
        """Return the units under their present ids."""
        return {position: now(value[position]) for position in value}

    def told(self, value, names):
        """Return the names of the positions."""
        return names.positions(sorted(value))


class RepairedCause(NamingField):
    """What was repaired in the wiring: circuit:POSITION, feed:GROUP or "control"."""

    names_positions = True

    def check(self, path, value):
        """Refuse anything else."""
        check_name(path, value)
        if value != "control" and not value.startswith("circuit:") and not value.startswith("feed:"):
            raise BadInput(path, value, message("refusals-cause"))

    def bound(self, path, value):
        """Refuse a position or feed outside the pattern of ids."""
        if value != "control":
            bound_id(path, value.partition(":")[2])

    def misfit(self, value, job):
        """Return that the job has no such position or feed, or None."""
        kind, _, what = value.partition(":")
        if kind == "feed":
            known = what in [position["group"] for position in job["positions"]]
        else:
            known = kind != "circuit" or position_of(job, what) is not None
        return None if known else message("refusals-no-cause", cause=value)

    def unknown_position(self, value, job):
        """Return the cause that the job has no position or feed for, or None."""
        said = self.misfit(value, job)
        return ("", value, message("refusals-on-job"), said) if said else None

    def told(self, value, names):
        """Return the cause in words."""
        return names.cause(value)
