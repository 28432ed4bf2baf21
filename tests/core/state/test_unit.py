"""What a unit can be asked: its label, where it is, and whether that is on the job that asks."""

import pytest

from server.core.state.unit import Unit
from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.state.on_record import job_of
from tests.core.state.on_record import state_of

OUTER, INNER = "rear-right-outer", "rear-right-inner"


@pytest.fixture
def begun(core):
    return Driver(core).begin()


def unit_of(driver, identity="v1." + OUTER):
    """Return a unit as the driver's job looks at it."""
    return job_of(driver).unit(identity)


def test_one_that_nobody_recorded_is_not_on_record(core):
    unit = Unit(state_of(core), "u9")
    assert not unit.is_on_record()
    assert not unit.is_labelled()
    assert not unit.is_fitted_on("v1")
    assert unit.mixup() is None


def test_one_that_was_there_at_the_opening_is_fitted_and_bare(begun):
    unit = unit_of(begun)
    assert (unit.id, unit.part, unit.code) == (home(OUTER), "PS-1", "")
    assert (unit.position, unit.pulled_from, unit.transfers) == (OUTER, None, [])
    assert unit.is_on_record()
    assert unit.is_fitted()
    assert unit.is_fitted_here()
    assert unit.is_fitted_on("v1")
    assert not unit.is_fitted_on("v2")
    assert unit.vehicle()["name"] == "Blue estate"
    assert not unit.is_labelled()
    assert not unit.is_in_hand()
    assert not unit.is_in_stock()
    assert not unit.is_disputed()


def test_one_that_was_pulled_and_labelled_is_in_hand_on_this_job_only(core, begun):
    begun.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    begun.fact("unit_labelled", unit=home(OUTER), code=begun.codes[0], how="scanned")
    other = Driver(core, device="d0000000000000002", job="j000000000002")
    other.fact(
        "job_opened",
        vehicle={"id": "v2", "name": "Red van", "vin": ""},
        complaint="",
        layout="rear-4",
        part="",
        positions=core("layouts")[0]["positions"],
    )
    unit = unit_of(begun)

    assert (unit.position, unit.pulled_from, unit.code) == (None, OUTER, begun.codes[0])
    assert [transfer["what"] for transfer in unit.transfers][-1] == "labelled"
    assert unit.is_labelled()
    assert unit.is_in_hand()
    assert unit.is_in_hand_here()
    assert not unit.is_fitted_here()
    assert not job_of(other).unit(home(OUTER)).is_in_hand_here()


def test_one_in_stock_is_a_spare(begun):
    begun.fact(
        "unit_added", unit="u1", part="PS-2", serial="", code=begun.codes[1], how="scanned", place="stock"
    )
    unit = unit_of(begun, "u1")
    assert unit.is_in_stock()
    assert unit.part == "PS-2"
    assert not unit.is_fitted()
    assert not unit.is_in_hand()
    assert not unit.is_in_hand_here()


def test_one_that_two_places_are_on_record_of_is_disputed_until_it_is_seen(begun):
    begun.fact("unit_pulled", unit=home(OUTER), position=OUTER, how="tapped")
    begun.fact("unit_labelled", unit=home(OUTER), code=begun.codes[0], how="scanned")
    begun.force("unit_pulled", unit=home(OUTER), position=INNER, how="scanned")
    assert unit_of(begun).is_disputed()

    begun.fact("unit_seen", unit=home(OUTER), place="out", position="", how="scanned")
    assert not unit_of(begun).is_disputed()


def test_a_body_of_a_mix_up_names_it_and_is_found_under_the_id_it_turns_out_to_have(begun):
    for n, position in enumerate((OUTER, INNER)):
        begun.fact("unit_pulled", unit=home(position), position=position, how="tapped")
        begun.fact("unit_labelled", unit=home(position), code=begun.codes[n], how="scanned")
    begun.fact("units_mixed", units=[home(OUTER), home(INNER)], note="")
    entry = job_of(begun).state.mixed[0]
    body = unit_of(begun, entry["bodies"][0])
    assert body.mixup()["count"] == 2
    assert unit_of(begun).mixup() is None

    begun.fact("unit_seen", unit=home(OUTER), place="out", position="", how="scanned")
    known = [unit_of(begun, each) for each in entry["bodies"]]
    assert sorted(unit.id for unit in known) == [home(INNER), home(OUTER)]
    assert [unit.mixup() for unit in known] == [None, None]
