"""What the failure type of a trouble code says of the cause, as a factor on that cause's prior odds.

Structure of the code and the groups of failure types (first digit: 1 electrical, 7 mechanical ...)
are openly explained (SAE J2012 / ISO 15031-6). What a single failure type means is from memory, the
standard's own list is not open. How much a type counts is common practice, no source: a factor of
three moves a cause without deciding anything by itself, since a sensor that shorts inside reads as
a short on its wire too.
"""

from ..codes import troublecode
from ..messages import message
from ..parts.sort import Sort
from ..state.job import Job
from ..words import words
from . import readings

ELECTRICAL, INSIDE, BLOCKED = "electrical", "inside", "blocked"

_OPEN_SOURCE = message("evidence-type-open-source")
_MEMORY = message("evidence-type-memory")

# What single failure types speak for; what they mean is from memory.
_TYPES = {
    "11": ELECTRICAL,
    "12": ELECTRICAL,
    "13": ELECTRICAL,
    "14": ELECTRICAL,
    "15": ELECTRICAL,
    "49": INSIDE,
    "96": INSIDE,
    "97": BLOCKED,
}
# It says when the fault is there, not where.
_NO_PLACE = ("1F",)
_FACTORS = {ELECTRICAL: 3, INSIDE: 3, BLOCKED: 5}
_WHY = {
    ELECTRICAL: "evidence-why-electrical",
    INSIDE: "evidence-why-inside",
    BLOCKED: "evidence-why-blocked",
}


def meaning(failure_type: str, sort: Sort) -> dict | None:
    """Return what a failure type speaks for, how much and why; None when it says nothing."""
    kind = failure_type.upper()
    if kind in _TYPES:
        speaks_for, source = _TYPES[kind], _MEMORY
    elif len(kind) == 2 and kind[0] == "1" and kind not in _NO_PLACE:
        speaks_for, source = ELECTRICAL, _OPEN_SOURCE
    else:
        return None
    factor = _FACTORS[speaks_for]
    return {
        "speaks_for": speaks_for,
        "words": troublecode.words(kind),
        "factor": factor,
        "why": message(_WHY[speaks_for], factor=factor, sort=sort.identity, blocked=sort.obstruction.words),
        "source": source,
    }


def code_weights(job: Job) -> list[dict]:
    """Return what the codes of the tests that count speak for, one entry a cause and failure type.

    The same fault stores the same code in every test, so a code that is seen again says nothing new:
    of several codes that speak for one cause the first counts. After a repair of the circuit an
    earlier code spoke of the wire that was; codes stored later are left out, they name no new wire.
    """
    found, causes = [], []
    cases = readings.tests(job)
    repaired = []
    for index in range(len(cases)):
        test = cases[index]
        repaired = repaired + test["repaired"]
        # A type that is not of the open list means something else; whoever recorded before that was asked
        # was shown what it would mean.
        if not readings.counts(test) or not job.tests[index].get("open_list", True):
            continue
        for code in job.tests[index]["codes"]:
            place = code["position"]
            said = meaning(code["failure_type"], job.sort)
            if said is None or place not in test["faulted"]:
                continue
            cause = _cause(said["speaks_for"], place, test)
            if cause is None or cause in causes or cause in repaired:
                continue
            causes.append(cause)
            entry = dict(said)
            entry["position"] = place
            entry["name"] = words.position_name(job, place)
            entry["code"] = code["code"]
            entry["failure_type"] = code["failure_type"]
            entry["test"] = index + 1
            entry["cause"] = cause
            entry["on"] = job.code_counts(place)
            found.append(entry)
    return found


def likelihoods(job: Job) -> list[dict]:
    """Return the factors that are switched on, in the form of a case."""
    return [
        {"cause": entry["cause"], "factor": entry["factor"]}
        for entry in code_weights(job) + lamp_weights(job)
        if entry["on"]
    ]


def lamp_weights(job: Job) -> list[dict]:
    """Return what the lamps speak for: the control unit, until it was repaired.

    Common practice, no source. A lamp that stays on says only that some fault is present: no odds move.
    """
    if not job.sort.sounder or job.repairs_of("control"):
        return []
    return [
        {"cause": "control", "result": result, "factor": factor, "on": True}
        for when, result, factor in job.sort.sounder.controls
        if job.lamp(when) == result
    ]


def _cause(speaks_for: str, place: str, test: dict) -> str | None:
    """Return the cause that a code at a position speaks for; the unit that sat there in this test."""
    if speaks_for == ELECTRICAL:
        return "circuit:" + place
    if speaks_for == BLOCKED:
        return "blocked:" + place
    unit = test["fitted"].get(place)
    return "unit:" + unit if unit else None
