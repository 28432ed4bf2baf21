"""A closed job takes no more work; what happens to its units later goes on record without the job."""

from ..facts.kind import RECORDED
from ..facts.kinds import KINDS
from ..messages import message
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse work on a closed job, and a job that is opened twice."""
    if job is None:
        return None
    if draft["kind"] == "job_opened":
        return refusal(
            "job_open", message("rules-open-title"), message("rules-open"), message("rules-open-do")
        )
    if not job.is_closed() or KINDS[draft["kind"]].after_closing == RECORDED:
        return None
    return refusal(
        "job_open", message("rules-closed-title"), message("rules-closed"), message("rules-closed-do")
    )
