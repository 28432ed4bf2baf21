"""A phone records what its role is for: jobs at the bench, returns at the parts counter."""

from ..facts.corrections import KINDS_OF_CORRECTION
from ..facts.corrections import target_of
from ..facts.roles import against
from ..messages import message
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse what this phone was not paired for; without a role in the draft nothing is refused."""
    role, data, target = draft.get("role"), draft["data"], None
    if not role:
        return None
    if draft["kind"] in KINDS_OF_CORRECTION:
        found = fold.find(target_of(data))
        own = data["device"] == draft.get("device")
        target = {"kind": found["kind"] if found else "", "own": own, "role": ""}
    entry = {"kind": draft["kind"], "data": data, "actor": draft.get("actor", "")}
    why = against(role, entry, target)
    if why is None:
        return None
    return refusal("role", message("rules-role-title"), why, message("rules-role-do"))
