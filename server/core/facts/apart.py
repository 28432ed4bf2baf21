"""What settles contradictions that no scan can settle: tests that may be one, a job closed meanwhile."""

from ..messages import all_of
from ..messages import message
from .fields import Names
from .kind import KEPT
from .kind import RECORDED
from .kind import Kind


def _tests_told_apart(state, event, job) -> None:
    """Let tests that two phones entered apart count as tests of their own."""
    for test in job["tests"]:
        if test["event"] in event["data"]["tests"]:
            test.pop("apart", None)


def _work_went_on(state, event, job) -> None:
    job["reopened"] = None


def _tell_tests_told_apart(names, data) -> dict:
    return message("facts-tests-told-apart", tests=all_of(names.tests(data["tests"])))


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
