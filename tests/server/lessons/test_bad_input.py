"""What a yard's log may hold that teaches nothing, or little: figures move no more than its weight allows."""

from contextlib import closing
from random import Random

import pytest

from server.core.infer.variations import CLASSES
from server.lessons.composed import ORDINARY
from server.lessons.composed import PRIOR_JOBS
from server.lessons.composed import odds
from server.lessons.figures import figures
from server.lessons.offer import offer
from server.storage import DataFolder
from tests.made_up_yard import DAY_MS
from tests.made_up_yard import LAYOUTS
from tests.made_up_yard import START
from tests.made_up_yard import Yard
from tests.made_up_yard import receive

NOW = START + 400 * DAY_MS
HONEST, NONSENSE = 60, 20


def shares_of_faults(found):
    """How the faults of a car with eight positions share among the classes."""
    rates = {rate["id"]: rate["value_ppm"] / 1_000_000 for rate in found["rates"]}
    parts = [n * odds(rates[name]) for n, name in zip(ORDINARY[:-1], CLASSES, strict=True)]
    return [part / sum(parts) for part in parts]


def nonsense(count):
    """Jobs whose tests show anything, in any order, on a phone whose clock jumps."""
    yard = Yard("nonsense", 0, device="d00000000000000dd")
    dice = Random(7)
    for number in range(count):
        job, layout = f"jnonsense{number:02}", dice.choice(["rear-4", "both-8"])
        places = [each["id"] for each in LAYOUTS[layout]]
        vehicle = {"id": f"vn{number}", "name": "Red van", "vin": ""}
        opened = {"vehicle": vehicle, "complaint": "", "layout": layout, "part": "",
                  "positions": LAYOUTS[layout]}  # fmt: skip
        yard.record(job, "job_opened", opened, NOW - dice.randrange(300) * DAY_MS)
        for _ in range(dice.randint(1, 6)):
            faulted = dice.sample(places, dice.randint(1, len(places)))
            test = {"heard": True, "faulted": faulted, "silent": [], "unplugged": [], "codes": [],
                    "came_and_went": False, "note": ""}  # fmt: skip
            yard.record(job, "test_run", test, NOW - dice.randrange(300) * DAY_MS)
        yard.record(job, "job_closed", {"note": ""}, NOW - dice.randrange(300) * DAY_MS)
    return yard


def test_twenty_nonsense_jobs_move_the_rates_no_more_than_their_number_allows(db):
    receive(db, Yard("honest", HONEST).entries)
    before = figures(db, NOW)

    receive(db, nonsense(NONSENSE).entries)

    after = figures(db, NOW)
    assert after["closed"] == HONEST + NONSENSE
    allowed = NONSENSE / (HONEST + NONSENSE + PRIOR_JOBS)
    for now, then in zip(shares_of_faults(after), shares_of_faults(before), strict=True):
        assert abs(now - then) <= allowed
    assert len(after["left_out"]["wrong_clock"]) > 0
    assert after["times_left_out"] > before["times_left_out"]
    tests = {row["id"]: row for row in after["minutes"]}["test"]
    assert tests["median_x100"] == pytest.approx(
        {row["id"]: row for row in before["minutes"]}["test"]["median_x100"], rel=0.1
    )


@pytest.mark.parametrize("layout", ["rear-4", "both-8"])
def test_a_yard_of_one_kind_of_car_learns_the_rates_of_any_yard(tmp_path, layout):
    """Bounds of 90 % miss one truth in ten: of twelve, by three yards, no more than two."""
    missed = []
    for name in ("one kind", "one kind 1", "one kind 2"):
        folder = DataFolder(tmp_path / name)
        folder.prepare()
        with closing(folder.open()) as db:
            receive(db, Yard(name, 120, layouts=(layout,)).entries)
            rates = {rate["id"]: rate for rate in figures(db, NOW)["rates"]}
        for rate in (rates[each] for each in ("unit", "circuit", "blocked", "shows")):
            if not rate["low_ppm"] < rate["default_ppm"] < rate["high_ppm"]:
                missed.append((name, rate))
    assert len(missed) <= 2, missed


def test_of_positions_that_a_yard_never_opened_nothing_is_taken(db):
    receive(db, Yard("rear only", 80, layouts=("rear-4",)).entries)

    choices = offer(db, figures(db, NOW))["choices"]

    (minutes,) = [
        each["events"][0]["data"] for each in choices if each["events"][0]["kind"] == "minutes_learned"
    ]
    assert minutes["reach_x100"]
    assert all(position.startswith("rear") for position in minutes["reach_x100"])
