"""An app that is too old begins no new job; what is begun is gone on with, and everything is sent."""

from ..log.envelope import FORMAT_VERSION
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse to open a job where the server asks for a newer format than this app writes."""
    if draft["kind"] != "job_opened" or draft.get("oldest", FORMAT_VERSION) <= FORMAT_VERSION:
        return None
    return refusal(
        "too_old",
        "This version of the app is too old for a new job",
        "The server asks for a newer one. A job that is begun can be gone on with, and everything is sent.",
        "Change over to the new version in the list of jobs. It comes by itself when the server is in reach.",
    )
