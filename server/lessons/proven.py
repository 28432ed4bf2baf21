"""What a closed job proves: the cause found, what was claimed of it, and readings whose cause is known.

A job is reasoned over alone and at the default rates, never at learned ones, so that what is learned does not
feed on itself. Its cause is proven when the verdict stands by the rule of all verdicts, nothing of it is
left on the vehicle, and the tests after the repair are clean to the confidence asked for. What was claimed is
the leading explanation by the tests before the first repair, or before a unit came that was new to the
vehicle; where neither was, before the first cleaning, which costs so little that it is no claim by itself.
"""

from typing import NamedTuple

from server.core.evidence import job_alone
from server.core.evidence import learned
from server.core.evidence import readings
from server.core.evidence import ways
from server.core.evidence.shows_rate import acted_on
from server.core.infer import explanations
from server.core.infer import holds
from server.core.infer.belief import Belief
from server.core.infer.case_form import read
from server.core.infer.figures import WHOLE
from server.core.infer.figures import parts
from server.core.infer.model import Model
from server.core.infer.variations import CLASSES
from server.core.infer.variations import Variations
from server.core.state.job import Job

_EXPLANATIONS = 2


class Proof(NamedTuple):
    """The belief at the end, the verdict that is proven, and what was claimed before the repair."""

    belief: Belief
    leading: list[str]  # the likeliest explanation, proven or not
    causes: list[str]  # of the proven verdict; none where it is not proven
    claimed: list[str]  # of the leading explanation before the repair; none where there was none
    chance: float  # of what was claimed


def is_mixed_up(job: Job) -> bool:
    """Tells whether units of a job got mixed up and nobody knows which is which."""
    return bool(ways.open_sets(job))


def prove(job: Job) -> Proof:
    """Returns what a job proves; raises BadInput where its readings contradict its rates of 0 and 1."""
    case = _at_defaults(job)
    belief = Belief(Model(read(case)))
    best = explanations.named(belief, explanations.likeliest(belief, _EXPLANATIONS))[0]
    confidence = parts(belief.model.case.confidence)
    causes: list[str] = []
    if best["causes"] and best["probability"] >= confidence:
        live = belief.model.live()
        gone = not [name for n, name in enumerate(belief.model.names) if live[n] and name in best["causes"]]
        clean = parts(belief.absent(live)) >= confidence
        held = holds.leading(best, Variations(belief), belief.model.case) if gone and clean else None
        if held and holds.stand(best["probability"], held, confidence):
            causes = list(best["causes"])
    claimed, chance = _claim(case)
    return Proof(belief, list(best["causes"]), causes, claimed, chance)


def checks_of(job: Job, tests: list[dict], causes: list[str]) -> dict[str, list[int]]:
    """Returns what listening and measuring say where the cause is proven: rate -> [hits, tries]."""
    found: dict[str, list[int]] = {}
    _count_listening(job, tests, causes, found)
    _count_meter(job, causes, found)
    return found


def place_of(cause: str, tests: list[dict]) -> str:
    """Returns the position, or the group, that a cause is at; of a unit where the first tests had it."""
    kind, _, what = cause.partition("#")[0].partition(":")
    if kind != "unit":
        return what
    for test in tests:
        for place, unit in test["fitted"].items():
            if unit == what:
                return str(place)
    return ""


def _at_defaults(job: Job) -> dict:
    """Returns the case of a job without what was learned before, and without other rates of causes."""
    case = job_alone.tested_case(job)
    for name in [name for name in case["rates"] if name in CLASSES or _is_learned(job, name)]:
        del case["rates"][name]
    case.pop("doubt", None)
    case["now"] = {"cleaned": job.cleaned_since_test, "repaired": job.repaired_since_test}
    return case


def _is_learned(job: Job, rate: str) -> bool:
    """Tells whether a rate came from the yard: nobody set it on the job, and no fault came and went."""
    is_own = rate in job.rates_ppm or (rate == "shows" and job.comes_and_goes)
    return rate in learned.rates(job) and not is_own


def _claim(case: dict) -> tuple[list[str], float]:
    """Returns what the tests before the first repair claim: (causes, chance), none without any repair."""
    tests = case["tests"]
    repairs = [n for n in range(len(tests)) if _is_repair(tests, n)]
    at = next(iter(repairs or [n for n in range(len(tests)) if tests[n]["cleaned"]]), 0)
    if not at:
        return [], 0.0
    before = dict(case, tests=tests[:at], now={})
    before["meter"] = [each for each in case["meter"] if each["generation"] == 1]
    belief = Belief(Model(read(before)))
    best = explanations.named(belief, explanations.likeliest(belief, _EXPLANATIONS))[0]
    return list(best["causes"]), best["probability"] / WHOLE


def _is_repair(tests: list[dict], n: int) -> bool:
    if tests[n]["repaired"]:
        return True
    seen = {unit for test in tests[:n] for unit in test["fitted"].values()}
    return bool(seen) and not set(tests[n]["fitted"].values()) <= seen


def _count(found: dict[str, list[int]], rate: str, hit: bool) -> None:
    hits, tries = found.get(rate, [0, 0])
    found[rate] = [hits + int(hit), tries + 1]


def _count_listening(job: Job, tests: list[dict], causes: list[str], found: dict[str, list[int]]) -> None:
    kinds = {place_of(cause, tests): cause.partition(":")[0] for cause in causes}
    for n, test in enumerate(tests):
        acting = acted_on(job, tests, n, causes) if "listen" in test else {}
        for place, heard in test.get("listen", {}).items():
            kind = _kind_at(job, place, kinds, test, causes)
            if acting.get(place) == 1 and kind not in {"", "blocked"}:
                _count(found, f"tick_{kind}", heard == "silent")
            elif place not in acting or kind == "blocked":
                _count(found, "tick_false", heard == "silent")


def _kind_at(job: Job, place: str, kinds: dict[str, str], test: dict, causes: list[str]) -> str:
    """Returns the class of the one cause that acts at a position."""
    if f"unit:{test['fitted'].get(place)}" in causes:
        return "unit"
    if kinds.get(place) in {"circuit", "blocked"}:
        return kinds[place]
    group = next((each["group"] for each in job.positions if each["id"] == place), None)
    return "feed" if group in kinds and kinds[group] == "feed" else "control" if "control" in causes else ""


def _count_meter(job: Job, causes: list[str], found: dict[str, list[int]]) -> None:
    for reading in readings.meter(job):
        later = f"#{reading['generation']}" if reading["generation"] > 1 else ""
        bad = f"circuit:{reading['position']}{later}" in causes
        _count(found, "meter_sees" if bad else "meter_false", reading["reads"] == "bad")
