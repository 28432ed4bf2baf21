"""A phone records what its role is for: jobs at the bench, returns at the parts counter."""

from ..facts.corrections import KINDS_OF_CORRECTION
from ..facts.roles import may_record
from ..facts.roles import reason_against
from ..messages import message
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse what this phone was not paired for; without a role in the draft nothing is refused."""
    role, kind = draft.get("role"), draft["kind"]
    if kind in KINDS_OF_CORRECTION:
        data = draft["data"]
        target = fold.find("{}:{}".format(data.get("device"), data.get("seq")))
        kind = target["kind"] if target else kind
    if not role or may_record(role, kind):
        return None
    return refusal(
        "role",
        message("rules-role-title"),
        reason_against(role, kind),
        message("rules-role-do"),
    )
