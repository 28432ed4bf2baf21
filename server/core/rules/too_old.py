"""An app that is too old begins no new job; what is begun is gone on with, and everything is sent."""

from ..log.envelope import FORMAT_VERSION
from ..messages import message
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse to open a job where the server asks for a newer format than this app writes."""
    if draft["kind"] != "job_opened" or draft.get("oldest", FORMAT_VERSION) <= FORMAT_VERSION:
        return None
    return refusal("too_old", message("rules-old-title"), message("rules-old"), message("rules-old-do"))
