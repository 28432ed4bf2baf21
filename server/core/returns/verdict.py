"""What proves that the unit is bad: a verdict that names it, from tests that were seen to run."""

from ..evidence import verdict as verdicts
from ..messages import message
from ..messages import sentences
from .check import check


def look(state, case):
    """Refuse where the verdict names another cause; hold where there is none."""
    unit, job, result = case["unit"], case["job"], case["result"]
    if unit is None or case["unknown"]:
        return None
    tested = [test for test in job.tests if unit["id"] in test["fitted"].values()] if job else []
    if result is None or not tested:
        return check("hold", message("returns-verdict-no-test-title"), message("returns-verdict-no-test"))
    said = verdicts.reasoning(job, result)
    if result["verdict"] is None:
        return check(
            "hold", message("returns-verdict-not-title"), sentences([said["sentence"], said["detail"]])
        )
    named = [state.now(cause[5:]) for cause in result["verdict"]["causes"] if cause[:5] == "unit:"]
    if unit["id"] not in named:
        return check("fail", message("returns-verdict-else-title"), said["sentence"])
    return check(
        "pass",
        message("returns-verdict-title"),
        sentences(
            [
                said["sentence"],
                message("returns-verdict-sure", share=said["confidence_words"]),
                said["carries_words"],
            ]
        ),
    )
