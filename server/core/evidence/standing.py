"""How well a conclusion holds against its assumptions, in one sentence."""

from ..messages import decimal
from ..messages import message
from ..messages import percent
from ..state.job import Job

_TENTHS = 10


def words(job: Job, result: dict, settled: bool):
    """Return what the rates would have to be for it to fall, or which ones keep it from standing yet."""
    verdict = result["verdict"]
    if verdict:
        return _stands(job, verdict["breaks_x10"])
    if settled:
        return ""
    leading = result["explanations"][0]
    if leading["causes"] and leading["probability"] >= job.confidence_ppb:
        return _not_yet(job, result["holds"])
    if result["clear"] >= job.confidence_ppb:
        return _not_yet(job, result["clear_holds"])
    return ""


def _stands(job: Job, breaks: dict) -> dict:
    """Name the class of causes that would break a verdict first."""
    rows = sorted([(breaks[what], what) for what in breaks])
    if not rows:
        return message("evidence-stands-all")
    tenths, what = rows[0]
    # At this factor it falls: it stands up to the tenth before.
    times = (tenths - 1) // _TENTHS
    if times < 2:
        return message("evidence-stands-barely", rate=_rate(job, what), times=decimal(tenths, 1))
    return message("evidence-stands", rate=_rate(job, what), count=times)


def _not_yet(job: Job, holds: dict) -> dict:
    what, how = holds["when"].split(" ")
    condition = message(
        "evidence-if-common" if how[0] == "x" else "evidence-if-rare",
        rate=_rate(job, what),
        times=_times(how[1:]),
    )
    return message("evidence-not-yet", condition=condition, share=percent(holds["lowest"]))


def _times(factor: str) -> dict:
    """Return a factor as it is named, up to three decimals, as a figure."""
    whole, _, rest = factor.partition(".")
    return decimal(int(whole + rest), len(rest))


def _rate(job: Job, what: str) -> dict:
    """Return what there may be more of than assumed, as its plural."""
    return message("evidence-rate-of", what=what, sort=job.sort.identity, blocked=job.sort.obstruction.words)
