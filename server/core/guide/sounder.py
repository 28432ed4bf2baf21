"""The steps while nothing proves that the self-test ran: a decision table over lamps and sounder.

Which check comes first hangs on what the lamps showed (`Sounder.order` of the sort of part): a lamp that
never comes on speaks of supply and fuse, one that stays on or flashes of a control unit that is alive. A
test that was not heard says nothing of the positions, so none of this touches their causes.
"""

from ..facts.draft import draft
from ..messages import all_of
from ..messages import message
from ..parts.sort import Sounder
from ..state.job import Job
from . import repairing
from . import testing
from .step import ask_for_help
from .step import step


def unproven(job: Job) -> dict | None:
    """Return the step after a test whose sounder was not heard, None where the latest test was heard.

    After tests that were heard before, one more try comes first.
    """
    unheard, table = _unheard(job), job.sort.sounder
    if not unheard or table is None:
        return None
    if unheard == 1 and len(job.tests) > 1:
        return testing.test_step(job, job.sort.says("guide-test-again"))
    since = len(job.tests) - unheard
    done = [entry for entry in job.sounder_checks if entry["tests_before"] > since]
    if done and done[-1]["found"] == "mended" and done[-1]["tests_before"] == len(job.tests):
        return testing.test_step(job, job.sort.says("guide-test-again"))
    told = {entry["check"]: entry["found"] for entry in done if entry["found"] != "mended"}
    order = _order(job, table)
    # What was just put right is asked about last: it was not all that is wrong.
    mended = [entry["check"] for entry in done if entry["found"] == "mended"]
    left = [check for check in order if check not in told]
    left = [check for check in left if check not in mended] + [check for check in left if check in mended]
    if not left:
        untold = [check for check in order if told[check] == "unclear"]
        return _untold(job, table, untold) if untold else _rest(job, table, unheard)
    return _check(job, table, left[0], len(done) + 1, len(done) + len(left))


def _unheard(job: Job) -> int:
    """Return how many tests at the end were not heard, one after the other."""
    count = 0
    for test in reversed(job.tests):
        if test["heard"]:
            break
        count += 1
    return count


def _order(job: Job, table: Sounder) -> tuple:
    """Return the ids of the checks, first the one that the lamps speak for."""
    for when, result, order in table.order:
        if when == "" or job.lamp(when) == result:
            return order
    return ()


def _check(job: Job, table: Sounder, identity: str, now: int, total: int) -> dict:
    check = _by_id(table)[identity]
    choices = [
        {
            "words": said,
            "events": [draft("sounder_checked", check=identity, found=found)],
        }
        for found, said in (
            ("good", check["good"]),
            ("mended", message("guide-sounder-mended")),
            ("unclear", message("guide-sounder-unclear")),
        )
    ]
    return step(
        "sounder." + identity,
        job.sort.says("guide-sounder-title", check=check["title"]),
        check["text"],
        form="choices",
        choices=choices,
        also=[testing.again(job)],
        progress={"now": now, "total": total, "word": message("guide-progress-check")},
    )


def _by_id(table: Sounder) -> dict:
    return {each["id"]: each for each in table.checks}


def _untold(job: Job, table: Sounder, untold: list[str]) -> dict:
    """All was gone through, and some of it nobody could tell: that is open, so nothing is left over yet."""
    checks = [_by_id(table)[check] for check in untold]
    choices = [
        {
            "words": check["good"],
            "events": [draft("sounder_checked", check=check["id"], found="good")],
        }
        for check in checks
    ]
    return step(
        "sounder.untold",
        job.sort.says("guide-sounder-untold-title"),
        message("guide-sounder-untold", checks=all_of([check["title"] for check in checks])),
        form="choices",
        choices=[ask_for_help()] + choices,
        also=[testing.again(job)],
    )


def _rest(job: Job, table: Sounder, unheard: int) -> dict:
    """All was gone through: the control unit is left, where there is one, or somebody who knows more.

    Once the control unit was done, too, it is not named as what is left.
    """
    choices, text = [ask_for_help()], table.rest
    if "control" not in job.sort.without:
        control = repairing.choice(job, "control", message("guide-sounder-control"))
        if job.repairs_of("control"):
            choices.append(control)
            text = message("guide-sounder-rest-repaired")
        else:
            choices.insert(0, control)
    return step(
        "sounder.rest",
        job.sort.says("guide-sounder-rest-title", count=unheard),
        text,
        form="choices",
        choices=choices,
        also=[testing.again(job)],
    )
