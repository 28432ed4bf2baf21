"""Evidence by the hundred: products far below the smallest float still give the exact answer."""

from fractions import Fraction

import pytest

from tests.hosts import CoreError


def exactly(faulted, clean, shows, alarm, priors):
    """Marginals of four causes of one position, in fractions."""
    names = sorted(priors)
    weights = {}
    for subset in range(2 ** len(names)):
        present = [name for n, name in enumerate(names) if subset >> n & 1]
        quiet = (1 - alarm) * (1 - shows) ** len(present)
        weight = (1 - quiet) ** faulted * quiet**clean
        for name in names:
            weight *= priors[name] if name in present else 1 - priors[name]
        weights[tuple(present)] = weight
    total = sum(weights.values())
    return {n: float(sum(w for p, w in weights.items() if n in p) / total) for n in names}


@pytest.mark.parametrize(
    ("faulted", "clean"), [(3, 2), (300, 10), (10, 300), (260, 330), (150, 400)], ids=str
)
def test_a_long_history_is_weighed_to_the_last_digit(core, faulted, clean):
    priors = {"unit:A": 0.05, "circuit:p": 0.005, "blocked:p": 0.01, "control": 0.001}
    tests = [{"fitted": {"p": "A"}, "faulted": ["p"]}] * faulted
    tests = tests + [{"fitted": {"p": "A"}, "faulted": []}] * clean
    case = {"positions": [{"id": "p"}], "units": [{"id": "A"}], "tests": tests}

    answer = core("reason", case=case)

    found = {entry["cause"]: entry["probability"] / 1e9 for entry in answer["causes"]}
    wanted = exactly(
        faulted,
        clean,
        Fraction(0.95),
        Fraction(0.002),
        {name: Fraction(prior) for name, prior in priors.items()},
    )
    assert found == pytest.approx(wanted, abs=1e-9)


def test_readings_that_rule_each_other_out_are_bad_input(core):
    """With faults that always show and no false alarm, fault and clean cannot both be."""
    case = {
        "positions": [{"id": "p"}],
        "units": [{"id": "A"}],
        "tests": [
            {"fitted": {"p": "A"}, "faulted": ["p"]},
            {"fitted": {"p": "A"}, "faulted": []},
        ],
        "rates": {"shows": 1, "false_alarm": 0},
    }

    with pytest.raises(CoreError) as caught:
        core("reason", case=case)

    assert caught.value.field == "tests"
