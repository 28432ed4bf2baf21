"""What a job says of the classes of causes: no cause is counted that no reading speaks for."""

import pytest

from server.core.infer.belief import Belief
from server.core.infer.case_form import read
from server.core.infer.model import Model
from server.lessons.classes import compositions

PLACES = ("rear-0", "rear-1", "rear-2", "rear-3")
FITTED = {place: f"u{n}" for n, place in enumerate(PLACES)}
UNIT, BLOCKED, NOTHING = (1, 0, 0, 0, 0), (0, 0, 1, 0, 0), (0, 0, 0, 0, 0)


def weights(tests):
    """Compositions after tests, each (faulted, exchanged pair or none, cleaned)."""
    fitted, done = dict(FITTED), []
    for faulted, exchanged, cleaned in tests:
        for one, other in [exchanged] if exchanged else []:
            fitted[one], fitted[other] = fitted[other], fitted[one]
        done.append({"fitted": dict(fitted), "faulted": faulted, "cleaned": cleaned})
    case = {
        "positions": [{"id": place, "group": "rear"} for place in PLACES],
        "units": [{"id": unit} for unit in FITTED.values()],
        "tests": done,
    }
    return compositions(Belief(Model(read(case))))


def test_dirt_that_may_have_gone_with_an_exchange_is_not_counted_beside_the_sensor():
    found = weights([(["rear-0"], None, []), (["rear-3"], ("rear-0", "rear-3"), [])])

    assert found[UNIT] > 0.99
    assert (1, 0, 1, 0, 0) not in found
    assert sum(found.values()) == pytest.approx(1.0, abs=1e-3)


def test_dirt_that_readings_speak_for_is_counted():
    found = weights([(["rear-0", "rear-1"], None, []), (["rear-1"], None, ["rear-0"]),
                     (["rear-1"], None, []), (["rear-3"], ("rear-1", "rear-3"), [])])  # fmt: skip

    assert found[(1, 0, 1, 0, 0)] > 0.5


def test_what_went_with_cleaning_is_dirt_or_nothing():
    found = weights([(["rear-0"], None, []), ([], None, ["rear-0"]), ([], None, [])])

    assert found[BLOCKED] / found[NOTHING] == pytest.approx(0.01 / 0.99 * (0.95 / 0.002 + 1 - 0.95), rel=0.02)
