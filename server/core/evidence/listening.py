"""What was heard of units, in the form that the reasoning takes.

Listening needs no self-test, but a case has it on a test: on the one before where nothing was changed since,
else on the one after. What no test came after stands as an entry of its own at the end, in which nothing
was tested. What was changed again before any test counts for nothing.
"""

from ..state.job import Job


def on_tests(job: Job) -> dict:
    """Return {number of a test: {position: "ticks" or "silent"}}; what was heard last counts."""
    found = {}
    for entry in job.listened:
        at = _test_of(job, entry)
        if at is not None:
            found.setdefault(at, {}).update(entry["heard"])
    return found


def since(job: Job) -> list[dict]:
    """Return the entries of a case for what was heard since the last test and belongs to none."""
    found: list[dict] = []
    repaired: list[str] = []
    for entry in job.listened:
        if entry["tests_before"] < len(job.tests) or _test_of(job, entry) is not None or not entry["heard"]:
            continue
        more = [cause for cause in entry["repaired"] if cause not in repaired]
        repaired = repaired + more
        if found and found[-1]["fitted"] == entry["fitted"] and not more:
            found[-1]["listen"].update(entry["heard"])
            continue
        found.append(
            {
                "fitted": dict(entry["fitted"]),
                "faulted": [],
                "cleaned": [],
                "repaired": more,
                "unplugged": [],
                "silent": [position["id"] for position in job.positions],
                "heard": True,
                "listen": dict(entry["heard"]),
            }
        )
    return found


def _test_of(job: Job, entry: dict) -> int | None:
    """Return the number of the test that an entry belongs to, None for none."""
    after = entry["tests_before"]
    if after and not entry["repaired"] and _same(job.tests[after - 1], entry):
        return after - 1
    if after < len(job.tests) and job.tests[after]["repaired"] == entry["repaired"]:
        return after if _same(job.tests[after], entry) else None
    return None


def _same(test: dict, entry: dict) -> bool:
    """Tell whether the units that were listened at sat there, plugged in, in a test."""
    elsewhere = test["unplugged"] + test["disputed"]
    for place in entry["heard"]:
        if test["fitted"].get(place) != entry["fitted"][place] or place in elsewhere:
            return False
    return True
