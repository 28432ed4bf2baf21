"""The form of a case: checks what was handed in and turns ids into numbers.

Everything behind this module may rely on a case that is complete and free of contradictions, so
that no later step needs to guess or to fall back.
"""

from ..errors import BadInput
from ..messages import message
from ..parts import sorts
from . import case_readings
from . import cost
from . import likelihoods
from . import validate
from .case import CONFIDENCE
from .case import DOUBT
from .case import MINUTES
from .case import RATES
from .case import Case
from .case import Position
from .case import Unit
from .variations import CLASSES
from .variations import READINGS

_KEYS = ["positions", "units", "tests", "meter", "now", "rates", "minutes", "confidence"]
_KEYS = _KEYS + ["doubt", "likelihoods", "priors", "money", "sort"]
_MINUTES_WANTED = message("case-minutes", most="10000")
_CONFIDENCE_WANTED = message("case-confidence")
_DOUBT_WANTED = message("case-doubt", least="1", most="100")


def read(raw) -> Case:
    """Return the checked case, or raise BadInput with the exact field."""
    if not isinstance(raw, dict):
        raise BadInput("case", raw, message("refusals-object"))
    validate.an_object(raw, "", _KEYS, ["positions"])
    # The sentences speak of it, and the causes that it has none of are left out.
    sort = sorts.named(raw.get("sort", sorts.PARKING_SENSOR.identity))
    rates = _rates(raw.get("rates", {}))
    for kind in sort.without:
        rates[kind] = 0.0
    money = cost.read(raw.get("money"), "money")
    minutes = _minutes(raw.get("minutes", {}), money)
    positions, where = _positions(raw["positions"], minutes["reach"])
    groups = []
    for position in positions:
        if position.group is not None and position.group not in groups:
            groups.append(position.group)
    units, who = _units(raw.get("units", []), rates["unit"])
    names = case_readings.Names(where, groups, units, who, rates["unit"])
    tests = []
    for n, test in enumerate(validate.a_list(raw.get("tests", []), "tests")):
        tests.append(case_readings.test(test, "tests[{}]".format(n), names))
    now = case_readings.now(raw.get("now", {}), names)
    meter = []
    for n, check in enumerate(validate.a_list(raw.get("meter", []), "meter")):
        meter.append(case_readings.check(check, "meter[{}]".format(n), names))
    confidence = raw.get("confidence", CONFIDENCE)
    confidence = validate.a_number(confidence, "confidence", 1e-9, 1 - 1e-9, _CONFIDENCE_WANTED)
    doubt = _doubt(raw.get("doubt", DOUBT))
    tilts = likelihoods.read(raw.get("likelihoods", []), "likelihoods", where, groups, who)
    own = likelihoods.read_priors(raw.get("priors", []), "priors", where, groups)
    case = Case(
        positions, groups, units, tests, meter, now, rates, minutes, confidence, doubt, tilts, own, money,
        sort,
    )  # fmt: skip
    case_readings.check_generations(case)
    return case


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


def _doubt(raw) -> dict:
    """Return how many times wrong each class may be: one factor for all, or those named and the default."""
    names = list(CLASSES + READINGS)
    if not isinstance(raw, dict):
        factor = validate.a_number(raw, "doubt", 1, 100, _DOUBT_WANTED)
        return {name: factor for name in names}
    doubt = {name: DOUBT for name in names}
    for name in sorted(validate.an_object(raw, "doubt", names, [])):
        doubt[name] = validate.a_number(raw[name], "doubt." + name, 1, 100, _DOUBT_WANTED)
    return doubt


def _minutes(raw, money) -> dict:
    minutes = dict(MINUTES)
    if money is not None:
        minutes["part"] = cost.weight_of_part(money, minutes["part"])
    for key in sorted(validate.an_object(raw, "minutes", sorted(MINUTES), [])):
        minutes[key] = _duration(raw[key], "minutes." + key)
    if "meter_found" not in raw:
        minutes["meter_found"] = minutes["meter"]
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
