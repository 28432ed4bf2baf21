"""The fields that the data of an event may have: a plain class each, which knows the form of its values.

Each has three bounds. `check` says what the fold understands: states rest on it, so it never narrows. `bound`
says what may be recorded or taken in beyond that: what every host can show, keep as a key and reckon with.
`meant` says what a person can mean who types it now: nobody asks it of what was recorded before.

`amounts.py` beside it has those that hold numbers, `naming.py` those that name positions and units of the
job. Kinds of event are declared with them; `kind.py` makes of the declarations all that is done with a kind's
fields.
"""

from ..errors import BadInput
from ..log import ids
from ..messages import message
from ..parts import layouts

TEXT, NAME = (0, 2000), (1, 80)  # fewest and most characters


class Field:
    """One field of a kind. The base names nothing on record and is told as it is."""

    names_positions = False
    names_units = False
    length = (0, 0)  # of any text between the two lengths it is right; (0, 0): only `check` can tell

    def __init__(self, name: str, later: bool = False, called: dict | None = None):
        """Name the field; one that is `later` was added after release: what wrote before does not have it.

        `called`, a message, is its name on the screen where it is typed.
        """
        self.name = name
        self.later = later
        self.called = called

    def check(self, path: str, value) -> None:
        """Raise BadInput where `value` is not of this form."""
        raise NotImplementedError

    def bound(self, path: str, value) -> None:
        """Raise BadInput where a value of this form is outside what every host can show.

        Asked before something is recorded or taken in; what was kept before is folded without it.
        """

    def meant(self, path: str, value) -> None:
        """Raise BadInput where nobody can mean a value within the bounds; asked before it is recorded."""

    def told(self, value, names):
        """Return the value as it stands in a sentence; `names` has the names of things on record."""
        return value


class Text(Field):
    """Free text, also none."""

    length = TEXT

    def check(self, path, value):
        """Refuse what is no text, and too long a one."""
        if not isinstance(value, str) or len(value) > TEXT[1]:
            raise BadInput(path, value, message("refusals-text-at-most", most=TEXT[1]))


class Name(Field):
    """A short text that is there."""

    length = NAME

    def check(self, path, value):
        """Refuse what is no text, none, and too long a one."""
        if not is_name(value):
            raise BadInput(path, value, message("refusals-text", least=NAME[0], most=NAME[1]))


class Reason(Field):
    """Why somebody did something, in a few words."""

    def check(self, path, value):
        """Refuse a blank one, and too long a one."""
        if not isinstance(value, str) or not value.strip() or len(value) > 2000:
            raise BadInput(path, value, message("refusals-reason"))

    def told(self, value, names):
        """Return it as it was typed; one that the app gave, in words."""
        return names.noted(value)


class Flag(Field):
    """True or false."""

    def check(self, path, value):
        """Refuse anything else."""
        if value is not True and value is not False:
            raise BadInput(path, value, message("refusals-flag"))


class Choice(Field):
    """One of a few words; the message `told` says which, else a sentence takes the word itself."""

    def __init__(self, name: str, allowed: tuple, told: str = "", later: bool = False):
        """List what is allowed, in the order in which a refusal lists it."""
        super().__init__(name, later)
        self.allowed = allowed
        self._told = told

    def check(self, path, value):
        """Refuse any other value."""
        if value not in self.allowed:
            raise BadInput(path, value, one_of(self.allowed))

    def told(self, value, names):
        """Return what it is in a sentence."""
        return message(self._told, chosen=value) if self._told else value


class Place(Choice):
    """A place away from any vehicle, or some of them."""

    def told(self, value, names):
        """Return the place in words."""
        return names.place(value)


class Digest(Field):
    """The digest by which a file is kept."""

    def check(self, path, value):
        """Refuse what is no SHA-256 in lower-case hex digits."""
        if not isinstance(value, str) or len(value) != 64 or value.strip("0123456789abcdef"):
            raise BadInput(path, value, message("refusals-hex", count=64))


class Photo(Digest):
    """The digest by which a picture is kept."""


class Id(Name):
    """The id of something that no field of `naming.py` looks up."""

    def bound(self, path, value):
        """Refuse an id outside the pattern."""
        bound_id(path, value)


class Names(Field):
    """A list of short texts, each once."""

    def check(self, path, value):
        """Refuse what is no such list."""
        check_list(path, value)
        known = {}
        for index in range(len(value)):
            name = value[index]
            if not is_name(name):
                check_name("{}[{}]".format(path, index), name)
            if name in known:
                raise BadInput("{}[{}]".format(path, index), name, message("refusals-name-once"))
            known[name] = True


class Vehicle(Field):
    """A vehicle: {"id", "name", "vin"}; with "plate" and "model", both later, where they were given."""

    def check(self, path, value):
        """Refuse what is no such object."""
        check_object(path, value, ("id", "name", "vin"))
        check_name(path + ".id", value["id"])
        check_name(path + ".name", value["name"])
        check_text(path + ".vin", value["vin"])
        check_text(path + ".plate", value.get("plate", ""))
        check_text(path + ".model", value.get("model", ""))

    def bound(self, path, value):
        """Refuse an id outside the pattern."""
        bound_id(path + ".id", value["id"])

    def told(self, value, names):
        """Return its name."""
        return value["name"]


class NewPositions(Field):
    """The positions of a job that begins, as `parts.layouts` has them."""

    def check(self, path, value):
        """Refuse what is no layout."""
        layouts.check_positions(value, path)

    def bound(self, path, value):
        """Refuse ids outside the pattern."""
        for index in range(len(value)):
            for field in ("id", "group"):
                bound_id("{}[{}].{}".format(path, index, field), value[index][field])


class Options(Field):
    """Short texts by name."""

    def check(self, path, value):
        """Refuse what is no such object."""
        check_object(path, value, ())
        for name in sorted(value):
            check_name("{}.{}".format(path, name), value[name])


def is_name(value) -> bool:
    """Tell whether a value is a short text that is there."""
    return isinstance(value, str) and NAME[0] <= len(value) <= NAME[1]


def one_of(allowed: tuple) -> dict:
    """Return that one of these words is wanted."""
    return message("refusals-one-of", choices=", ".join(allowed))


bound_id = ids.bound
check_text = Text("").check
check_name = Name("").check
check_names = Names("").check


def check_list(path: str, value) -> None:
    """Raise BadInput where `value` is no list, or too long a one."""
    if not isinstance(value, list) or len(value) > 200:
        raise BadInput(path, value, message("refusals-list-at-most", most=200))


def check_object(path: str, value, fields: tuple) -> None:
    """Raise BadInput where `value` is no object that has these fields."""
    if not isinstance(value, dict):
        raise BadInput(path, value, message("refusals-object"))
    for field in fields:
        if field not in value:
            raise BadInput(path + "." + field, None, message("refusals-field-there"))


# How a unit was identified.
HOW = Choice(
    "how",
    ("scanned", "typed", "tapped", "written"),
    "facts-how",
)
