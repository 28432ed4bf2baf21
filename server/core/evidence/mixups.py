"""Units that got mixed up: which is which is not known, where they are is.

From that moment there are two lists: the identities (what is on record, with their old labels) and
the bodies (the parts in the hand, each a unit of its own with an id of its own and no label). A body
is reasoned over as a fresh unknown until a scan, or that only one is left, says which one it is.
"""

from ..messages import any_of
from ..messages import message
from ..messages import sentences
from ..state.job import Job
from ..state.unit import Unit
from ..words import words
from . import readings
from . import unit_history
from . import ways

_SETTLED = {"scan": "evidence-mixed-by-scan", "left": "evidence-mixed-as-last"}


def doubtful(job: Job, result: dict) -> list[str]:
    """Return the fitted bodies that the tests have not cleared; no reading needs to have blamed them.

    A body starts with the chance of being the bad one, unlike any other unit without a fault shown,
    so that 'nothing was shown' is not enough for it.
    """
    chances = {entry["cause"]: entry["probability"] for entry in result["causes"]}
    allowed = 1000000000 - job.confidence_ppb
    found = []
    for entry in ways.open_sets(job):
        for body in entry["bodies"]:
            unit = job.unit(body)
            if unit.is_fitted_here():
                if chances.get("unit:" + body, 0) > allowed:
                    found.append(body)
    return found


def settling_words(job: Job, entry: dict) -> dict:
    """Return {"scan", "test"}: what tells them apart at once, and what there is without a label, in words."""
    names = [_identity(job, each) for each in entry["open"] if job.unit(each).is_labelled()]
    scan = [message("evidence-mixed-no-label")]
    if names:
        scan = [message("evidence-mixed-scan", units=any_of(names))]
        if len(entry["open"]) == 2:
            scan.append(message("evidence-mixed-other"))
    chances = unit_history.chances_before(job.state, entry)
    most = 0.0
    for each in entry["open"]:
        most = max(most, chances[each])
    suspected = most >= 1.0 - readings.confidence(job)
    test = message("evidence-mixed-tests" if suspected else "evidence-mixed-fresh")
    return {"scan": sentences(scan), "test": test}


def _identity(job: Job, identity):
    return words.unit_name(job.unit(identity))


def lost_view(state, unit: dict) -> list[dict]:
    """Return each time the identity of a unit was lost; it stays on its trail for good."""
    shown = []
    sort = Unit(state, unit["id"]).sort.identity
    for entry in unit["lost"]:
        settled = message(_SETTLED.get(entry["settled"], "evidence-mixed-open"))
        shown.append(
            {
                "at": entry["at"],
                "count": entry["count"],
                "settled": entry["settled"],
                "words": message("evidence-mixed-involved", count=entry["count"], sort=sort, settled=settled),
            }
        )
    return shown
