"""What a job can be asked: what is fitted, in hand, done since the last test."""

import pytest

from server.core.state.job import find_job
from server.core.state.state import EMPTY
from tests.core.driver import START
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.state.on_record import job_of
from tests.core.state.on_record import state_of

OUTER, INNER = "rear-right-outer", "rear-right-inner"
NEW = "u00000000new1"


@pytest.fixture
def begun(core):
    return Driver(core).begin()


def pulled(job, position=OUTER):
    """Pull a unit and label it, as a tap and a scan do."""
    job.fact("unit_pulled", unit=home(position), position=position, how="tapped")
    job.fact("unit_labelled", unit=home(position), code=job.codes[0], how="scanned")
    return job


def test_one_that_is_not_on_record_is_not_found(core):
    assert find_job(state_of(core), "j1") is None
    assert find_job(state_of(core), None) is None


def test_a_job_just_opened_has_everything_in_its_place(core):
    driver = Driver(core).open()
    job = job_of(driver)

    assert (job.complaint, job.part, job.opened_at) == ("beeps without reason", "PS-1", START + 60_000)
    assert job.vehicle_id == "v1"
    assert job.vehicle["name"] == "Blue estate"
    assert job.positions[0]["id"] == "rear-left-outer"
    assert job.fitted_at(OUTER) == home(OUTER)
    assert job.position(OUTER)["name"] == "right outer"
    assert job.position("roof") is None
    assert sorted(job.units()) == sorted(job.units_at_opening)
    assert (job.in_hand(), job.at_hand(), job.disputed()) == ([], [], [])
    assert (job.tests, job.repairs, job.measurements, job.photos, job.plugged_off) == ([], [], [], [], [])
    assert (job.closing, job.closed_by, job.is_closed(), job.is_reopened()) == (None, "", False, False)
    assert (job.walk_check, job.stayed_quiet, job.move) == (None, [], None)
    assert (job.comes_and_goes, job.rates_ppm, job.reach_set, job.money) == (False, {}, {}, {})
    assert (job.confidence_ppm, job.confidence_ppb) == (950_000, 950_000_000)
    assert [entry["kind"] for entry in job.history] == ["job_opened"]


def test_what_was_read_and_looked_at_before_the_first_test(core):
    driver = Driver(core).open()
    assert not job_of(driver).was_lamp_checked("key_on")
    assert not job_of(driver).was_looked_at()
    assert job_of(driver).cautions_read == {}

    driver.tap()
    driver.fact("lamp_checked", when="key_on", result="as_it_should", note="")
    job = job_of(driver)
    assert set(job.cautions_read.values()) == {"Mara"}
    assert job.was_lamp_checked("key_on")
    assert not job.was_lamp_checked("reverse")

    driver.tap()
    assert job_of(driver).was_lamp_checked("reverse")
    assert job_of(driver).was_looked_at()


def test_what_was_done_since_the_last_test_is_past_with_the_next_one(begun):
    begun.test(OUTER)
    begun.fact("cleaned", position=OUTER, note="")
    begun.fact("cleaned", position=INNER, note="")
    begun.fact("circuit_repaired", cause="circuit:" + OUTER, what="pin")
    job = job_of(begun)
    assert job.cleaned_since_test == [OUTER, INNER]
    assert job.repaired_since_test == ["circuit:" + OUTER]

    begun.test()
    job = job_of(begun)
    assert (job.cleaned_since_test, job.repaired_since_test) == ([], [])
    assert job.last_test()["cleaned"] == [OUTER, INNER]
    assert job.last_test()["repaired"] == ["circuit:" + OUTER]
    assert [test["faulted"] for test in job.tests] == [[OUTER], []]


def test_repairs_are_counted_by_what_was_repaired(begun):
    for what in ("pin", "wire"):
        begun.fact("circuit_repaired", cause="circuit:" + OUTER, what=what)
    begun.fact("circuit_repaired", cause="feed:rear", what="ground")
    job = job_of(begun)

    # Two with no test between them: the reasoning knows one, and so does whoever counts.
    assert job.repairs_of("circuit:" + OUTER) == 1
    assert job.repairs_of("circuit:" + INNER) == 0
    assert job.repairs_of("feed:rear") == 1
    assert [repair["what"] for repair in job.repairs] == ["pin", "wire", "ground"]


def test_a_pulled_unit_is_in_hand_and_its_position_empty_by_accident(begun):
    begun.test(OUTER)
    job = job_of(pulled(begun))

    assert job.fitted_at(OUTER) is None
    assert job.in_hand() == job.at_hand() == [home(OUTER)]
    assert job.is_empty_by_accident(OUTER)
    assert not job.is_empty_by_accident(INNER)
    assert job.unit(home(OUTER)).is_in_hand_here()

    begun.fact("left_deliberately", unit=EMPTY, position=OUTER, reason="no part")
    job = job_of(begun)
    assert job.left_at(OUTER) == EMPTY
    assert job.left_at(INNER) is None
    assert not job.is_empty_by_accident(OUTER)


def test_what_is_in_stock_is_at_hand_but_not_in_hand(begun):
    begun.fact(
        "unit_added", unit=NEW, part="PS-1", serial="", code=begun.codes[1], how="scanned", place="stock"
    )
    job = job_of(begun)

    assert job.at_hand() == [NEW]
    assert job.in_hand() == []


def test_connector_and_fit_are_known_once_they_were_gone_through(begun):
    assert not job_of(begun).is_locked(OUTER)
    assert job_of(begun).fit_checked_at(OUTER) is None

    begun.fact("connector_locked", position=OUTER)
    begun.fact("fit_checked", unit=home(OUTER), position=OUTER, checks=["flush"])
    job = job_of(begun)
    assert job.is_locked(OUTER)
    assert not job.is_locked(INNER)
    assert job.fit_checked_at(OUTER) == home(OUTER)
    assert job.fit_checked_at(INNER) is None


def test_a_plug_that_was_off_for_a_test_stays_named_until_it_is_locked(begun):
    begun.test(unplugged=[OUTER])
    assert job_of(begun).plugged_off == [OUTER]
    begun.fact("connector_locked", position=OUTER)
    assert job_of(begun).plugged_off == []


def test_what_was_measured_knows_the_repairs_before_it(begun):
    measured = {"position": OUTER, "check": "ground", "value": "0.3", "reads": "good"}
    begun.fact("circuit_measured", **measured)
    assert job_of(begun).measurements == [{**measured, "repairs_before": 0}]


def test_what_was_set_for_the_job(begun):
    begun.fact("comes_and_goes_set", value=True)
    begun.fact("rates_set", rates_ppm={"unit": 80_000}, confidence_ppm=900_000)
    begun.fact("reach_set", position=OUTER, minutes=12)
    begun.fact("money_set", labour_per_hour=6000, part_price=0, wrong_purchase=0)
    begun.fact("code_weight_set", position=OUTER, on=False)
    job = job_of(begun)

    assert job.comes_and_goes
    assert job.rates_ppm == {"unit": 80_000}
    assert (job.confidence_ppm, job.confidence_ppb) == (900_000, 900_000_000)
    assert job.reach_set == {OUTER: 12}
    assert job.money == {"labour_per_hour": 6000}
    assert not job.code_counts(OUTER)
    assert job.code_counts(INNER)


def test_the_walk_behind_check_holds_until_something_is_changed(begun):
    begun.test()
    begun.fact("walk_checked", positions=[OUTER, INNER], missed=[INNER])
    job = job_of(begun)
    assert job.walk_check == {"positions": [OUTER, INNER], "missed": [INNER]}
    assert job.stayed_quiet == [INNER]

    begun.fact("cleaned", position=INNER, note="")
    assert job_of(begun).walk_check is None
    assert job_of(begun).stayed_quiet == []


def test_a_move_under_way_is_there_until_its_test(begun):
    begun.test(OUTER)
    begun.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    assert job_of(begun).move["fitted"] == {OUTER: home(INNER), INNER: home(OUTER)}
    begun.test(INNER)
    assert job_of(begun).move is None
    assert job_of(begun).holds[OUTER] == home(INNER)


def test_a_closed_job_says_who_closed_it_and_whether_work_went_on(begun):
    begun.test()
    begun.fact("job_closed", note="done")
    job = job_of(begun)
    assert job.is_closed()
    assert (job.closed_by, job.closing["note"]) == ("Mara", "done")
    assert not job.is_reopened()

    begun.force("cleaned", position=OUTER, note="another phone")
    job = job_of(begun)
    assert job.is_reopened()
    assert not job.is_closed()
    assert job.closed_by == ""


def test_a_unit_that_two_phones_put_in_two_places_is_in_dispute(core, begun):
    pulled(begun)
    begun.fact("unit_fitted", unit=home(OUTER), position=OUTER, how="scanned", override="")
    begun.force("unit_fitted", unit=home(OUTER), position=INNER, how="scanned", override="")
    job = job_of(begun)

    assert home(OUTER) in job.disputed()
    assert job.unit(home(OUTER)).is_disputed()
