"""Every kind of event: what it says and which fields its data has.

One definition each. A kind that is not listed here is kept and shown as not understood: an older
app may meet a newer one's facts. To add a kind: add it here, fold it, give it its sentence in
`sentences.py` and, where it can be refused, a rule; `tests/core/test_events_kept.py` checks that
the first three exist.
"""

from ..errors import BadInput
from ..parts import layouts

HOW = ("scanned", "typed", "tapped", "written")
PLACES = ("out", "stock", "counter", "customer", "scrapped")
FOUND = ("nothing", "dirt", "ice", "paint", "pushed_in", "repaired_bumper")
LAMP_RESULTS = ("as_it_should", "not_as_it_should", "not_sure")
MOVES = ("retest", "clean", "exchange", "unplug", "meter", "replace", "home")
DECISIONS = ("accept", "hold", "refuse")
COMPARED = ("", "same", "other")  # the part in hand beside its pictures, by eye; "" is not compared

# field -> form; forms are checked in _FORMS below, a tuple means 'one of'
KINDS: dict = {
    "job_opened": ("A job begins on a vehicle.", {
        "vehicle": "vehicle", "complaint": "text", "layout": "text", "part": "text",
        "positions": "positions"}),
    "caution_acknowledged": ("A caution was read.", {"caution": "name"}),
    "lamp_checked": ("What the lamps showed at key-on or in reverse.", {
        "when": ("key_on", "reverse"), "result": LAMP_RESULTS, "note": "text"}),
    "looked": ("What could be seen from outside.", {"positions": "findings", "note": "text"}),
    "photo_taken": ("A picture, named by its digest.", {
        "sha256": "digest", "mime": "text", "bytes": "count", "width": "count", "height": "count",
        "shows": ("position", "screen", "unit", "work"), "position": "text", "unit": "text"}),
    "test_run": ("The control unit tested itself.", {
        "heard": "flag", "faulted": "names", "silent": "names", "unplugged": "names",
        "codes": "codes", "came_and_went": "flag", "note": "text"}),
    "cleaned": ("A position was cleaned.", {"position": "name", "note": "text"}),
    "unit_labelled": ("A label was put on a unit.", {"unit": "name", "code": "name", "how": HOW}),
    "label_voided": ("A label is torn or lost.", {"unit": "name", "code": "name", "reason": "reason"}),
    "labels_printed": ("Labels were printed, by a phone without a server.", {
        "batch": "name", "codes": "names", "host": "text", "layout": "options"}),
    "unit_added": ("A unit that was not on a vehicle before.", {
        "unit": "name", "part": "text", "serial": "text", "code": "text", "how": HOW,
        "place": ("out", "stock")}),
    "part_noted": ("The part number or serial was read off a unit.", {
        "unit": "name", "part": "text", "serial": "text"}),
    "unit_pulled": ("A unit left its position.", {"unit": "name", "position": "name", "how": HOW}),
    "unit_fitted": ("A unit was put into a position.", {
        "unit": "name", "position": "name", "how": HOW, "override": "text"}),
    "connector_locked": ("A connector is home and its lock closed.", {"position": "name"}),
    "fit_checked": ("The fit of a unit was gone through.", {
        "unit": "name", "position": "name", "checks": "names"}),
    "unit_moved": ("A unit went to another place.", {
        "unit": "name", "place": PLACES, "how": HOW, "note": "text"}),
    "unit_seen": ("A fresh scan says where a unit is; it settles a dispute.", {
        "unit": "name", "place": ("fitted",) + PLACES, "position": "text", "how": HOW}),
    "mixup_stopped": ("A wrong unit was stopped.", {
        "position": "text", "expected": "text", "seen": "text", "how": HOW}),
    "move_started": ("A next move was begun.", {
        "move": MOVES, "fitted": "fitted", "position": "text", "reason": "text"}),
    "move_dropped": ("A move was given up.", {"reason": "reason"}),
    "circuit_measured": ("A reading on a circuit.", {
        "position": "name", "check": "name", "value": "text",
        "reads": ("good", "bad", "unclear")}),
    "circuit_repaired": ("A connector, wire, feed or control unit was repaired.", {
        "cause": "cause", "what": "text"}),
    "comes_and_goes_set": ("Whether the fault comes and goes.", {"value": "flag"}),
    "rates_set": ("Assumptions of this job, in parts per million.", {
        "rates_ppm": "rates", "confidence_ppm": "confidence"}),
    "code_weight_set": ("Whether the failure type of a position's code counts towards the cause.", {
        "position": "name", "on": "flag"}),
    "reach_set": ("How many minutes until a hand is on the unit at a position.", {
        "position": "name", "minutes": "count"}),
    "money_set": ("Labour and prices, in minor units of the user's currency; 0 is not given.", {
        "labour_per_hour": "count", "part_price": "count", "wrong_purchase": "count"}),
    "units_mixed": ("Units got mixed up; which is which is not known.", {
        "units": "names", "note": "text"}),
    "walk_checked": ("The walk-behind check with a test pole.", {
        "positions": "names", "missed": "names"}),
    "left_deliberately": ("A good unit stays where the exchange put it.", {
        "unit": "name", "position": "name", "reason": "reason"}),
    "return_received": ("A clerk at the parts counter has the unit in hand.", {
        "unit": "name", "how": HOW, "code": "text", "part": "text", "serial": "text",
        "compared": COMPARED, "note": "text"}),
    "return_decided": ("A clerk took a returned unit back, held it or refused it, and signed.", {
        "unit": "name", "decision": DECISIONS, "proposed": DECISIONS, "reasons": "names",
        "overrule": "text", "signed": "name"}),
    "corrected": ("An earlier event was a mistake.", {
        "device": "name", "seq": "count", "reason": "reason"}),
    "job_closed": ("The job is done.", {"note": "text"}),
}  # fmt: skip

# Fields that a kind got later: what wrote it before does not have them. `positions`: what is to be cleaned
# before one test when it is more than `position`, which is the first of them.
LATER: dict = {"move_started": {"positions": "names"}}

# facts about a unit that may happen away from any job; every other kind needs its job
WITHOUT_JOB = ("labels_printed", "unit_added", "unit_labelled", "label_voided", "part_noted", "unit_moved",
               "unit_seen", "return_received", "return_decided", "corrected")  # fmt: skip

# what may still be said of a job after its closing; anything else means that work went on
AFTER_CLOSING = ("job_closed", "corrected", "photo_taken", "unit_seen", "label_voided", "unit_labelled",
                 "part_noted", "mixup_stopped", "job_opened", "return_received",
                 "return_decided")  # fmt: skip


def problem(kind: str, data: dict) -> BadInput | None:
    """Return what is wrong with the data of a known kind, or None; extra fields are let through."""
    forms = dict(KINDS[kind][1])
    for field in sorted(LATER.get(kind, {})):
        if field in data:
            forms[field] = LATER[kind][field]
    for field in sorted(forms):
        form = forms[field]
        if field not in data:
            return BadInput("data." + field, None, "the field to be there")
        try:
            if isinstance(form, tuple):
                _one_of("data." + field, data[field], form)
            else:
                _FORMS[form]("data." + field, data[field])
        except BadInput as error:
            return error
    return None


def _one_of(path, value, allowed):
    if value not in allowed:
        raise BadInput(path, value, "one of " + ", ".join(allowed))


def _text(path, value):
    if not isinstance(value, str) or len(value) > 2000:
        raise BadInput(path, value, "text of at most 2000 characters")


def _name(path, value):
    if not isinstance(value, str) or not 1 <= len(value) <= 80:
        raise BadInput(path, value, "text of 1 to 80 characters")


def _reason(path, value):
    if not isinstance(value, str) or not value.strip() or len(value) > 2000:
        raise BadInput(path, value, "a reason in a few words")


def _flag(path, value):
    if value is not True and value is not False:
        raise BadInput(path, value, "true or false")


def _count(path, value):
    if isinstance(value, bool) or not isinstance(value, int) or value < 0:
        raise BadInput(path, value, "a whole number from 0")


def _digest(path, value):
    if not isinstance(value, str) or len(value) != 64:
        raise BadInput(path, value, "64 hex digits")
    for character in value:
        if character not in "0123456789abcdef":
            raise BadInput(path, value, "64 hex digits")


def _names(path, value):
    _list(path, value)
    for index in range(len(value)):
        _name("{}[{}]".format(path, index), value[index])
        if value[index] in value[:index]:
            raise BadInput("{}[{}]".format(path, index), value[index], "each name once")


def _vehicle(path, value):
    _object(path, value, ("id", "name", "vin"))
    _name(path + ".id", value["id"])
    _name(path + ".name", value["name"])
    _text(path + ".vin", value["vin"])


def _findings(path, value):
    _list(path, value)
    for index in range(len(value)):
        item = "{}[{}]".format(path, index)
        _object(item, value[index], ("position", "found"))
        _name(item + ".position", value[index]["position"])
        _one_of(item + ".found", value[index]["found"], FOUND)


def _codes(path, value):
    _list(path, value)
    for index in range(len(value)):
        item = "{}[{}]".format(path, index)
        _object(item, value[index], ("position", "code", "failure_type"))
        for field in ("position", "code", "failure_type"):
            _text(item + "." + field, value[index][field])


def _fitted(path, value):
    _object(path, value, ())
    for position in sorted(value):
        _name(path + "." + position, value[position])


def _cause(path, value):
    _name(path, value)
    if value != "control" and not value.startswith("circuit:") and not value.startswith("feed:"):
        raise BadInput(path, value, 'circuit:POSITION, feed:GROUP or "control"')


def _rates(path, value):
    _object(path, value, ())
    for name in sorted(value):
        _count(path + "." + name, value[name])
        if value[name] > 1000000:
            raise BadInput(path + "." + name, value[name], "0 to 1000000 parts per million")


def _confidence(path, value):
    _count(path, value)
    if value and not 500000 <= value <= 999999:
        raise BadInput(path, value, "0 (as it was) or 500000 to 999999 parts per million")


def _options(path, value):
    _object(path, value, ())
    for name in sorted(value):
        _name("{}.{}".format(path, name), value[name])


def _list(path, value):
    if not isinstance(value, list) or len(value) > 200:
        raise BadInput(path, value, "a list of at most 200")


def _object(path, value, fields):
    if not isinstance(value, dict):
        raise BadInput(path, value, "an object")
    for field in fields:
        if field not in value:
            raise BadInput(path + "." + field, None, "the field to be there")


def _positions(path, value):
    layouts.check_positions(value, path)


_FORMS = {
    "text": _text, "name": _name, "reason": _reason, "flag": _flag, "count": _count,
    "digest": _digest, "names": _names, "vehicle": _vehicle, "positions": _positions,
    "findings": _findings, "codes": _codes, "fitted": _fitted, "cause": _cause, "rates": _rates,
    "confidence": _confidence, "options": _options,
}  # fmt: skip
