"""What was read and done in a case, checked: its tests, what was done since, and the meter."""

from ..errors import BadInput
from ..messages import message
from . import validate
from .case import AFTER
from .case import AT_ONCE
from .case import NOBODY
from .case import Case
from .case import Meter
from .case import Now
from .case import Test
from .case import Unit

_TEST_KEYS = ["fitted", "faulted", "silent", "unplugged", "cleaned", "repaired", "heard", "after"]
_TEST_KEYS = _TEST_KEYS + ["waits", "listen"]
_TICKS, _SILENT = "ticks", "silent"


class Names:
    """What a name in the case may refer to; a unit is taken in when it is first seen fitted."""

    def __init__(self, where: dict, groups: list, units: list, who: dict, prior: float):
        self.where = where
        self.groups = groups
        self.units = units
        self.who = who
        self.prior = prior

    def unit(self, value, field: str) -> int:
        """Return the number of a unit; one that was not listed has the prior of any unit."""
        validate.a_text(value, field)
        if value not in self.who:
            self.who[value] = len(self.units)
            self.units.append(Unit(value, self.prior, value, None, True))
        return self.who[value]


def test(raw, field: str, names: Names) -> Test:
    """Return one test with what was done before it."""
    validate.an_object(raw, field, _TEST_KEYS, ["fitted"])
    fitted = [NOBODY] * len(names.where)
    taken = {}
    at = field + ".fitted"
    if not isinstance(raw["fitted"], dict):
        raise BadInput(at, raw["fitted"], message("refusals-object"))
    for place in _in_order(raw["fitted"], at, names.where):
        here = at + "." + place
        unit = names.unit(raw["fitted"][place], here)
        if unit in taken:
            raise BadInput(here, raw["fitted"][place], message("case-unit-elsewhere", position=taken[unit]))
        taken[unit] = place
        fitted[names.where[place]] = unit
    unplugged = validate.places(raw.get("unplugged", []), field + ".unplugged", names.where)
    silent = validate.places(raw.get("silent", []), field + ".silent", names.where)
    faulted = validate.places(raw.get("faulted", []), field + ".faulted", names.where)
    for n, place in enumerate(faulted):
        here = "{}.faulted[{}]".format(field, n)
        if place in silent:
            raise BadInput(here, raw["faulted"][n], message("case-not-silent"))
        if fitted[place] == NOBODY and place not in unplugged:
            raise BadInput(here, raw["faulted"][n], message("case-fitted"))
    at_once = "after" in raw and validate.one_of(raw["after"], field + ".after", list(AFTER)) == AT_ONCE
    return Test(
        fitted,
        faulted,
        silent,
        unplugged,
        validate.places(raw.get("cleaned", []), field + ".cleaned", names.where),
        _repairs(raw.get("repaired", []), field + ".repaired", names),
        validate.a_flag(raw.get("heard", True), field + ".heard"),
        at_once,
        validate.a_flag(raw.get("waits", False), field + ".waits"),
        _listened(raw.get("listen", {}), field + ".listen", names.where, fitted, unplugged),
    )


def _listened(raw, field: str, where: dict, fitted: list, unplugged: list) -> list:
    """Return (position, whether it ticked) of what was listened at: a unit that is fitted and plugged in."""
    if not isinstance(raw, dict):
        raise BadInput(field, raw, message("refusals-object"))
    heard = []
    for place in _in_order(raw, field, where):
        here = field + "." + place
        ticks = validate.one_of(raw[place], here, [_TICKS, _SILENT]) == _TICKS
        if fitted[where[place]] == NOBODY or where[place] in unplugged:
            raise BadInput(here, raw[place], message("case-listen-fitted"))
        heard.append((where[place], ticks))
    return heard


def _in_order(fitted: dict, field: str, where: dict) -> list:
    """Return the places named, by position, so that no answer hangs on the order of keys."""
    for place in sorted(fitted):
        if place not in where:
            raise BadInput(field + "." + place, fitted[place], message("case-position"))
    return [pair[1] for pair in sorted([(where[place], place) for place in fitted])]


def _repairs(raw, field: str, names: Names) -> list:
    """Return what was repaired as (kind, number of the position or group)."""
    repairs = []
    for n, text in enumerate(validate.a_list(raw, field)):
        here = "{}[{}]".format(field, n)
        repair = None
        if isinstance(text, str):
            if text == "control":
                repair = ("control", 0)
            elif text.startswith("circuit:") and text[8:] in names.where:
                repair = ("circuit", names.where[text[8:]])
            elif text.startswith("feed:") and text[5:] in names.groups:
                repair = ("feed", names.groups.index(text[5:]))
        if repair is None:
            raise BadInput(here, text, message("case-repair"))
        if repair in repairs:
            raise BadInput(here, text, message("case-repair-once"))
        repairs.append(repair)
    return repairs


def now(raw, names: Names) -> Now:
    """Return what was done since the last test."""
    validate.an_object(raw, "now", ["fitted", "cleaned", "repaired", "loose", "hanging"], [])
    fitted = raw.get("fitted", {})
    if not isinstance(fitted, dict):
        raise BadInput("now.fitted", fitted, message("refusals-object"))
    moved = []
    taken = {}
    for place in _in_order(fitted, "now.fitted", names.where):
        here = "now.fitted." + place
        # Nothing at all stands for a position that was left empty.
        unit = NOBODY if fitted[place] is None else names.unit(fitted[place], here)
        if unit != NOBODY and unit in taken:
            raise BadInput(here, fitted[place], message("case-unit-elsewhere", position=taken[unit]))
        taken[unit] = place
        moved.append((names.where[place], unit))
    loose = []
    for n, name in enumerate(validate.a_list(raw.get("loose", []), "now.loose")):
        here = "now.loose[{}]".format(n)
        unit = names.unit(name, here)
        if unit in taken:
            raise BadInput(here, name, message("case-unit-elsewhere", position=taken[unit]))
        if unit in loose:
            raise BadInput(here, name, message("case-unit-once"))
        loose.append(unit)
    return Now(
        moved,
        validate.places(raw.get("cleaned", []), "now.cleaned", names.where),
        _repairs(raw.get("repaired", []), "now.repaired", names),
        loose,
        validate.places(raw.get("hanging", []), "now.hanging", names.where),
    )


def check(raw, field: str, names: Names) -> Meter:
    """Return what the meter read of one circuit."""
    validate.an_object(raw, field, ["position", "reads", "generation"], ["position", "reads"])
    place = raw["position"]
    if not isinstance(place, str) or place not in names.where:
        raise BadInput(field + ".position", place, message("case-position"))
    reads = validate.one_of(raw["reads"], field + ".reads", ["good", "bad"])
    generation = validate.a_count(raw.get("generation", 1), field + ".generation")
    return Meter(names.where[place], reads == "bad", generation)


def check_generations(case: Case) -> None:
    """A meter can only have read a circuit that was there: one, and one more for each repair."""
    repairs = [1] * len(case.positions)
    for done in [test.repaired for test in case.tests] + [case.now.repaired]:
        for kind, number in done:
            if kind == "circuit":
                repairs[number] += 1
    for n, check in enumerate(case.meter):
        most = repairs[check.position]
        if check.generation > most:
            field = "meter[{}].generation".format(n)
            raise BadInput(field, check.generation, message("case-generation", most=str(most)))
