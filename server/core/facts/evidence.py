"""Folding of evidence: tests, cleaning, and how parts were fitted. What was measured: `measuring`."""

from ..codes import troublecode
from ..log import envelope
from ..messages import message
from ..messages import sentences
from ..state import contradictions
from ..state import stories
from ..state.kept_facts import is_hanging
from .fields import Choice
from .fields import Flag
from .fields import Names
from .fields import Text
from .kind import Kind
from .naming import Position
from .naming import Positions
from .naming import Unit
from .places import fitted_on
from .several import Codes
from .several import Meanings

AT_ONCE = "at_once"
# What was done to bring out a fault that comes and goes, since the test before; at once: nothing.
PROVOKED = (AT_ONCE, "water", "heat", "cold", "loom", "drive", "another_day")


def provoked_words(what: str) -> dict:
    """Return what a test came after, as it stands in a list."""
    return message("facts-provoked", what=what)


def brought_out(what: str):
    """Return how a reading was made warm, or what else it came after; "" for nothing: cold it proves less."""
    return message("facts-reading-after", what=what, after=provoked_words(what)) if what else ""


def _test_run(state, event, job) -> None:
    """Keep the test with what sat where; places in dispute are noted, their readings count for nobody."""
    data = event["data"]
    holds = state.vehicles[job["vehicle"]]["holds"]
    fitted = fitted_on(state, job)
    job["tests"].append(
        {
            "event": envelope.identity(event),
            "n": job["entries"],
            "at": event["at"],
            "actor": event["actor"],
            "heard": data["heard"],
            "faulted": sorted(data["faulted"]),
            "silent": sorted(data["silent"]),
            "unplugged": sorted(data["unplugged"]),
            "codes": data["codes"],
            "came_and_went": data["came_and_went"],
            "note": data["note"],
            "fitted": fitted,
            "disputed": contradictions.disputed_positions(state, job["vehicle"]),
            "cleaned": job["pending"]["cleaned"],
            "repaired": job["pending"]["repaired"],
        }
    )
    others = [test["event"] for test in job["tests"][:-1]]
    apart = [each for each in others if stories.is_unknown(each, event)]
    if apart:
        job["tests"][-1]["apart"] = apart
    if "provoked" in data:
        job["tests"][-1]["provoked"] = data["provoked"]
    for name in ("open_list", "means"):
        if name in data:
            job["tests"][-1][name] = data[name]
    job["pending"] = {"cleaned": [], "repaired": []}
    job["plugged_off"] = [place for place in sorted(data["unplugged"]) if place in fitted]
    if data["came_and_went"] and data["heard"]:
        job["comes_and_goes"] = True
    if job["move"] and _reached(job["move"], holds):
        job["move"] = None


def _reached(move, holds) -> bool:
    """Tell whether every unit of a move sits where the move wants it; a test then ends the move."""
    for position in move["fitted"]:
        if holds.get(position) != move["fitted"][position]:
            return False
    return True


def _cleaned(state, event, job) -> None:
    job["walk"] = None
    _once(job["pending"]["cleaned"], event["data"]["position"])


def _connector_locked(state, event, job) -> None:
    place = event["data"]["position"]
    job["locked"][place] = True
    job["plugged_off"] = [each for each in job["plugged_off"] if each != place]


def _fit_checked(state, event, job) -> None:
    data = event["data"]
    job["fit_checks"][data["position"]] = {"unit": data["unit"], "checks": data["checks"]}
    unit = state.units.get(data["unit"])
    if unit and is_hanging(unit) and unit["position"] == data["position"]:
        unit["moves"][-1]["hanging"] = False


def _once(items, item) -> None:
    if item not in items:
        items.append(item)


def _tell_test_run(names, data) -> dict:
    said, codes = [_tell_result(names, data)], troublecode.told(data, names.position)
    if codes:
        said.append(codes)
    if "provoked" in data:
        said.append(message("facts-test-provoked", what=provoked_words(data["provoked"])))
    return said[0] if len(said) == 1 else sentences(said)


def _tell_result(names, data) -> dict:
    if not data["heard"]:
        return names.sort.says("facts-test-not-heard", proof=names.sort.self_test.not_heard)
    if data["faulted"]:
        return names.sort.says("facts-test-fault", positions=names.positions(data["faulted"]))
    return names.sort.says("facts-test-good")


KINDS = (
    Kind(
        "test_run",
        Flag("heard"),
        Positions("faulted"),
        Positions("silent"),
        Positions("unplugged"),
        Codes("codes"),
        Flag("came_and_went"),
        Text("note"),
        Choice("provoked", PROVOKED, later=True),
        # The last entry of each phone on the job that this one knew of.
        Names("knows", later=True),
        # Whether the failure types of the codes follow the open list, and what codes mean, as somebody said.
        Flag("open_list", later=True),
        Meanings("means", later=True),
        does=_test_run,
        tells=_tell_test_run,
    ),
    Kind(
        "cleaned",
        Position("position"),
        Text("note"),
        does=_cleaned,
        tells=("facts-cleaned", "position"),
    ),
    Kind(
        "connector_locked",
        Position("position"),
        does=_connector_locked,
        tells=("facts-connector-locked", "position"),
    ),
    Kind(
        "fit_checked",
        Unit("unit"),
        Position("position"),
        Names("checks"),
        does=_fit_checked,
        tells=("facts-fit-checked", "position"),
    ),
)
