"""The form of a case: checks what was handed in and turns ids into numbers.

Everything behind this module may rely on a case that is complete and free of contradictions, so
that no later step needs to guess or to fall back.
"""

from collections import namedtuple

from ..errors import BadInput
from ..messages import message
from ..parts import sorts
from ..parts.sort import Sort
from . import cost
from . import likelihoods
from . import validate

# Common practice, no source; every one can be adjusted per case.
RATES = {
    "unit": 0.05,
    "circuit": 0.005,
    "blocked": 0.01,
    "feed": 0.001,
    "control": 0.001,
    "shows": 0.95,
    "again": 0.3,
    "false_alarm": 0.002,
    "meter_sees": 0.95,
    "meter_false": 0.02,
}
# Minutes of work, common practice, no source. `part` is no time anybody spends: it is what buying
# a part that was not needed weighs, in minutes of work. `fit` is all of it, `plug` the first part of it:
# plugged in and locked a unit may hang on its wire, which does for a test.
MINUTES = {
    "reach": 3.0,
    "pull": 0.5,
    "plug": 0.2,
    "fit": 0.5,
    "test": 1.0,
    "clean": 1.0,
    "meter": 4.0,
    "repair": 20.0,
    "part": 60.0,
}
CONFIDENCE = 0.95
# How many times wrong each class of rates may be before a conclusion that leans on it is none.
DOUBT = 3.0
NOBODY = -1
_MINUTES_WANTED = message("case-minutes", most="10000")
_CONFIDENCE_WANTED = message("case-confidence")
_DOUBT_WANTED = message("case-doubt", least="1", most="100")

Position = namedtuple("Position", ("id", "group", "reach", "name"))
Unit = namedtuple("Unit", ("id", "prior", "name", "part", "available"))
# `fitted` has one entry a position: the number of the unit there, or NOBODY.
# `at_once`: run straight after the one before, with nothing done to bring the fault out.
# `waits`: it is not settled what sat where, or whether it is a test of its own.
Test = namedtuple(
    "Test",
    ("fitted", "faulted", "silent", "unplugged", "cleaned", "repaired", "heard", "at_once", "waits"),
)
Meter = namedtuple("Meter", ("position", "bad", "generation"))
Now = namedtuple("Now", ("fitted", "cleaned", "repaired", "loose", "hanging"))
Case = namedtuple(
    "Case",
    (
        "positions", "groups", "units", "tests", "meter", "now", "rates", "minutes", "confidence",
        "doubt", "likelihoods", "priors", "money", "sort",
    ),
)  # fmt: skip

_KEYS = ["positions", "units", "tests", "meter", "now", "rates", "minutes", "confidence"]
_KEYS = _KEYS + ["doubt", "likelihoods", "priors", "money", "sort"]
_TEST_KEYS = ["fitted", "faulted", "silent", "unplugged", "cleaned", "repaired", "heard", "after", "waits"]
# What a test came after; left out, it is not known, and the test counts in full.
AT_ONCE, AFTER = "at_once", ("at_once", "provoked", "another_day")


def read(raw) -> Case:
    """Return the checked case, or raise BadInput with the exact field."""
    if not isinstance(raw, dict):
        raise BadInput("case", raw, message("refusals-object"))
    validate.an_object(raw, "", _KEYS, ["positions"])
    sort = _sort(raw.get("sort", sorts.PARKING_SENSOR.identity))
    rates = _rates(raw.get("rates", {}))
    money = cost.read(raw.get("money"), "money")
    minutes = _minutes(raw.get("minutes", {}), money)
    positions, where = _positions(raw["positions"], minutes["reach"])
    groups = []
    for position in positions:
        if position.group is not None and position.group not in groups:
            groups.append(position.group)
    units, who = _units(raw.get("units", []), rates["unit"])
    names = _Names(where, groups, units, who, rates["unit"])
    tests = []
    for n, test in enumerate(validate.a_list(raw.get("tests", []), "tests")):
        tests.append(_test(test, "tests[{}]".format(n), names))
    now = _now(raw.get("now", {}), names)
    meter = []
    for n, check in enumerate(validate.a_list(raw.get("meter", []), "meter")):
        meter.append(_check(check, "meter[{}]".format(n), names))
    confidence = raw.get("confidence", CONFIDENCE)
    confidence = validate.a_number(confidence, "confidence", 1e-9, 1 - 1e-9, _CONFIDENCE_WANTED)
    doubt = validate.a_number(raw.get("doubt", DOUBT), "doubt", 1, 100, _DOUBT_WANTED)
    tilts = likelihoods.read(raw.get("likelihoods", []), "likelihoods", where, groups, who)
    own = likelihoods.read_priors(raw.get("priors", []), "priors", where, groups)
    case = Case(
        positions, groups, units, tests, meter, now, rates, minutes, confidence, doubt, tilts, own, money,
        sort,
    )  # fmt: skip
    _check_generations(case)
    return case


class _Names:
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


def _sort(raw) -> Sort:
    """Return the sort of part that the sentences speak of; it changes no figure."""
    sort = sorts.by_identity(raw) if isinstance(raw, str) else None
    if sort is None:
        choices = ", ".join([known.identity for known in sorts.SORTS])
        raise BadInput("sort", raw, message("refusals-one-of", choices=choices))
    return sort


def _rates(raw) -> dict:
    rates = dict(RATES)
    for key in sorted(validate.an_object(raw, "rates", sorted(RATES), [])):
        rates[key] = validate.a_chance(raw[key], "rates." + key)
    # At these two ends a reading says nothing at all any more.
    if rates["shows"] == 0:
        raise BadInput("rates.shows", raw["shows"], message("case-shows"))
    if rates["false_alarm"] == 1:
        raise BadInput("rates.false_alarm", raw["false_alarm"], message("case-false-alarm"))
    return rates


def _minutes(raw, money) -> dict:
    minutes = dict(MINUTES)
    if money is not None:
        minutes["part"] = cost.weight_of_part(money, minutes["part"])
    for key in sorted(validate.an_object(raw, "minutes", sorted(MINUTES), [])):
        minutes[key] = _duration(raw[key], "minutes." + key)
    return minutes


def _duration(value, field: str) -> float:
    return validate.a_number(value, field, 0, 10000, _MINUTES_WANTED)


def _positions(raw, reach: float) -> tuple:
    positions = []
    where = {}
    for n, entry in enumerate(validate.a_list(raw, "positions")):
        field = "positions[{}]".format(n)
        validate.an_object(entry, field, ["id", "group", "reach_minutes", "name"], ["id"])
        name = validate.an_id(entry["id"], field + ".id")
        if name in where:
            raise BadInput(field + ".id", name, message("refusals-id-taken"))
        group = entry.get("group")
        if group is not None:
            validate.an_id(group, field + ".group")
        minutes = _duration(entry.get("reach_minutes", reach), field + ".reach_minutes")
        shown = validate.a_name(entry.get("name", name), field + ".name")
        where[name] = n
        positions.append(Position(name, group, minutes, shown))
    if not positions:
        raise BadInput("positions", raw, message("case-some-position"))
    return positions, where


def _units(raw, prior: float) -> tuple:
    units = []
    who = {}
    for n, entry in enumerate(validate.a_list(raw, "units")):
        field = "units[{}]".format(n)
        validate.an_object(entry, field, ["id", "prior", "name", "part", "available"], ["id"])
        name = validate.a_text(entry["id"], field + ".id")
        if name in who:
            raise BadInput(field + ".id", name, message("case-unit-id-taken"))
        chance = validate.a_chance(entry.get("prior", prior), field + ".prior")
        shown = validate.a_name(entry.get("name", name), field + ".name")
        part = entry.get("part")
        if part is not None and not isinstance(part, str):
            raise BadInput(field + ".part", part, message("case-text-or-none"))
        available = validate.a_flag(entry.get("available", True), field + ".available")
        who[name] = n
        units.append(Unit(name, chance, shown, part or None, available))
    return units, who


def _test(raw, field: str, names: _Names) -> Test:
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
    )


def _in_order(fitted: dict, field: str, where: dict) -> list:
    """Return the places named, by position, so that no answer hangs on the order of keys."""
    for place in sorted(fitted):
        if place not in where:
            raise BadInput(field + "." + place, fitted[place], message("case-position"))
    return [pair[1] for pair in sorted([(where[place], place) for place in fitted])]


def _repairs(raw, field: str, names: _Names) -> list:
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


def _now(raw, names: _Names) -> Now:
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
        loose.append(unit)
    return Now(
        moved,
        validate.places(raw.get("cleaned", []), "now.cleaned", names.where),
        _repairs(raw.get("repaired", []), "now.repaired", names),
        loose,
        validate.places(raw.get("hanging", []), "now.hanging", names.where),
    )


def _check(raw, field: str, names: _Names) -> Meter:
    validate.an_object(raw, field, ["position", "reads", "generation"], ["position", "reads"])
    place = raw["position"]
    if not isinstance(place, str) or place not in names.where:
        raise BadInput(field + ".position", place, message("case-position"))
    reads = validate.one_of(raw["reads"], field + ".reads", ["good", "bad"])
    generation = validate.a_count(raw.get("generation", 1), field + ".generation")
    return Meter(names.where[place], reads == "bad", generation)


def _check_generations(case: Case) -> None:
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
