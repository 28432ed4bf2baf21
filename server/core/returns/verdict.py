"""What proves that the unit is bad: a verdict that names it, from tests that were seen to run."""

from .. import phrases
from ..evidence import verdict as verdicts
from .check import check


def look(state, case):
    """Refuse where the verdict names another cause; hold where there is none."""
    unit, job, result = case["unit"], case["job"], case["result"]
    if unit is None or case["unknown"]:
        return None
    tested = [test for test in job.tests if unit["id"] in test["fitted"].values()] if job else []
    if result is None or not tested:
        return check("hold", "No test of it is on record", "Nothing on record proves that it is bad.")
    said = verdicts.reasoning(job, result)
    if result["verdict"] is None:
        return check("hold", "Not proven that it is bad", (said["sentence"] + " " + said["detail"]).strip())
    named = [state.now(cause[5:]) for cause in result["verdict"]["causes"] if cause[:5] == "unit:"]
    if unit["id"] not in named:
        return check("fail", "The record blames something else", said["sentence"])
    return check(
        "pass",
        "Proven bad",
        "{} {} sure. {}".format(
            said["sentence"], phrases.sentence_case(said["confidence_words"]), said["carries_words"]
        ).strip(),
    )
