"""Readings that were bad before a repair: each is taken again, for nothing else proves exactly that repair.

A reading belongs to a repair of its circuit, of the feed of its position, or of the control unit. One that
cannot be taken again says so on record, with the reason; another reading or repair asks for it anew. One that
was bad while the fault was brought out, warm, is taken again warm: cold it proves nothing.
"""

from ..state.job import Job

# AGAIN: repaired since it was bad, and not taken again. STILL: taken again, and bad. GOOD, LEFT: see above.
AGAIN, STILL, GOOD, LEFT = "again", "still", "good", "left"


def after_repairs(job: Job) -> list[dict]:
    """Return what became of each reading that was bad before a repair.

    As {"position", "check", "provoked", "before", "now", "reason", "stands"}: `check` is as the sort
    declares it; `provoked` is what it came after, "" for nothing; `before` and `now` are figures as typed,
    "" for none; `reason` is why it was left, "" where it was not. In the order of the layout and of the
    checks.
    """
    if not job.repairs or not job.measurements:
        return []
    found = []
    for position in job.positions:
        for check in job.sort.circuit_checks:
            for warm in (False, True):
                entry = _after_repair(job, position, check, warm)
                if entry:
                    found.append(entry)
    return found


def owed(job: Job) -> dict | None:
    """Return the first of them that stands in the way of a proof (AGAIN or STILL); None on a closed job."""
    if job.is_closed():
        return None
    waiting = [each for each in after_repairs(job) if each["stands"] in (AGAIN, STILL)]
    return waiting[0] if waiting else None


def _after_repair(job: Job, position: dict, check: dict, warm: bool) -> dict | None:
    """Return what became of a reading, cold or warm, None where none was bad before a repair."""
    place = position["id"]
    causes = ("circuit:" + place, "feed:" + position["group"], "control")
    repairs = [n + 1 for n, each in enumerate(job.repairs) if each["cause"] in causes]
    bad, last, number = None, None, 0
    for n, entry in enumerate(job.measurements):
        if entry["position"] != place or entry["check"] != check["id"] or entry["reads"] == "unclear":
            continue
        if ("provoked" in entry) != warm:
            continue
        if last and last["reads"] == "bad" and _repaired_between(repairs, last, entry["repairs_before"]):
            bad = bad or last
        last, number = entry, n + 1
    if last is None:
        return None
    waits = last["reads"] == "bad" and _repaired_between(repairs, last, len(job.repairs))
    if not bad and not waits:
        return None
    was = bad or last
    found = {"position": place, "check": check, "before": was["value"], "now": "", "reason": ""}
    found["provoked"] = was.get("provoked", "")
    if last["reads"] == "good":
        found["now"], found["stands"] = last["value"], GOOD
        return found
    found["stands"] = AGAIN if waits else STILL
    if not waits:
        found["now"] = last["value"]
        return found
    for left in job.not_retaken:
        same = (
            left["position"] == place and left["check"] == check["id"] and left["readings_before"] >= number
        )
        if same and ("provoked" in left) == warm and not [n for n in repairs if n > left["repairs_before"]]:
            found["reason"], found["stands"] = left["reason"], LEFT
    return found


def _repaired_between(repairs: list, reading: dict, repairs_by_then: int) -> bool:
    """Tell whether one of the repairs, by number, came after a reading and is among the first so many."""
    return bool([n for n in repairs if reading["repairs_before"] < n <= repairs_by_then])
