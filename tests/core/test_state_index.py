"""What the state finds by its indexes is what going through everything finds, after any log."""

import pytest

from server.core.facts.apply import apply
from server.core.facts.fold import Fold
from server.core.log import canon
from server.core.state.index import Index
from tests.core.random_logs import random_log


def parts(index):
    """Return an index as plain data; which conflicts, by their entries."""
    conflicts = {unit: [each["event"] for each in index.conflicts[unit]] for unit in index.conflicts}
    labels = [each["event"] for each in index.open_labels()]
    return index.out, index.stock, index.claimed_at, index.of_job, conflicts, labels, index.serials


def by_going_through(state):
    index = Index()
    index.with_serial("S1", [])
    for unit in state.units.values():
        index.add_unit(unit)
    index.renew_conflicts(state.conflicts)
    return parts(index)


@pytest.mark.parametrize("seed", range(40))
def test_the_index_is_true_after_any_log(seed):
    fold = Fold()
    for event in random_log(seed, 60):
        fold.add([event])
        fold.state.with_serial("S1")  # from the first question on, the index is kept
        assert parts(fold.state.index) == by_going_through(fold.state)


def test_random_logs_reach_what_they_are_for():
    """Mix-ups that are settled, disputes that are, labels on two units, corrections that count."""
    states, withdrawn = [], 0
    for seed in range(50):
        fold = Fold()
        fold.reset(random_log(seed, 60))
        states.append(fold.state)
        withdrawn += len(fold.corrections.withdrawn)
    conflicts = [each for state in states for each in state.conflicts]
    assert withdrawn > 60
    assert sum(bool(state.aliases) for state in states) > 8
    assert sum(len(state.mixed) > 1 for state in states) > 2
    assert {"place", "label", "two labels", "return", "opened twice"} <= {each["about"] for each in conflicts}
    assert {each["open"] for each in conflicts} == {True, False}
    assert sum(len(state.with_serial("s-1")) > 1 for state in states) > 8


@pytest.mark.parametrize("seed", range(40))
def test_a_trial_finds_the_same_and_leaves_the_state_alone(seed):
    """Also where a trial opens a job, tells bodies of a mix-up apart or contradicts another job."""
    log = random_log(seed, 60)
    for cut in range(20, 60, 8):
        fold = Fold()
        fold.reset(log[:cut])
        fold.state.with_serial("S1")
        before = canon.dumps(fold.state.as_dict())
        drafts = [event for event in log[cut : cut + 8] if event["kind"] != "corrected"]
        trial = fold.trial(drafts)
        for draft in drafts:
            apply(trial.state, draft)
            assert parts(trial.state.index) == by_going_through(trial.state)
        assert canon.dumps(fold.state.as_dict()) == before
        assert parts(fold.state.index) == by_going_through(fold.state)
