"""The simulated jobs of tests/bench/jobs.py, small ones worked out by hand."""

import pytest

from tests.bench.jobs import counted
from tests.bench.jobs import weighed
from tests.bench.jobs_cars import JobCar
from tests.bench.jobs_cars import draw_job
from tests.bench.jobs_policies import App
from tests.bench.jobs_policies import Habit
from tests.bench.planner_cars import ROW
from tests.bench.planner_cars import Truth
from tests.bench.worlds import NOMINAL
from tests.bench.worlds import WORLDS
from tests.bench.worlds import World
from tests.bench.worlds import true_rates

# Luck in which a test shows every fault, invents none, and a new part is good.
SHOWN = 3
# With odds like these no fault is missed.
SURE = World("sure", "miss", 1e-9)


def car(*present, spares=(), world=SURE):
    """Return a car of four positions with these causes."""
    return JobCar(4, Truth("drawn", frozenset(present), ROW, 0.95, list(spares), SHOWN, world))


def test_habit_replaces_what_goes_along():
    end = Habit().follow(car("unit:u00"))

    # A test; rear-0 and rear-3 (2 + 0.7 each) with a test; a new part at rear-3, which is open, with a test;
    # what hangs at rear-0 is pushed home.
    assert (end.minutes, end.good, end.live, end.closed) == (pytest.approx(1 + 6.4 + 2 + 0.3), 0, False, True)


def test_habit_repairs_where_the_fault_stays():
    end = Habit().follow(car("circuit:rear-1"))

    minutes = 1 + (3 + 0.7 + 2 + 0.7 + 1) + 21 + 2 * 0.3
    assert (end.minutes, end.good, end.live, end.closed) == (pytest.approx(minutes), 0, False, True)


def test_habit_is_done_when_a_blockage_went_with_the_exchange():
    end = Habit().follow(car("blocked:rear-0"))

    assert (end.minutes, end.good, end.live, end.closed) == (pytest.approx(1 + 6.4 + 0.6), 0, False, True)


def test_habit_takes_one_suspect_after_the_other():
    end = Habit().follow(car("unit:u00", "unit:u01"))

    # The second one goes to rear-0, where the first partner hangs still.
    minutes = 1 + 6.4 + 2 + (3.7 + 0.7 + 1) + 2 + 0.3
    assert (end.minutes, end.good, end.live) == (pytest.approx(minutes), 0, False)


def test_habit_repairs_the_supply_where_nothing_is_left_to_exchange_with():
    end = Habit().follow(car("feed:rear"))

    assert (end.minutes, end.good, end.live) == (1 + 21, 0, False)


@pytest.mark.parametrize("cause", ["unit:u00", "circuit:rear-1", "blocked:rear-2"])
def test_the_app_ends_with_nothing_left_wrong(cause):
    end = App().follow(car(cause))

    assert (end.good, end.live, end.closed) == (0, False, True)
    assert end.live_chance < 0.05


def test_a_good_part_that_was_given_up_counts_and_one_on_the_bench_too():
    job = car("unit:u00", spares=[0.01])
    job.test()
    job.do({"move": "replace", "fitted": {"rear-1": "new"}})
    job.do({"move": "exchange", "fitted": {"rear-2": "s0"}})
    end = job.end(True)

    assert job.on_bench() == ["u02"]
    assert (end.good, end.live) == (2, True)
    assert counted(end) == end.minutes + 2 * 45 + 60
    assert weighed(end) == pytest.approx(counted(end), abs=0.1)
    assert end.good_chance == pytest.approx(2, abs=0.05)
    assert end.live_chance > 0.9


def test_a_repaired_cause_is_named_by_its_generation():
    job = car("circuit:rear-0")
    job.test()
    job.do({"move": "repair", "cause": "circuit:rear-0"})

    assert job.case["tests"][-1] == {
        "fitted": job.fitted,
        "faulted": [],
        "cleaned": [],
        "unplugged": [],
        "repaired": ["circuit:rear-0"],
    }
    assert "circuit:rear-0#2" in job.live_names()
    assert "circuit:rear-0" not in job.live_names()


def test_the_worlds_differ_from_the_assumed_rates_in_one_class():
    assert len(WORLDS) == 15
    assumed = true_rates(NOMINAL)
    for world in WORLDS[1:]:
        rates = true_rates(world)
        changed = [kind for kind in rates if rates[kind] != pytest.approx(assumed[kind])]
        assert changed == ["shows" if world.changed == "miss" else world.changed]
        (kind,) = changed
        odds, before = rates[kind] / (1 - rates[kind]), assumed[kind] / (1 - assumed[kind])
        factor = odds / before if kind != "shows" else before / odds
        assert factor == pytest.approx(world.factor)


def test_the_same_number_is_the_same_car():
    assert draw_job(4, NOMINAL, 1, 7, False, False) == draw_job(4, NOMINAL, 1, 7, False, False)
    again = [draw_job(4, world, 1, 7, False, True).reach for world in WORLDS]
    assert again == [again[0]] * len(WORLDS)
