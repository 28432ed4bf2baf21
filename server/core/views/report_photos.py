"""Which pictures of a job show it before and after the work; told by the order of events, not by clocks."""

from ..messages import message
from ..state.job import Job
from ..words import words

_CHANGES = ("unit_pulled", "unit_fitted", "cleaned", "circuit_repaired")


def before_and_after(job: Job) -> dict:
    """Return {"before", "during", "after"}: lists of {"sha256", "at", "words", "faulted"}, each in order.

    "faulted" tells whether it is of a position that a test showed a fault at.
    """
    entries = job.entries()
    work = [n for n in range(len(entries)) if entries[n]["kind"] in _CHANGES]
    first = work[0] if work else len(entries)
    last = work[-1] if work else len(entries)
    found = {"before": [], "during": [], "after": []}
    for n in range(len(entries)):
        if entries[n]["kind"] == "photo_taken":
            when = "before" if n < first else "after" if n > last else "during"
            if entries[n]["data"]["shows"] == "unit":
                when = "during"  # a sensor in the hand shows neither
            if when == "after" and not job.is_closed() and _shows_fault(entries, n, last):
                when = "during"
            when = entries[n]["data"].get("repair", when)
            found[when].append(_shown(job, entries[n]))
    return found


def _shows_fault(entries: list, n: int, work: int) -> bool:
    """Tell whether a picture is the screen of a test that still shows a fault: the work goes on from there.

    It is that of the last test since the `work` before it; taken before any was entered, of the next one.
    """
    if entries[n]["data"]["shows"] != "screen":
        return False
    tests = [each for each in range(work + 1, len(entries)) if entries[each]["kind"] == "test_run"]
    test = [each for each in tests if each < n][-1:] or tests[:1]
    return bool(test and entries[test[0]]["data"]["faulted"])


def _shown(job, entry) -> dict:
    data = entry["data"]
    at_fault = [test for test in job.tests if data["position"] in test["faulted"]]
    shown = {"sha256": data["sha256"], "at": entry["at"], "words": "", "faulted": bool(at_fault)}
    if "repair" in data:
        shown["words"] = _of_repair(job, data)
    elif data["position"]:
        shown["words"] = message("views-heading", words=words.position_name(job, data["position"]))
    elif data["shows"] in ("screen", "unit", "work"):
        shown["words"] = message("views-report-photo", shows=data["shows"], sort=job.sort.identity)
    return shown


def _of_repair(job: Job, data) -> dict:
    where = words.position_name(job, data["position"]) if data["position"] else "none"
    return message("views-picture-of-repair", when=data["repair"], position=where)
