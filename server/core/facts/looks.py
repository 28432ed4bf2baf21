"""What was looked at on a job: cautions, lamps, what can be seen, pictures, the walk-behind check."""

from ..parts import sorts
from .fields import Choice
from .fields import Count
from .fields import Name
from .fields import Photo
from .fields import Text
from .kind import BOTH
from .kind import RECORDED
from .kind import Kind
from .naming import Position
from .naming import Positions
from .naming import Unit
from .several import Findings


def _caution_acknowledged(state, event, job) -> None:
    job["cautions"][event["data"]["caution"]] = event["actor"]


def _lamp_checked(state, event, job) -> None:
    data = event["data"]
    job["lamps"][data["when"]] = {"result": data["result"], "note": data["note"]}


def _looked(state, event, job) -> None:
    job["looked"] = {"positions": event["data"]["positions"], "note": event["data"]["note"]}


def _photo_taken(state, event, job) -> None:
    data = event["data"]
    job["photos"].append(
        {
            "sha256": data["sha256"],
            "shows": data["shows"],
            "position": data["position"],
            "unit": data["unit"],
            "sat": state.occupant(job["vehicle"], data["position"]) or "",
            "at": event["at"],
        }
    )


def _walk_checked(state, event, job) -> None:
    data = event["data"]
    job["walk"] = {"positions": data["positions"], "missed": data["missed"]}


_LAMP_RESULTS = {
    "as_it_should": "as it should be",
    "not_as_it_should": "not as it should be",
    "not_sure": "not sure",
}
_FOUND = dict(sorts.findings())


def _tell_looked(names, data) -> str:
    seen = [
        "{} at {}".format(
            names.sort.finding(item["found"]) or _FOUND[item["found"]], names.position(item["position"])
        )
        for item in data["positions"]
        if item["found"] != "nothing"
    ]
    return "Looked: {}.".format(names.listed(seen) if seen else "nothing to see")


def _tell_photo_taken(names, data) -> str:
    if data["position"]:
        return "Picture of {}.".format(names.position(data["position"]))
    return "Picture of the {}.".format(names.sort.unit if data["shows"] == "unit" else data["shows"])


def _tell_walk_checked(names, data) -> str:
    walk = names.sort.walk
    heard = walk.missed.format(names.positions(data["missed"])) if data["missed"] else walk.all_well
    return "{}: {}.".format(walk.name, heard)


KINDS = (
    Kind(
        "caution_acknowledged",
        Name("caution"),
        does=_caution_acknowledged,
        tells="Caution read: {caution}.",
    ),
    Kind(
        "lamp_checked",
        Choice("when", ("key_on", "reverse"), {"key_on": "key-on"}),
        Choice("result", ("as_it_should", "not_as_it_should", "not_sure"), _LAMP_RESULTS),
        Text("note"),
        does=_lamp_checked,
        tells="Lamp at {when}: {result}.",
    ),
    Kind(
        "looked",
        Findings("positions"),
        Text("note"),
        does=_looked,
        tells=_tell_looked,
    ),
    Kind(
        "photo_taken",
        Photo("sha256"),
        Text("mime"),
        Count("bytes"),
        Count("width"),
        Count("height"),
        Choice("shows", ("position", "screen", "unit", "work")),
        Position("position", or_none=True),
        Unit("unit", or_none=True),
        does=_photo_taken,
        tells=_tell_photo_taken,
        role=BOTH,
        after_closing=RECORDED,
    ),
    Kind(
        "walk_checked",
        Positions("positions", kept=True),
        Positions("missed", kept=True),
        does=_walk_checked,
        tells=_tell_walk_checked,
    ),
)
