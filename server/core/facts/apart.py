"""What settles contradictions that no scan can settle: tests that may be one, a job closed meanwhile."""

from ..messages import all_of
from ..messages import message
from .fields import Names
from .kind import KEPT
from .kind import RECORDED
from .kind import Kind


def _tests_told_apart(state, event, job) -> None:
    """Note that tests which phones entered apart are told apart; who says that two are one takes one back."""
    named = event["data"]["tests"]
    for test in job["tests"]:
        if test["event"] in named:
            known = test.get("told", [])
            test["told"] = known + [each for each in named if each not in known + [test["event"]]]


def _work_went_on(state, event, job) -> None:
    job["reopened"] = None


def _tell_tests_told_apart(names, data) -> dict:
    tests = names.tests(data["tests"])
    return message("facts-tests-told-apart", tests=all_of(tests), count=len(tests))


KINDS = (
    Kind(
        "tests_told_apart",
        Names("tests"),
        does=_tests_told_apart,
        tells=_tell_tests_told_apart,
        after_closing=RECORDED,
    ),
    Kind(
        "work_went_on",
        does=_work_went_on,
        tells=("facts-work-went-on",),
        after_closing=KEPT,
    ),
)
