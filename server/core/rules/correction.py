"""Taking a fact back is allowed where what came after it still makes sense without it."""

from ..log import canon
from ..messages import message
from ..state.unit import Unit
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse a correction of something unknown, of a correction, or one that leaves a contradiction."""
    if draft["kind"] != "corrected":
        return None
    identity = "{}:{}".format(draft["data"]["device"], draft["data"]["seq"])
    target = fold.find(identity)
    if target is None or target["kind"] == "corrected":
        return _refusal(message("rules-correction-unknown"), message("rules-correction-unknown-do"))
    if identity in fold.withdrawn:
        return _refusal(message("rules-correction-again"), message("rules-go-on"))
    if target["kind"] == "job_opened":
        return _refusal(message("rules-correction-opening"), message("rules-correction-opening-do"))
    without = fold.without(identity)
    before = {trouble: True for trouble in _troubles(fold.state)}
    if [trouble for trouble in _troubles(without) if trouble not in before]:
        return _refusal(message("rules-correction-later"), message("rules-correction-later-do"))
    bare = _loses_a_label(fold.state, without)
    if bare:
        return _refusal(
            message("rules-correction-bare", sort=Unit(fold.state, bare).sort.identity),
            message("rules-correction-bare-do"),
        )
    return None


def _troubles(state) -> list:
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


def _refusal(sentence, do) -> dict:
    return refusal("correction", message("rules-correction-title"), sentence, do)
