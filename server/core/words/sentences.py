"""One sentence per kind of event, for the history of a job and for the record."""

from ..codes import labels
from ..parts.wiring import check_by
from ..state.state import EMPTY
from . import causes
from . import words
from .words import unit_name

_HOW = {"scanned": "scanned", "typed": "code typed", "tapped": "no scan", "written": "code by hand"}
_FOUND = {"dirt": "dirt", "ice": "ice", "paint": "thick paint", "pushed_in": "pushed in",
          "repaired_bumper": "bumper repaired"}  # fmt: skip
_LAMPS = {"key_on": "key-on", "reverse": "reverse"}
_LAMP_RESULTS = {"as_it_should": "as it should be", "not_as_it_should": "not as it should be",
                 "not_sure": "not sure"}  # fmt: skip


def sentence(state, job: dict, kind: str, data: dict) -> str:
    """Return what an event says, or that it is not understood."""
    maker = MAKERS.get(kind)
    if maker is None:
        return "Recorded by a newer version of this app ({}). It is kept.".format(kind)
    return maker(state, job, data)


def _unit(state, job, data):
    return unit_name(state, job, data["unit"])


def _at(job, data):
    return words.position_name(job, data["position"])


def _names(job, positions):
    return words.listed([words.position_name(job, position) for position in positions])


def _job_opened(state, job, data):
    return "Job opened on {}: {}".format(data["vehicle"]["name"], data["complaint"] or "no complaint")


def _test_run(state, job, data):
    if not data["heard"]:
        return "Self-test, sounder not heard."
    if data["faulted"]:
        return "Self-test: fault at {}.".format(_names(job, data["faulted"]))
    return "Self-test: no fault."


def _looked(state, job, data):
    seen = [
        "{} at {}".format(_FOUND[item["found"]], words.position_name(job, item["position"]))
        for item in data["positions"]
        if item["found"] != "nothing"
    ]
    return "Looked: {}.".format(words.listed(seen) if seen else "nothing to see")


def _photo_taken(state, job, data):
    if data["position"]:
        return "Picture of {}.".format(_at(job, data))
    return "Picture of the {}.".format("sensor" if data["shows"] == "unit" else data["shows"])


def _unit_added(state, job, data):
    name = labels.shown(data["code"]) or "A sensor"
    return "{} added{}.".format(name, ", part " + data["part"] if data["part"] else "")


def _unit_fitted(state, job, data):
    said = "{} fitted at {} ({}).".format(_unit(state, job, data), _at(job, data), _HOW[data["how"]])
    if data["override"]:
        said += " Another part number, because: {}".format(data["override"])
    return words.sentence_case(said)


def _unit_moved(state, job, data):
    place = words.PLACE_WORDS.get(data["place"], "in hand")
    return words.sentence_case("{} is now {}.".format(_unit(state, job, data), place))


def _unit_seen(state, job, data):
    where = "at " + _at(job, data) if data["place"] == "fitted" else words.PLACE_WORDS.get(
        data["place"], "in hand"
    )  # fmt: skip
    return words.sentence_case("{} seen {}.".format(_unit(state, job, data), where))


def _mixup_stopped(state, job, data):
    return "Stopped: {} was held where {} belongs.".format(
        labels.shown(data["seen"]), unit_name(state, job, data["expected"])
    )


def _move_started(state, job, data):
    if data["move"] in ("exchange", "replace", "home"):
        what = {"exchange": "Exchange", "replace": "Replacement", "home": "Putting back"}
        return "{} begun: {}.".format(what[data["move"]], _names(job, sorted(data["fitted"])))
    return "Begun: {}{}.".format(
        {"retest": "test again", "clean": "clean", "unplug": "unplug", "meter": "wiring checks"}[
            data["move"]
        ],
        " at " + _names(job, data.get("positions") or [data["position"]]) if data["position"] else "",
    )


def _circuit_measured(state, job, data):
    check = check_by(data["check"])
    value = " ({} {})".format(data["value"], check["unit"]) if data["value"] and check else ""
    return "{} at {}: {}{}.".format(
        check["title"] if check else data["check"], _at(job, data), data["reads"], value
    )


def _units_mixed(state, job, data):
    names = [unit_name(state, job, unit) for unit in data["units"]]
    said = "{} got mixed up: which is which is not known.".format(words.sentence_case(words.listed(names)))
    return said + (" " + data["note"] if data["note"] else "")


def _reach_set(state, job, data):
    name = words.sentence_case(_at(job, data))
    return "{}: {} until a hand is on it.".format(name, words.minutes(data["minutes"] * 100))


def _code_weight_set(state, job, data):
    return "The failure type of the code at {} {} towards the cause.".format(
        _at(job, data), "counts" if data["on"] else "does not count"
    )


def _walk_checked(state, job, data):
    if data["missed"]:
        return "Walk-behind check: {} stayed quiet.".format(_names(job, data["missed"]))
    return "Walk-behind check: all sounded."


def _return_received(state, job, data):
    said = "{} is at the parts counter, in the clerk's hand ({}).".format(
        _unit(state, job, data), _HOW[data["how"]]
    )
    if data["part"] or data["serial"]:
        said += " Read off it: {}.".format(" ".join([t for t in (data["part"], data["serial"]) if t]))
    return words.sentence_case(said)


def _return_decided(state, job, data):
    said = "{} {} at the parts counter, signed by {}.".format(
        _unit(state, job, data), words.DECIDED[data["decision"]], data["signed"]
    )
    if data["overrule"]:
        said += " Against the record, because: {}".format(data["overrule"])
    return words.sentence_case(said)


def _left_deliberately(state, job, data):
    if data["unit"] == EMPTY:
        return words.sentence_case("{} stays empty: {}.".format(_at(job, data), data["reason"]))
    return words.sentence_case(
        "{} stays at {}: {}.".format(_unit(state, job, data), _at(job, data), data["reason"])
    )


MAKERS = {
    "job_opened": _job_opened,
    "caution_acknowledged": lambda state, job, data: "Caution read: {}.".format(data["caution"]),
    "lamp_checked": lambda state, job, data: "Lamp at {}: {}.".format(
        _LAMPS[data["when"]], _LAMP_RESULTS[data["result"]]
    ),
    "looked": _looked,
    "photo_taken": _photo_taken,
    "test_run": _test_run,
    "cleaned": lambda state, job, data: "Cleaned {}.".format(_at(job, data)),
    "unit_labelled": lambda state, job, data: "Label {} put on ({}).".format(
        labels.shown(data["code"]), _HOW[data["how"]]
    ),
    "labels_printed": lambda state, job, data: "{} printed.".format(
        "1 label" if len(data["codes"]) == 1 else "{} labels".format(len(data["codes"]))
    ),
    "label_voided": lambda state, job, data: "Label {} void: {}".format(
        labels.shown(data["code"]), data["reason"]
    ),
    "unit_added": _unit_added,
    "part_noted": lambda state, job, data: words.sentence_case(
        "{}: part {} {}".format(_unit(state, job, data), data["part"], data["serial"]).strip() + "."
    ),
    "unit_pulled": lambda state, job, data: words.sentence_case(
        "{} pulled from {} ({}).".format(_unit(state, job, data), _at(job, data), _HOW[data["how"]])
    ),
    "unit_fitted": _unit_fitted,
    "connector_locked": lambda state, job, data: "Connector locked at {}.".format(_at(job, data)),
    "fit_checked": lambda state, job, data: "Fit checked at {}.".format(_at(job, data)),
    "unit_moved": _unit_moved,
    "unit_seen": _unit_seen,
    "mixup_stopped": _mixup_stopped,
    "move_started": _move_started,
    "move_dropped": lambda state, job, data: "Move given up: {}.".format(data["reason"]),
    "circuit_measured": _circuit_measured,
    "circuit_repaired": lambda state, job, data: "Repaired: {}.".format(
        causes.phrase(state, job, data["cause"])
    ),
    "comes_and_goes_set": lambda state, job, data: (
        "The fault comes and goes." if data["value"] else "The fault does not come and go."
    ),
    "rates_set": lambda state, job, data: "Assumptions changed.",
    "code_weight_set": _code_weight_set,
    "reach_set": _reach_set,
    "money_set": lambda state, job, data: "Labour and prices set.",
    "units_mixed": _units_mixed,
    "walk_checked": _walk_checked,
    "left_deliberately": _left_deliberately,
    "return_received": _return_received,
    "return_decided": _return_decided,
    "corrected": lambda state, job, data: "Taken back entry {}: {}".format(data["seq"], data["reason"]),
    "job_closed": lambda state, job, data: "Job closed.",
}
