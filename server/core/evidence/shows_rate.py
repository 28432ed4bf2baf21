"""How often a fault that is there shows, estimated from tests that were run again with nothing changed.

Counted is each repeat of a test (same units in the same places, nothing cleaned or repaired since the
one before) while a cause of the verdict was surely acting: k of n showed the fault. The first test of
a run is left out: it was followed up because of what it showed. So is a test run at once, which
mostly says what the one before said. With nothing known beforehand the estimate is (k + 1) / (n + 2):
Laplace's rule of succession, the mean of the Beta(k + 1, n - k + 1) that Bayes' rule makes of a
uniform prior.
"""

from ..messages import message
from ..state.job import Job
from ..words import causes
from . import readings

SOURCE = message("evidence-laplace")
_LEAST = 2  # with fewer repeats the estimate says more about the rule than about the fault
_PPM = 1000000


def estimate(job: Job, result: dict | None) -> dict | None:
    """Return {"shown", "repeats", "ppm"}, None without a verdict or with too few repeats."""
    if not result or not result["verdict"]:
        return None
    shown, repeats = 0, 0
    tests = readings.tests(job)
    for index in range(1, len(tests)):
        test, before = tests[index], tests[index - 1]
        if not readings.repeats(test, before) or readings.is_at_once(test):
            continue
        acting = acted_on(job, tests, index, result["verdict"]["causes"])
        for place in sorted(acting):
            if acting[place] > 1 or place in test["silent"] or place in test["unplugged"]:
                continue
            repeats += 1
            shown += 1 if place in test["faulted"] else 0
    if repeats < _LEAST:
        return None
    ppm = ((shown + 1) * _PPM + (repeats + 2) // 2) // (repeats + 2)
    return {"shown": shown, "repeats": repeats, "ppm": ppm}


def acted_on(job: Job, tests: list, index: int, verdict: list) -> dict:
    """Return position -> how many causes of a verdict acted on it in a test, where any did."""
    acting: dict = {}
    for cause in verdict:
        for place in _places(job, tests, index, cause):
            acting[place] = acting.get(place, 0) + 1
    return acting


def _places(job, tests, index, cause) -> list:
    kind, what, generation = causes.split(cause)
    test = tests[index]
    if kind == "unit":
        return [place for place in test["fitted"] if test["fitted"][place] == what]
    if kind == "blocked":
        return [what] if not _disturbed(tests, index, what) else []
    base = cause.partition("#")[0]
    repairs = 0
    for each in tests[: index + 1]:
        repairs += each["repaired"].count(base)
    if repairs != generation - 1:
        return []
    if kind == "circuit":
        return [what]
    return [p["id"] for p in job.positions if kind == "control" or p["group"] == what]


def _disturbed(tests, index, place) -> bool:
    """Tell whether a position was cleaned, or another unit sat there, at any time up to a test."""
    for each in tests[: index + 1]:
        if place in each["cleaned"] or each["fitted"].get(place) != tests[0]["fitted"].get(place):
            return True
    return False
