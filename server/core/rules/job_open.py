"""A closed job takes no more work; what happens to its units later goes on record without the job."""

from ..facts.kind import RECORDED
from ..facts.kinds import KINDS
from .refusal import refusal


def refuse(fold, draft, job):
    """Refuse work on a closed job, and a job that is opened twice."""
    if job is None:
        return None
    if draft["kind"] == "job_opened":
        return refusal("job_open", "This job is open already", "It was opened before.", "Go on with it.")
    if not job.is_closed() or KINDS[draft["kind"]].after_closing == RECORDED:
        return None
    return refusal(
        "job_open",
        "This job is closed",
        "Nothing can be added to a closed job.",
        "Open a new job on this vehicle, or take back the closing in the history.",
    )
