"""A fact is taken back where what came after makes sense without it, and put right where it is on record."""

from ..facts.corrections import KINDS_OF_CORRECTION
from ..facts.corrections import PUT_RIGHT
from ..facts.corrections import target_of
from ..facts.mixups import is_body
from ..log import canon
from ..messages import message
from ..state.unit import Unit
from .refusal import refusal

# What the way of reading a label is about: a scan of another unit is no scan of this one.
_READ = ("unit", "code")
# What later entries find an entry, a vehicle, a position, a unit or a picture by: it stays.
_STAYS = {
    "job_opened": ("layout", "positions"),
    "unit_added": ("unit",),
    "photo_taken": ("sha256", "mime", "bytes", "width", "height"),
}


def refuse(fold, draft, job):
    """Refuse a correction of something unknown, of a correction, or one that leaves a contradiction."""
    if draft["kind"] not in KINDS_OF_CORRECTION:
        return None
    identity = target_of(draft["data"])
    target, right = fold.find(identity), draft["kind"] == PUT_RIGHT
    if target is None or target["kind"] in KINDS_OF_CORRECTION:
        return _refusal(right, message("rules-correction-unknown"), message("rules-correction-unknown-do"))
    settles = fold.corrections.settles(draft["data"])
    lifts = right and not settles and fold.corrections.lifts(draft["data"])
    if identity in fold.corrections.withdrawn and not settles and not lifts:
        return _refusal(right, message("rules-correction-again"), message("rules-go-on"))
    if lifts and troubles(fold.state, fold.with_right(identity, draft["data"]["entry"])):
        return _refusal(True, message("rules-correction-not-back"), message("rules-correction-not-back-do"))
    if right:
        return _refuse_to_put_right(fold, identity, target, draft["data"]["entry"], settles or lifts)
    if target["kind"] == "job_opened":
        return _refusal(False, message("rules-correction-opening"), message("rules-correction-opening-do"))
    without = fold.without(identity)
    gone = _mixups_without(fold, identity)
    if [each for each in troubles(fold.state, without) if not _labels_a_body(fold, gone, each[0])]:
        return _refusal(False, message("rules-correction-later"), message("rules-correction-later-do"))
    bare = _loses_a_label(fold.state, without)
    if bare:
        return _refusal(
            False,
            message("rules-correction-bare", sort=Unit(fold.state, bare).sort.identity),
            message("rules-correction-bare-do"),
        )
    return None


def troubles(before, after) -> list[tuple]:
    """Return the contradictions that `after` has and `before` has not, as (entry, unit or "", what)."""
    known = {trouble: True for trouble in _troubles(before)}
    return [trouble for trouble in _troubles(after) if trouble not in known]


def _mixups_without(fold, identity: str) -> list[str]:
    """Return the mix-ups that never were once an entry is taken back."""
    taken_back = list(fold.corrections.withdrawn) + [identity]
    found = [each for each in taken_back if fold.find(each)]
    return [each for each in found if fold.find(each)["kind"] == "units_mixed"]


def _labels_a_body(fold, mixups: list[str], identity: str) -> bool:
    """Tell whether an entry only put a fresh label on what got mixed up: it goes with the mix-up."""
    event = fold.find(identity)
    if event["kind"] != "unit_labelled":
        return False
    return bool([each for each in mixups if is_body(event["data"]["unit"], each)])


def _refuse_to_put_right(fold, identity: str, target: dict, entry: dict, settles: bool) -> dict | None:
    now = fold.corrections.righted.get(identity)
    said = now["data"] if now else target["data"]
    if entry["kind"] != target["kind"]:
        return _refusal(True, message("rules-correction-kind"), message("rules-correction-kind-do"))
    if entry["data"] == said and not settles:
        return _refusal(True, message("rules-correction-same"), message("rules-correction-same-do"))
    first, data = target["data"], entry["data"]
    stays = [
        name
        for name in _STAYS.get(target["kind"], ())
        if _kept(name, data[name]) != _kept(name, first.get(name))
    ]
    if stays or (target["kind"] == "job_opened" and data["vehicle"]["id"] != first["vehicle"]["id"]):
        return _refusal(True, message("rules-correction-stays"), message("rules-correction-stays-do"))
    if not _may_be_read(said, data):
        return _refusal(True, message("rules-correction-how"), message("rules-correction-how-do"))
    return None


def _kept(name: str, value):
    """Return of a value what stays: of positions all but what they are called."""
    if name != "positions":
        return value
    return [{field: each[field] for field in each if field != "name"} for each in value]


def _may_be_read(said: dict, data: dict) -> bool:
    """Tell whether nobody makes a scan of what was none: that is known at the time alone."""
    if "how" not in data or data["how"] == "tapped":
        return True
    if [name for name in _READ if data.get(name) != said.get(name)]:
        return data["how"] != "scanned"
    return data["how"] == said.get("how")


def _troubles(state) -> list[tuple]:
    """Return each contradiction as one comparable value."""
    found = [(c["event"], c["unit"] or "", c["about"]) for c in state.conflicts]
    found.extend([(entry["event"], "", canon.dumps(entry["why"])) for entry in state.not_understood])
    return found


def _loses_a_label(before, after) -> str | None:
    """Return the id of a unit that would lose its label, or None."""
    for identity in after.units:
        unit, known = after.units[identity], before.units.get(identity)
        if known and known["code"] and not unit["code"] and unit["place"] != "fitted":
            return identity
    return None


def _refusal(right: bool, sentence, do) -> dict:
    title = "rules-correction-right-title" if right else "rules-correction-title"
    return refusal("correction", message(title), sentence, do)
