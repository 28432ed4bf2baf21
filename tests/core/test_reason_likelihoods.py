"""A factor on the prior odds of a cause, as a trouble code's failure type gives it."""

import pytest

from tests.core.brute_force import Enumeration
from tests.hosts import CoreError

FOUR = ["a", "b", "c", "d"]


def case(*likelihoods, **more):
    return {
        "positions": [{"id": place, "group": "rear"} for place in FOUR],
        "units": [{"id": place.upper()} for place in FOUR],
        "tests": [{"fitted": {p: p.upper() for p in FOUR}, "faulted": ["a"]}],
        "likelihoods": [{"cause": cause, "factor": factor} for cause, factor in likelihoods],
        **more,
    }


def chances(answer):
    return {entry["cause"]: entry["probability"] / 1e9 for entry in answer["causes"]}


def test_the_odds_of_one_cause_by_hand(core):
    """One position, one fault: only unit, circuit, blocked, feed, control. Odds form of Bayes' rule.

    With `shows` 1 and no false alarm the prior odds are all there is. P(unit | at least one present):
    p(unit) / (1 - product of (1 - p)) = 0.05 / (1 - 0.95 * 0.995 * 0.99 * 0.999 * 0.999). With the
    circuit's odds 3 times as high its prior is 0.015 / (0.015 + 0.995) = 0.0148515.
    """
    one = {
        "positions": [{"id": "a", "group": "rear"}],
        "tests": [{"fitted": {"a": "A"}, "faulted": ["a"]}],
        "rates": {"shows": 1, "false_alarm": 0},
        "likelihoods": [{"cause": "circuit:a", "factor": 3}],
    }
    circuit = 0.015 / (0.015 + 0.995)
    any_present = 1 - 0.95 * (1 - circuit) * 0.99 * 0.999 * 0.999
    found = chances(core("reason", case=one))
    assert found["circuit:a"] == pytest.approx(circuit / any_present, abs=1e-9)
    assert found["unit:A"] == pytest.approx(0.05 / any_present, abs=1e-9)


@pytest.mark.parametrize(
    "tilts",
    [
        [("circuit:a", 3)],
        [("unit:A", 3.5), ("blocked:a", 0.2)],
        [("feed:rear", 10), ("control", 0.001)],
        [("unit:B", 1000)],
    ],
    ids=lambda tilts: "+".join(cause for cause, _ in tilts),
)
def test_agrees_with_the_enumeration_whose_priors_are_moved_beforehand(core, tilts):
    exact = Enumeration(case(meter=[]))
    for cause, factor in tilts:
        odds = exact.prior[cause] / (1 - exact.prior[cause]) * factor
        exact.prior[cause] = odds / (1 + odds)
    exact.weigh()
    found = chances(core("reason", case=case(*tilts)))
    assert found == pytest.approx(exact.marginals(), abs=1e-9)


def test_a_repaired_circuit_is_another_cause_that_the_code_says_nothing_of(core):
    done = {"fitted": {}, "cleaned": [], "repaired": ["circuit:a"]}
    found = chances(core("reason", case=case(("circuit:a", 100), now=done)))
    assert found["circuit:a#2"] == pytest.approx(0.005, abs=1e-9)
    assert found["circuit:a"] > 0.5


def test_a_factor_of_one_changes_nothing(core):
    assert core("reason", case=case(("unit:A", 1))) == core("reason", case=case())


@pytest.mark.parametrize(
    ("value", "field"),
    [
        pytest.param({}, "likelihoods", id="no list"),
        pytest.param([{"cause": "circuit:a"}], "likelihoods[0].factor", id="no factor"),
        pytest.param([{"cause": "circuit:x", "factor": 2}], "likelihoods[0].cause", id="position"),
        pytest.param([{"cause": "unit:Z", "factor": 2}], "likelihoods[0].cause", id="unit"),
        pytest.param([{"cause": "feed:front", "factor": 2}], "likelihoods[0].cause", id="group"),
        pytest.param([{"cause": "circuit:a#2", "factor": 2}], "likelihoods[0].cause", id="generation"),
        pytest.param([{"cause": 7, "factor": 2}], "likelihoods[0].cause", id="type"),
        pytest.param([{"cause": "control", "factor": 0}], "likelihoods[0].factor", id="nought"),
        pytest.param([{"cause": "control", "factor": True}], "likelihoods[0].factor", id="flag"),
        pytest.param(
            [{"cause": "control", "factor": 2}, {"cause": "control", "factor": 2}],
            "likelihoods[1].cause",
            id="twice",
        ),
    ],
)
def test_names_what_is_wrong_with_a_likelihood(core, value, field):
    with pytest.raises(CoreError) as caught:
        core("reason", case={**case(), "likelihoods": value})
    assert caught.value.field == field
