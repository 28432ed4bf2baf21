"""The reasoning beside an enumeration of all causes that was written from the formulas alone."""

import functools
import json
import random

import pytest

from tests.core.brute_force import Enumeration
from tests.core.random_cases import random_case
from tests.core.random_cases import with_listening

CLOSE = 1e-9  # figures are rounded to parts per billion
BLOCKS = range(0, 120, 20)


@pytest.mark.parametrize("first", BLOCKS, ids=[f"from {first}" for first in BLOCKS])
def test_agrees_with_the_enumeration_on_random_cases(core, first):
    for seed in range(first, first + 20):
        check_all(core, random_case(random.Random(seed)))


@pytest.mark.parametrize("first", range(0, 60, 20))
def test_agrees_with_the_enumeration_where_somebody_listened(core, first):
    for seed in range(first, first + 20):
        dice = random.Random(seed)
        check_all(core, with_listening(random_case(dice), dice))


def check_all(core, case):
    exact = enumerated(json.dumps(case))

    answer = core("reason", case=case)

    check_causes(answer, exact)
    check_explanations(answer, exact)
    check_verdict(answer, exact, case["confidence"])
    assert answer["clear"] / 1e9 == pytest.approx(exact.clear(), abs=CLOSE)
    assert [entry["test"] for entry in answer["ignored"]] == exact.ignored


@functools.lru_cache(maxsize=40)
def enumerated(case):
    """Return the enumeration of a case; the second host is held against the same one."""
    return Enumeration(json.loads(case))


def check_causes(answer, exact):
    found = {entry["cause"]: entry["probability"] / 1e9 for entry in answer["causes"]}
    assert found == pytest.approx(exact.marginals(), abs=CLOSE)
    shown = [entry["probability"] for entry in answer["causes"]]
    assert shown == sorted(shown, reverse=True)


def check_explanations(answer, exact):
    """All that are listed are exact; what is not listed is no likelier, and is accounted for."""
    wanted = exact.explanations()
    listed = {tuple(e["causes"]): e["probability"] / 1e9 for e in answer["explanations"]}
    assert listed == pytest.approx({causes: wanted[causes] for causes in listed}, abs=CLOSE)
    left = [wanted[causes] for causes in wanted if causes not in listed]
    assert max(left, default=0) <= min(listed.values()) + CLOSE
    if "unlisted" in answer:
        assert answer["unlisted"] / 1e9 == pytest.approx(sum(left), abs=CLOSE)
    else:
        assert max(left, default=0) < CLOSE


def check_verdict(answer, exact, confidence):
    """Without what the assumptions say of it, for which there is test_holds."""
    causes, probability = max(exact.explanations().items(), key=lambda entry: entry[1])
    holds = answer["holds"]["lowest"] / 1e9 >= 1 - 2 * (1 - confidence)
    if causes and probability >= confidence and holds:
        assert tuple(answer["verdict"]["causes"]) == causes
        assert answer["verdict"]["probability"] / 1e9 == pytest.approx(probability, abs=CLOSE)
    else:
        assert answer["verdict"] is None


def test_the_example_of_the_design_is_read_as_it_stands(core):
    case = {
        "positions": [{"id": "rear-right-outer", "group": "rear", "reach_minutes": 3}],
        "units": [{"id": "A", "prior": 0.05}],
        "tests": [
            {
                "fitted": {"rear-right-outer": "A"},
                "faulted": ["rear-right-outer"],
                "cleaned": [],
                "repaired": [],
                "unplugged": [],
                "silent": [],
                "heard": True,
            }
        ],
        "meter": [{"position": "rear-right-outer", "reads": "good"}],
        "now": {"fitted": {"rear-right-outer": "N"}, "cleaned": [], "repaired": []},
        "rates": {"unit": 0.05},
        "confidence": 0.95,
    }
    seen = dict(case, units=[{"id": "A", "prior": 0.05}, {"id": "N"}])
    exact = Enumeration(seen)

    answer = core("reason", case=case)

    check_causes(answer, exact)
    check_explanations(answer, exact)
    assert answer["clear"] / 1e9 == pytest.approx(exact.clear(), abs=CLOSE)


def test_one_shown_fault_gives_the_figure_of_the_design(core):
    """Four at the rear, one faulted: the sensor of the faulted position has 0.74."""
    places = ["a", "b", "c", "d"]
    case = {
        "positions": [{"id": place, "group": "rear"} for place in places],
        "units": [{"id": place.upper()} for place in places],
        "tests": [{"fitted": {p: p.upper() for p in places}, "faulted": ["a"]}],
        "meter": [],
    }

    answer = core("reason", case=case)

    check_causes(answer, Enumeration(case))
    assert answer["explanations"][0]["causes"] == ["unit:A"]
    assert round(answer["explanations"][0]["probability"] / 1e9, 4) == 0.7439
