"""Proof: clean tests until clear reaches the confidence asked for, counted so that it can be shown."""

import math

from . import words

_RELIABILITY = 0.9  # shown beside it for those who think in success runs; a choice of ours


def proof(job: dict, result: dict | None) -> dict:
    """Return the clean tests in a row, how sure they make it, and the success run beside it, in words."""
    clear = result["clear"] if result else 0
    wanted = job["confidence_ppm"] * 1000
    in_a_row = _clean_in_a_row(job, result)
    settled = result is not None and clear >= wanted
    run = success_run(job["confidence_ppm"] / 1000000, _RELIABILITY)
    sentence = ""
    if result:
        sentence = "{} in a row. Nothing left to fix: {} sure, {} wanted.".format(
            "1 clean test" if in_a_row == 1 else "{} clean tests".format(in_a_row),
            words.percent(clear),
            words.percent(wanted),
        )
    return {
        "clean_in_a_row": in_a_row,
        "clear_words": words.percent(clear),
        "wanted_words": words.percent(wanted),
        "settled": settled,
        "sentence": sentence,
        "success_run": run,
        "run_words": "Counted as a success run: {} clean tests in a row show {} reliability at {} "
        "confidence.".format(run, words.percent(int(_RELIABILITY * 1000000000 + 0.5)), words.percent(wanted)),
    }


def success_run(confidence: float, reliability: float) -> int:
    """Return the clean tests in a row that show `reliability` at `confidence`.

    n = ln(1 − C) / ln(R), rounded up (success-run theorem); not the variant with one less that a
    uniform prior gives. Both between 0 and 1, exclusive.
    """
    exact = math.log(1.0 - confidence) / math.log(reliability)
    whole = int(exact)
    return whole if exact - whole < 0.000000001 else whole + 1


def _clean_in_a_row(job, result) -> int:
    aside = {}
    if result:
        aside = {entry["test"]: True for entry in result["ignored"]}
    count = 0
    for index in range(len(job["tests"]) - 1, -1, -1):
        if index in aside:
            continue
        if job["tests"][index]["faulted"]:
            break
        count += 1
    return count
