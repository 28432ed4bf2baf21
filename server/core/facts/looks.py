"""What was looked at on a job: cautions, lamps, what can be seen, pictures, the walk-behind check."""

from ..messages import all_of
from ..messages import message
from ..messages import sentences
from ..meter import sound
from ..parts import sorts
from .amounts import Celsius
from .amounts import Centimetres
from .amounts import Count
from .fields import Choice
from .fields import Name
from .fields import Photo
from .fields import Text
from .kind import BOTH
from .kind import RECORDED
from .kind import Kind
from .naming import Position
from .naming import Positions
from .naming import Unit
from .several import Distances
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
    photo = {
        "sha256": data["sha256"],
        "shows": data["shows"],
        "position": data["position"],
        "unit": data["unit"],
        "sat": state.occupant(job["vehicle"], data["position"]) or "",
        "at": event["at"],
    }
    if "repair" in data:
        photo["repair"] = data["repair"]
    job["photos"].append(photo)


def _photos_skipped(state, event, job) -> None:
    # Jobs from before this kind was there have no such list.
    job["photos_skipped"] = job.get("photos_skipped", []) + event["data"]["positions"]


def _walk_checked(state, event, job) -> None:
    data = event["data"]
    job["walk"] = {"positions": data["positions"], "missed": data["missed"]}
    for name in ("distances", "celsius", "width"):
        if name in data:
            job["walk"][name] = data[name]


def distances(walk: dict, position) -> list[dict]:
    """Return what each distance that was shown beside a tape is worth: [{"position", "words", "fits"}].

    `walk` has "distances" and "celsius" as `walk_checked` has them; `position(id)` is a name.
    """
    celsius = walk.get("celsius", sound.COUNTED_WITH)
    found = []
    for entry in walk.get("distances", []):
        if entry["tape"] and entry["shown"]:
            how = sound.judged(entry["tape"], entry["shown"], celsius)
            said = message(
                "facts-distance",
                how=how,
                position=position(entry["position"]),
                tape=str(entry["tape"]),
                shown=str(entry["shown"]),
                celsius=str(celsius),
            )
            found.append({"position": entry["position"], "words": said, "fits": how != sound.OFF})
    return found


_FOUND = dict(sorts.findings())


def _tell_looked(names, data) -> dict:
    seen = [
        message(
            "facts-seen-at",
            found=names.sort.finding(item["found"]) or _FOUND[item["found"]],
            position=names.position(item["position"]),
        )
        for item in data["positions"]
        if item["found"] != "nothing"
    ]
    return message("facts-looked", seen=all_of(seen)) if seen else message("facts-nothing-seen")


def _tell_photo_taken(names, data) -> dict:
    if "repair" in data:
        where = names.position(data["position"]) if data["position"] else "none"
        return message("facts-picture-of-repair", when=data["repair"], position=where)
    if data["position"]:
        return message("facts-picture-of-position", position=names.position(data["position"]))
    return message("facts-picture", shows=data["shows"], sort=names.sort.identity)


def _tell_caution_read(names, data) -> dict:
    known = names.sort.cautions.get(data["caution"])
    return message("facts-caution-read", caution=known.short if known else data["caution"])


def _tell_walk_checked(names, data) -> dict:
    walk = names.sort.walk
    heard = walk.all_well
    if data["missed"]:
        heard = message(walk.missed, positions=names.positions(data["missed"]))
    told = [each["words"] for each in distances(data, names.position)]
    return sentences([message("facts-walk", walk=walk.name, heard=heard)] + told)


CELSIUS = Celsius("celsius", sound.COLDEST, sound.HOTTEST, later=True, called=message("steps-stand-celsius"))
WIDTH = Centimetres("width", 60, 300, later=True, called=message("steps-stand-width"))

KINDS = (
    Kind(
        "caution_acknowledged",
        Name("caution"),
        does=_caution_acknowledged,
        tells=_tell_caution_read,
    ),
    Kind(
        "lamp_checked",
        Choice("when", ("key_on", "reverse")),
        Choice("result", ("as_it_should", "not_as_it_should", "not_sure", "never_on", "stays_on", "flashes")),
        Text("note"),
        does=_lamp_checked,
        tells=("facts-lamp", "when", "result"),
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
        # Of the wiring, before or after its repair.
        Choice("repair", ("before", "after"), later=True),
        does=_photo_taken,
        tells=_tell_photo_taken,
        role=BOTH,
        after_closing=RECORDED,
    ),
    Kind(
        "photos_skipped",
        Positions("positions"),
        does=_photos_skipped,
        tells=("facts-pictures-skipped", "positions"),
    ),
    Kind(
        "walk_checked",
        Positions("positions", kept=True),
        Positions("missed", kept=True),
        # Shown beside a tape, in cm; at which temperature of the air, and how wide the bumper is, in cm.
        Distances("distances", later=True),
        CELSIUS,
        WIDTH,
        does=_walk_checked,
        tells=_tell_walk_checked,
    ),
)
