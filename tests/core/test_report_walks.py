"""The customer's report of generated jobs: the car's faults alone, one story, and every change that stayed.

Looked at by the ids of the messages and what stands in them, not by their words.
"""

import random

import pytest
from hypothesis import HealthCheck
from hypothesis import Phase
from hypothesis import given
from hypothesis import settings
from hypothesis import strategies as st

from tests.core.test_comeback import Yard
from tests.core.test_comeback import home
from tests.core.walker import Walker
from tests.core.walker import quick_core
from tests.said import english

LEFT, OUTER, INNER = "rear-left-outer", "rear-right-outer", "rear-right-inner"
FAULTS = [f"unit:v1.{OUTER}", f"unit:v1.{INNER}", "circuit:" + OUTER, "blocked:" + INNER]
SPARE = "u0000000spare"
MANY = ("views-report-several", "views-report-several-over")


def messages(value):
    """Yield every message in an answer, those inside others too."""
    if isinstance(value, dict):
        if "msg" in value:
            yield value
        for each in value.values():
            yield from messages(each)
    elif isinstance(value, list):
        for each in value:
            yield from messages(each)


def ids(value):
    return [each["msg"] for each in messages(value)]


def look(core, job):
    """Hold a report to what the state and the reasoning say."""
    report, reasoned = core("report", job=job), core("reasoned", job=job)
    facts = core("state")
    opened = facts["jobs"][job]["at_opening"]
    named = reasoned["verdict"]["causes"] if reasoned and reasoned["verdict"] else []
    mixed = any(each["open"] for each in facts["mixed"])
    own = [each for each in named if not each.startswith("unit:") or each[5:] in opened]
    if not mixed:
        # The headline counts the car's own faults; each is told, and each spare as a spare.
        assert (report["headline"]["msg"] in MANY) == (len(own) > 1)
        assert ids(report["found"]).count("views-report-spare") == len(named) - len(own)
        changes(facts, job, report)
    other = [each for each in messages(report["sure"]) if each["msg"] == "views-report-else"]
    assert len(other) <= 1
    if other:
        # What else it could be leaves out something that is told, and names no spare.
        told = [frozenset(each["causes"]) for each in reasoned["explanations"]]
        own_sets = [
            frozenset(c for c in each if not c.startswith("unit:") or c[5:] in opened) for each in told
        ]
        assert own
        assert mixed or any(each and set(own) - each for each in own_sets)
    return report


def changes(facts, job, report):
    """Each position where another unit sits than at first, and each unit that is gone, is told once."""
    vehicle = facts["vehicles"][facts["jobs"][job]["vehicle"]]
    opened = facts["jobs"][job]["at_opening"]
    holds = {place: unit for place, unit in vehicle["holds"].items() if unit}
    said = ids(report["replaced"])
    fresh = [unit for unit in holds.values() if unit not in opened]
    moved = [place for place, unit in holds.items() if unit in opened and unit != f"v1.{place}"]
    gone = [unit for unit in opened if unit not in holds.values()]
    assert said.count("views-summary-new") == len(fresh)
    assert said.count("views-summary-moved") == len(moved)
    assert said.count("views-summary-off") == len(gone)


@given(seed=st.integers(0, 2**32), faults=st.lists(st.sampled_from(FAULTS), max_size=2, unique=True))
@settings(
    max_examples=12,
    deadline=None,
    derandomize=True,
    phases=[Phase.explicit, Phase.generate],
    suppress_health_check=[HealthCheck.too_slow],
)
def test_the_report_of_any_walk_tells_one_story(seed, faults):
    chance, walker = random.Random(seed), Walker(faults)
    for _ in range(chance.randint(5, 45)):
        if walker.view["closed"]:
            break
        answers = walker.answers()
        honest = chance.random() < 0.8
        walker.do(answers[0] if honest else chance.choice(answers))
    look(walker.driver.core, walker.driver.job)
    if not walker.view["closed"]:
        walker.finish()
    look(walker.driver.core, walker.driver.job)


def with_a_bad_spare(core):
    """Fit a spare of the yard that is as bad as the sensor it stands in for, then a good one."""
    yard = Yard(core)
    yard.come(1)
    yard.test(OUTER)
    yard.move(home(OUTER), "out", OUTER)
    yard.force("unit_added", unit=SPARE, part="PS-1", serial="", code="", how="tapped", place="out")
    yard.move(SPARE, "fitted", OUTER)
    yard.force_test(OUTER)
    yard.move(SPARE, "out", OUTER)
    yard.move(home(INNER), "out", INNER)
    yard.move(home(INNER), "fitted", OUTER)
    yard.move(SPARE, "fitted", INNER)
    yard.force_test(INNER)
    yard.move(SPARE, "out", INNER)
    yard.move(home(LEFT), "out", LEFT)
    yard.move(home(LEFT), "fitted", INNER)
    yard.move(home(OUTER), "fitted", LEFT)
    yard.force_test(LEFT)
    for _ in range(2):
        yard.force_test(LEFT)
    yard.move(home(OUTER), "out", LEFT)
    yard.force("unit_added", unit="u000000good1", part="PS-1", serial="", code="", how="tapped", place="out")
    yard.move("u000000good1", "fitted", LEFT)
    yard.force_test()
    return yard


def test_a_bad_spare_of_the_yard_is_told_as_such_and_is_no_second_fault(core):
    yard = with_a_bad_spare(core)
    named = core("reasoned", job=yard.job)["verdict"]["causes"]
    assert sorted(named) == sorted(["unit:" + SPARE, "unit:" + home(OUTER)])
    report = core("report", job=yard.job)
    assert english(report["headline"]) == "One of the parking sensors was bad and has been taken out."
    spare = [english(each) for each in report["found"] if "spare" in english(each)]
    assert len(spare) == 1
    assert "It was no fault of your vehicle." in spare[0]
    assert "spare" not in english(report["sure"])


@pytest.mark.parametrize("close", [False, True])
def test_every_change_that_stayed_is_told_also_one_after_the_last_test(close):
    core = quick_core()
    yard = with_a_bad_spare(core)
    yard.move(home(INNER), "out", OUTER)
    yard.move(home(LEFT), "out", INNER)
    yard.move(home(INNER), "fitted", INNER)
    yard.move(home(LEFT), "fitted", OUTER)
    if close:
        yard.force("job_closed", note="")
    report = look(core, yard.job)
    assert ids(report["replaced"]).count("views-summary-moved") == 1
    assert ids(report["replaced"]).count("views-summary-off") == 1
