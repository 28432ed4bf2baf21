"""Minimal explanations against published diagnoses: circuits of the literature told as bumpers.

A conflict of the literature (not all of these parts work) is a faulted reading over its parents. With
`shows` 1 and `false_alarm` 0 the explanations that are possible at all are exactly the diagnoses.
"""

import itertools
import random

import pytest

from server.core.infer.explanations import minimal

CERTAIN = {"shows": 1, "false_alarm": 0, "blocked": 0}

# Three multipliers, two adders; A=3 B=2 C=2 D=3 E=3, F observed 10 where 12 is predicted, G 12 as
# predicted. de Kleer and Williams, "Diagnosing Multiple Faults", Artificial Intelligence 32 (1987)
# 97-130. Conflicts {A1,M1,M2} and {A1,A2,M1,M3}; minimal candidates as below.
POLYBOX = {
    "positions": [{"id": "f", "group": "g"}, {"id": "g", "group": "g"}],
    "units": [{"id": "never", "prior": 0}, {"id": "A2", "prior": 0.01}],
    "tests": [{"fitted": {"f": "never", "g": "A2"}, "faulted": ["f", "g"]}],
    "rates": {**CERTAIN, "circuit": 0.01, "feed": 0.01, "control": 0.01},
}
POLYBOX_NAMES = {"control": "A1", "feed:g": "M1", "circuit:f": "M2", "circuit:g": "M3", "unit:A2": "A2"}
POLYBOX_MINIMAL = ["A1", "A2 M2", "M1", "M2 M3"]

# Inputs 1 and 0, carry-in 1; observed sum 1 and carry-out 0. Reiter, "A Theory of Diagnosis from
# First Principles", Artificial Intelligence 32 (1987) 57-95. Conflicts {X1,X2} and {X1,A2,O1}.
# X1 is a sensor that shows the fault at both positions, the others stay where they are.
ADDER = {
    "positions": [{"id": "p"}, {"id": "q", "group": "g"}],
    "units": [{"id": "X1", "prior": 0.01}],
    "tests": [{"fitted": {"p": "X1"}, "faulted": ["p"]}, {"fitted": {"q": "X1"}, "faulted": ["q"]}],
    "rates": {**CERTAIN, "circuit": 0.01, "feed": 0.01, "control": 0},
}
ADDER_NAMES = {"unit:X1": "X1", "circuit:p": "X2", "circuit:q": "A2", "feed:g": "O1"}
ADDER_MINIMAL = ["A2 X2", "O1 X2", "X1"]  # of 11: eight with X1, three without

# The family of the HS-tree figure in the same paper; the family from memory, the answer below is
# that of a general hitting-set solver.
REITER = [[2, 4, 5], [1, 2, 3], [1, 3, 5], [2, 4, 6], [2, 4], [2, 3, 5], [1, 6]]
REITER_MINIMAL = [[1, 2], [1, 3, 4], [1, 4, 5], [2, 3, 6], [2, 5, 6], [3, 4, 6]]

# A conflict that contains another: naive pruning of the tree loses a set. Greiner, Smith and
# Wilkerson, "A Correction to the Algorithm in Reiter's Theory of Diagnosis", Artificial
# Intelligence 41 (1989); the family from memory.
GREINER = [["a", "b"], ["b", "c"], ["a", "c"], ["b", "d"], ["b"]]
GREINER_MINIMAL = [["a", "b"], ["b", "c"]]


def possible(core, case, names):
    """Return every explanation that can be true as (its parts in order, probability)."""
    found = {}
    for explanation in core("reason", case=case)["explanations"]:
        parts = tuple(sorted(names[cause] for cause in explanation["causes"]))
        found[parts] = explanation["probability"] / 1e9
    return found


def smallest(sets):
    return sorted(" ".join(one) for one in sets if not any(set(other) < set(one) for other in sets))


@pytest.mark.parametrize(
    ("case", "names", "published", "all_of_them"),
    [(POLYBOX, POLYBOX_NAMES, POLYBOX_MINIMAL, 27), (ADDER, ADDER_NAMES, ADDER_MINIMAL, 11)],
    ids=["polybox", "full adder"],
)
def test_the_smallest_explanations_are_the_published_diagnoses(core, case, names, published, all_of_them):
    sets = possible(core, case, names)

    assert len(sets) == all_of_them
    assert smallest(sets) == published


def test_the_polybox_is_as_likely_as_counting_its_32_states_says(core):
    """Own figures of an exact enumeration (each part fails with 0.01), not those of the paper."""
    sets = possible(core, POLYBOX, POLYBOX_NAMES)
    causes = {POLYBOX_NAMES.get(c["cause"]): c["probability"] / 1e9
              for c in core("reason", case=POLYBOX)["causes"]}  # fmt: skip

    assert sets[("M1",)] == pytest.approx(0.47803, abs=5e-6)
    assert sets[("A1",)] == pytest.approx(0.47803, abs=5e-6)
    assert causes["M1"] == pytest.approx(0.49764, abs=5e-6)
    assert causes["M2"] == pytest.approx(0.01961, abs=5e-6)
    assert causes["M3"] == pytest.approx(0.01478, abs=5e-6)


def test_what_alone_explains_is_found_from_the_conflicts():
    assert minimal([["A1", "M1", "M2"], ["A1", "A2", "M1", "M3"]], 5) == [
        ["A1"],
        ["A2", "M2"],
        ["M1"],
        ["M2", "M3"],
    ]
    assert minimal([["X1", "X2"], ["X1", "A2", "O1"]], 5) == [["A2", "X2"], ["O1", "X2"], ["X1"]]


def test_the_published_family_in_any_order():
    for seed in range(60):
        family = [list(one) for one in REITER]
        random.Random(seed).shuffle(family)
        assert minimal(family, 6) == REITER_MINIMAL


def test_a_conflict_that_contains_another_loses_no_set_in_any_order():
    for family in itertools.permutations(GREINER):
        assert minimal(list(family), 4) == GREINER_MINIMAL


def test_larger_sets_than_asked_for_are_left_out():
    assert minimal(REITER, 2) == [[1, 2]]


def test_random_families_against_trying_every_subset():
    for seed in range(80):
        chance = random.Random(seed)
        family = [sorted(chance.sample(range(6), chance.randint(1, 4))) for _ in range(chance.randint(1, 6))]
        hitting = [
            set(subset)
            for size in range(7)
            for subset in itertools.combinations(range(6), size)
            if all(set(subset) & set(one) for one in family)
        ]
        wanted = sorted(sorted(one) for one in hitting if not any(other < one for other in hitting))
        assert minimal(family, 6) == wanted
