"""Whole jobs by somebody who answers truthfully, from a car whose faults only the job knows.

Each ends closed with nothing left wrong; nothing good is called bad or bought for, no step asks for a repair
of what is sound, and no screen comes twice without news.
"""

import functools

import pytest

from server.core.parts import sorts
from tests.core.true_car import TrueCar
from tests.core.truthful import Mechanic
from tests.core.walker import quick_core

OUTER, INNER, LEFT = "rear-right-outer", "rear-right-inner", "rear-left-outer"
ONE_STAYS = {"mixes": 1, "labels that stay": 1}
COIL, WHEEL, DOOR = "ignition-coil/row-4", "wheel-sender/wheels-4", "door-speaker/doors-4"


@functools.cache
def layouts() -> dict:
    """Return the positions of each layout."""
    return {each["id"]: each["positions"] for each in quick_core()("layouts")}


def at_work(layout, faults, habits=None, **car):
    """Return a mechanic before a car with these faults."""
    positions = layouts()[layout]
    true_car = TrueCar(positions, sorts.by_layout(layout), faults, **car)
    return Mechanic(true_car, layout, positions, habits)


def is_done(job, most, bought):
    """Hold what a job came to against what is true of its car."""
    assert job.view["closed"], job.told()
    assert job.car.is_sound(), job.told()
    assert (job.wrongly, job.not_honest, job.twice) == ([], [], []), job.told()
    assert job.bought == ["for a bad one"] * bought, job.told()
    assert job.steps <= most, job.told()


@pytest.mark.parametrize(
    ("layout", "faults", "habits", "most", "bought"),
    [
        pytest.param("rear-4", ["unit:" + OUTER], {}, 21, 1, id="one bad sensor"),
        pytest.param("rear-6", ["unit:" + INNER], {}, 25, 1, id="one bad of six"),
        pytest.param("rear-4", ["unit:" + OUTER, "unit:" + LEFT], {}, 30, 2, id="two bad sensors"),
        pytest.param("rear-4", ["circuit:" + OUTER], {}, 34, 0, id="wiring"),
        pytest.param("rear-4", ["unit:" + LEFT, "circuit:" + INNER], {}, 47, 1, id="sensor and wiring apart"),
        pytest.param("rear-4", ["unit:" + OUTER, "circuit:" + OUTER], {}, 52, 1, id="both at one place"),
        pytest.param("rear-4", ["blocked:" + INNER], {"sees dirt": 1}, 22, 0, id="dirt"),
        pytest.param("rear-4", ["feed:rear"], {}, 9, 0, id="supply"),
        pytest.param("both-12", ["control"], {}, 11, 0, id="control unit of twelve"),
        pytest.param("rear-4", ["unit:" + OUTER], {"turned": 0.6}, 24, 1, id="the wrong way round"),
        pytest.param("rear-4", ["unit:" + OUTER], {"other number": 1}, 23, 1, id="another part number"),
        pytest.param("rear-4", ["unit:" + OUTER], {"unheard": 0.3}, 27, 1, id="sounder not heard"),
        pytest.param("rear-4", ["unit:" + OUTER], {"mute": "supply"}, 28, 1, id="sounder without supply"),
        pytest.param("rear-4", ["unit:" + OUTER], {"mute": "control"}, 32, 1, id="control unit is mute"),
        pytest.param("rear-4", ["unit:" + OUTER], {"mixes": 1}, 33, 1, id="mixed up"),
        pytest.param("rear-4", ["circuit:" + INNER], ONE_STAYS, 40, 0, id="one label stays on"),
        pytest.param("rear-4", ["unit:" + INNER], {"rests": 0.2}, 35, 1, id="another day"),
        pytest.param(COIL, ["unit:cylinder-2"], {}, 21, 1, id="coil"),
        pytest.param(COIL, ["circuit:cylinder-3"], {}, 27, 0, id="spark plug"),
        pytest.param(WHEEL, ["unit:wheel-rear-left"], {}, 23, 1, id="wheel sender"),
        pytest.param(DOOR, ["circuit:door-front-left"], {}, 27, 0, id="loudspeaker's wire"),
    ],
)  # fmt: skip
def test_a_truthful_person_comes_to_the_end(layout, faults, habits, most, bought):
    is_done(at_work(layout, faults, habits).work(), most, bought)


def test_a_fault_that_comes_and_goes_is_found_by_who_brings_it_out():
    job = at_work("rear-4", ["unit:" + OUTER], {"knows": True, "provokes": "loom"}, shows=0.5, seed=1).work()
    is_done(job, 45, 1)


def test_a_contact_that_opens_when_warm_is_found():
    job = at_work("rear-4", ["circuit:" + LEFT], {"provokes": "heat"}, warm=True, seed=1).work()
    is_done(job, 45, 0)


def test_where_nothing_is_wrong_the_job_ends_though_every_test_comes_at_once():
    is_done(at_work("rear-4", []).work(), 15, 0)


def test_a_bad_spare_costs_no_good_part():
    job = at_work("rear-4", ["unit:" + OUTER])
    job.spare(bad=True)
    is_done(job.work(), 44, 1)


def test_who_fits_two_the_wrong_way_round_unseen_comes_to_the_right_end_all_the_same():
    job = at_work("rear-4", ["unit:" + OUTER], {"swaps": 1}).work()

    # The test that was made then says that the fault stayed: the wiring is blamed until it is found sound.
    assert [each[2] for each in job.wrongly] == [["circuit:" + OUTER]]
    job.wrongly = []
    is_done(job, 55, 1)
