"""The parts of the planner beside what others publish: entropy, the order of checks, the optimum."""

import itertools
import random

import pytest
import scipy.stats

from server.core.infer.entropy import bits
from server.core.infer.ordering import by_chance_per_minute
from tests.bench.planner_optimum import Board

# MacKay, Information Theory, Inference and Learning Algorithms (2003), section 4.1: twelve balls, one
# of them odd, k put against k on the scales; reference from memory, figures computed.
BALLS = {1: 0.8167, 2: 1.2516, 3: 1.5, 4: 1.58496, 5: 1.4834, 6: 1.0}


@pytest.mark.parametrize("each", BALLS)
def test_weighing_balls_is_worth_what_mackay_says(each):
    found = bits([each / 12, each / 12, (12 - 2 * each) / 12])

    assert found == pytest.approx(BALLS[each], abs=5e-5)
    assert bits([1 / 24] * 24) == pytest.approx(4.585, abs=5e-4)


def test_entropy_is_that_of_scipy():
    draws = random.Random(5)
    for _ in range(300):
        weights = [draws.random() ** draws.choice([1, 4, 12]) for _ in range(draws.randint(1, 30))]
        shares = [weight / sum(weights) for weight in weights]
        assert bits(shares) == pytest.approx(float(scipy.stats.entropy(shares, base=2)), abs=1e-9)


def test_play_tennis_is_as_doubtful_as_quinlan_says():
    """Nine days of fourteen: 0.940 bit (Quinlan 1986; Mitchell, Machine Learning, chapter 3)."""
    assert bits([9 / 14, 5 / 14]) == pytest.approx(0.9403, abs=5e-5)


def expected_cost(order, chances, costs):
    """One fault, each check sees its own for sure: pay for each check until the fault is found."""
    left = sum(chances)
    paid = 0.0
    for n in order:
        paid += costs[n] * left
        left -= chances[n]
    return paid


def test_the_order_of_checks_is_the_cheapest_of_an_own_example():
    chances, costs = [0.5, 0.3, 0.2], [10, 3, 1]

    assert by_chance_per_minute(chances, costs) == [2, 1, 0]
    found = {
        order: expected_cost([("abc").index(letter) for letter in order], chances, costs)
        for order in ("abc", "acb", "bac", "cab", "bca", "cba")
    }
    wanted = {"abc": 11.7, "acb": 11.4, "bac": 10.2, "cab": 9.9, "bca": 8.7, "cba": 8.4}
    assert found == pytest.approx(wanted)


def test_the_order_of_checks_is_the_cheapest_of_all_permutations():
    """Mitten 1960; Heckerman, Breese & Rommelse, CACM 38(3) 1995: by falling chance over cost."""
    draws = random.Random(11)
    for _ in range(400):
        size = draws.randint(2, 6)
        weights = [draws.random() for _ in range(size)]
        chances = [weight / sum(weights) for weight in weights]
        costs = [draws.uniform(0.5, 20) for _ in range(size)]
        best = min(expected_cost(o, chances, costs) for o in itertools.permutations(range(size)))
        assert expected_cost(by_chance_per_minute(chances, costs), chances, costs) == pytest.approx(
            best, rel=1e-7
        )


def test_a_check_that_costs_nothing_comes_first():
    assert by_chance_per_minute([0.5, 0.01, 0.3], [2, 0, 1]) == [1, 2, 0]


@pytest.mark.parametrize("reach", [[3, 3, 3, 3], [3, 2, 2, 3], [6, 1, 2, 4]], ids=str)
def test_the_next_move_is_near_the_optimum_by_dynamic_programming(reach):
    """Two sets of positions of each board; the whole of it is in tests/bench/planner.py."""
    board = Board(reach)
    for _, faulted, state in board.starts():
        if faulted in ((0,), (2,), (0, 1), (1, 3)):
            mine = board.planned(state, board.case(faulted))
            best = board.optimum(state)
            # Looked at to the end, both suspects too; what is below the hundredth is rounding.
            assert best - 1e-9 <= mine <= 1.01 * best
