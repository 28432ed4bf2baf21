"""Proof: clean tests until clear reaches the confidence asked for, counted so that it can be shown."""

import math

from ..facts.evidence import AT_ONCE
from ..facts.evidence import PROVOKED
from ..facts.evidence import provoked_words
from ..infer import holds
from ..infer.belief import Belief
from ..infer.case import NOBODY
from ..infer.case_form import read
from ..infer.figures import parts
from ..infer.model import Model
from ..infer.variations import CLEAR
from ..infer.variations import Variations
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..messages import sentences
from ..state.job import Job
from . import readings
from . import retaken
from . import tests_so_far

# Nobody tests more often than this in a row; beyond it the count is no longer said.
_MOST_TESTS = 60


def ahead(case: dict, result: dict) -> dict | None:
    """Return {"more", "shows"}: how many more clean tests it is expected to take, None if not asked.

    `more` is the smallest number of clean tests that, added to the case as it stands, bring clear to
    the confidence, and let it survive its assumptions; None when more than `_MOST_TESTS` would be
    needed. `shows` is how often a fault that is there shows in a test. Not asked when no fault was
    seen, or a fault was just seen and nothing was done about it, or a position is empty.
    """
    checked = read(case)
    confidence = parts(checked.confidence)
    if holds.is_clear(result, confidence):
        return None
    model = Model(checked)
    if not model.faults or NOBODY in model.fitted or (model.last_faulted and not model.changed):
        return None
    # A clean test only counts once more for each cause that acts on a position (see belief.py).
    acting = [model.parents(place, False) for place in range(len(model.fitted))]
    enough, short = 1, 0
    counts = list(model.clean)
    while not _is_clear(model, counts, acting, enough):
        if enough >= _MOST_TESTS:
            return {"more": None, "shows": checked.rates["shows"]}
        enough, short = min(enough * 2, _MOST_TESTS), enough
    while enough - short > 1:
        middle = (enough + short) // 2
        if _is_clear(model, counts, acting, middle):
            enough = middle
        else:
            short = middle
    return {"more": enough, "shows": checked.rates["shows"]}


def _is_clear(model, counts, acting, tests) -> bool:
    """Tell whether so many clean tests more would do, under every variation too."""
    model.clean = list(counts)
    for parents in acting:
        for cause in parents:
            model.clean[cause] += tests
    belief = Belief(model)
    confidence = parts(model.case.confidence)
    if parts(belief.absent(model.live())) < confidence:
        return False
    return holds.survives(Variations(belief), CLEAR, confidence, model.case.doubt)


def proof(job: Job, result: dict | None) -> dict:
    """Return the clean tests in a row, how sure they make it, and the success run beside it, in messages.

    `result` may hold what `ahead` gives, under "proof".
    """
    clear = result["clear"] if result else 0
    wanted = job.confidence_ppb
    in_a_row = clean_in_a_row(job, result)
    settled = result is not None and holds.is_clear(result, wanted) and not retaken.owed(job)
    coming = result.get("proof") if result else None
    return {
        "clean_in_a_row": in_a_row,
        "clear_words": percent(clear),
        "wanted_words": percent(wanted),
        "settled": settled,
        "more": coming["more"] if coming else None,
        "sentence": _sentence(job, result, in_a_row, wanted, coming) if in_a_row and result else "",
        "run_words": _run_words(job, coming) if coming and in_a_row else "",
    }


def _sentence(job, result, in_a_row, wanted, coming) -> dict:
    clear = result["clear"]
    said = [_against(job, result, in_a_row)]
    at_once = [test for test in _clean(job, result) if test.get("provoked") == AT_ONCE]
    if job.comes_and_goes and at_once:
        said.append(message("evidence-proof-at-once", count=len(at_once)))
    said.append(message("evidence-proof-left", share=percent(clear), wanted=percent(wanted)))
    if coming and coming["more"] is None:
        said.append(message("evidence-proof-not-soon"))
    elif coming:
        said.append(message("evidence-proof-more", count=coming["more"]))
    return sentences(said)


def _against(job: Job, result: dict, in_a_row: int) -> dict:
    """Return how many clean tests there are, and what brought no fault out."""
    done = against(job, result)
    if not done:
        return message("evidence-proof", count=in_a_row)
    return message("evidence-proof-against", count=in_a_row, against=all_of(done))


def against(job: Job, result: dict | None) -> list[dict]:
    """Return what the last clean tests came after, each once, in words."""
    done = [test.get("provoked") for test in _clean(job, result)]
    return [provoked_words(what) for what in PROVOKED if what != AT_ONCE and what in done]


def _run_words(job, coming) -> dict:
    """Say what the success run asks for, and what that means."""
    reliability = 1.0 - coming["shows"]
    run = success_run(job.confidence_ppm / 1000000, reliability) if reliability > 0 else 1
    often = message("evidence-run-half")
    if coming["shows"] != 0.5:
        often = message("evidence-run-share", share=percent(int(coming["shows"] * 1000000000 + 0.5)))
    return message("evidence-run", count=run, often=often, share=percent(job.confidence_ppb))


def run_of(job: Job) -> int:
    """Return the clean tests in a row after which a fault would have shown, as sure as the job asks."""
    shows = readings.all_rates(job)["shows"]
    return success_run(job.confidence_ppm / 1000000, 1.0 - shows) if shows < 1.0 else 1


def success_run(confidence: float, reliability: float) -> int:
    """Return the clean tests in a row that show `reliability` at `confidence`.

    n = ln(1 − C) / ln(R), rounded up (success-run theorem); not the variant with one less that a
    uniform prior gives. Both between 0 and 1, exclusive. A fault that shows in a share of the tests
    leaves a reliability of one minus that share.
    """
    exact = math.log(1.0 - confidence) / math.log(reliability)
    whole = int(exact)
    return whole if exact - whole < 0.000000001 else whole + 1


def clean_in_a_row(job: Job, result: dict | None) -> int:
    """Return how many of the last tests that count showed no fault."""
    return len(_clean(job, result))


def fresh_in_a_row(job: Job, result: dict | None) -> int:
    """Return how many of them count in full: not run straight after another."""
    return len([test for test in _clean(job, result) if test.get("provoked") != AT_ONCE])


def _clean(job: Job, result: dict | None) -> list[dict]:
    """Return the last tests that count and showed no fault, the latest first."""
    found = []
    for index in tests_so_far.counted(job, result)[::-1]:
        if job.tests[index]["faulted"]:
            break
        found.append(job.tests[index])
    return found
