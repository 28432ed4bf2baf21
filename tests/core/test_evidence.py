"""What carries a conclusion, the runner-up, and what tells the two apart."""

import random

import pytest

from server.core.evidence import discriminate
from server.core.evidence import leave_one_out
from server.core.plan.answer import reason
from tests.core.driver import Driver
from tests.core.random_cases import random_case
from tests.core.scenarios import SCENARIOS
from tests.core.scenarios import told

FIT = {"p": "A", "q": "B", "r": "C"}
EXCHANGED = {"p": "B", "q": "A", "r": "C"}
PLACES = [{"id": place, "group": "rear"} for place in "pqr"]
FOLLOWS = {
    "positions": PLACES,
    "tests": [{"fitted": FIT, "faulted": ["p"]}, {"fitted": EXCHANGED, "faulted": ["q"]}],
}


def weighed(case):
    return leave_one_out.evidence(case, reason(case))


def without(case, index):
    tests = [dict(test, heard=test.get("heard", True) and n != index) for n, test in enumerate(case["tests"])]
    return reason(dict(case, tests=tests))


def test_both_tests_carry_a_fault_that_followed():
    found = weighed(FOLLOWS)

    assert found["by"] == "verdict"
    assert [entry["effect"] for entry in found["tests"]] == ["weaker", "weaker"]
    assert found["tests"][1]["positions"] == ["q"]
    assert found["alone"]


def test_each_test_is_left_out_exactly():
    """Leaving out a test gives what the whole reasoning gives when its sounder was not heard."""
    tried = 0
    for seed in range(300):
        case = random_case(random.Random(seed))
        case["confidence"] = 0.6
        found = weighed(case)
        if not found or found["by"] != "verdict":
            continue
        for entry in found["tests"]:
            left = without(case, entry["test"])
            verdict = left["verdict"]
            stands = bool(verdict) and verdict["causes"] == found["causes"]
            assert (entry["effect"] == "stands") == stands
            if entry["effect"] == "weaker":
                assert left["explanations"][0]["causes"] == found["causes"]
            if entry["effect"] == "changes":
                assert left["explanations"][0]["causes"] == entry["causes"]
            assert entry["probability"] == left["explanations"][0]["probability"]
            tried += 1
    assert tried > 50


def test_a_test_made_twice_carries_nothing_alone():
    case = dict(FOLLOWS, tests=[FOLLOWS["tests"][0]] * 2 + [FOLLOWS["tests"][1]] * 2)
    assert [entry["effect"] for entry in weighed(case)["tests"]] == ["stands"] * 4


def test_a_meter_reading_carries_what_hangs_on_it():
    case = {
        "positions": PLACES,
        "tests": [{"fitted": FIT, "faulted": ["p"]}, {"fitted": EXCHANGED, "faulted": ["p"]}],
        "meter": [{"position": "p", "reads": "bad"}],
        "confidence": 0.98,
    }
    assert [entry["effect"] for entry in weighed(case)["meter"]] == ["weaker"]


def test_without_a_conclusion_there_is_nothing_to_carry():
    assert weighed({"positions": PLACES, "tests": [{"fitted": FIT, "faulted": ["p"]}]}) is None
    assert weighed({"positions": PLACES, "tests": [{"fitted": FIT}]}) is None


def test_the_runner_up_is_no_verdict_with_something_added():
    result = {
        "explanations": [
            {"causes": ["unit:A"], "probability": 9},
            {"causes": ["blocked:p", "unit:A"], "probability": 8},
            {"causes": ["circuit:p"], "probability": 7},
        ]
    }
    assert leave_one_out.runner_up(result, ["unit:A"])["causes"] == ["circuit:p"]


def test_an_exchange_tells_a_unit_from_its_wiring():
    case = {
        "positions": PLACES,
        "tests": [{"fitted": FIT, "faulted": ["p"]}],
        "minutes": {"meter": 60},
    }
    told_by = discriminate.apart(case, ["unit:A"], ["circuit:p"])["move"]

    assert told_by["move"] == "exchange"
    assert told_by["fitted"] == {"p": "B", "q": "A"}
    assert told_by["results"] == [{"faulted": ["q"]}, {"faulted": ["p"]}]


def test_what_is_measured_already_is_not_measured_again():
    case = {
        "positions": [{"id": "p"}],
        "tests": [{"fitted": {"p": "A"}, "faulted": ["p"]}],
        "meter": [{"position": "p", "reads": "good"}],
    }
    assert discriminate.apart(case, ["unit:A"], ["circuit:p"])["move"] is None


def test_a_blockage_that_is_gone_shows_the_same_as_nothing():
    case = dict(FOLLOWS, tests=[{"fitted": FIT, "faulted": ["p"]}, {"fitted": FIT, "cleaned": ["p"]}])
    assert discriminate.apart(case, ["blocked:p"], [])["same"]


@pytest.mark.parametrize("name", sorted(SCENARIOS))
def test_no_job_is_told_at_length(core, name):
    """Every scenario is told, in both hosts, with at most five results a move and no long sentence."""
    text = told(core, name, 6, step=True)
    rows = 0
    for line in text.splitlines():
        rows = rows + 1 if line.startswith("     - ") else 0
        assert rows <= 5
        assert len(line) < 260, line
        assert "  " not in line.strip().replace("WHY  ", "").replace("NOW  ", ""), line
        assert "None" not in line


def test_a_bad_meter_reading_beside_clean_tests_alone_is_told_as_that(core):
    job = Driver(core).begin()
    job.force("circuit_measured", position="rear-left-inner", check="ground", value="", reads="bad")
    job.test()
    reasoning = job.view()["reasoning"]
    assert reasoning["settled"]
    assert "Only the meter read bad: no test has shown a fault." in reasoning["detail"]
