"""A sensor that two phones took to two places apart: both stay on record until a scan says where it is."""

import pytest

from tests.core.driver import home
from tests.core.test_contradictions import BEN
from tests.core.test_contradictions import INNER
from tests.core.test_contradictions import OUTER
from tests.core.test_contradictions import Phone
from tests.core.test_contradictions import phone_of_ana
from tests.core.test_contradictions import settle
from tests.core.test_contradictions import shown
from tests.core.test_contradictions import told

PULLED = home(INNER)


@pytest.fixture
def ben(core):
    """Ben has pulled the sensor at right inner and holds it."""
    phone = Phone(core, device=BEN).begin()
    phone.test(OUTER)
    phone.photograph()
    phone.start_exchange()
    phone.scan_wanted()
    return phone


@pytest.fixture
def ana(core, ben):
    return phone_of_ana(core)


def takes(phone, place, was):
    """Take the sensor to a place, for this phone from where it `was`."""
    phone.force("unit_moved", unit=PULLED, place=place, how="tapped", note="", was=was)


def where(phone):
    """Return the place of the sensor, and which places are claimed of it."""
    unit = phone.core("state")["units"][PULLED]
    return unit["place"], [claim["place"] for claim in unit["claims"]]


def test_from_the_hand_to_two_places_is_one_card_with_both_stories(ben, ana):
    """Seen: the later one stood, and nobody was told."""
    takes(ben, "stock", was="out")
    takes(ana, "counter", was="out")
    assert where(ben)[1] == ["stock", "counter"]

    step, code = ben.step(), shown(ben, PULLED)
    assert (step["form"], step["title"]) == ("contradiction", f"{code} in two places")
    assert told(step) == [("Ben", f"put {code} into stock"), ("Ana", f"gave {code} to the parts counter")]

    settle(ben, PULLED, "In your stock")
    assert where(ben) == ("stock", [])
    assert ben.step()["form"] != "contradiction"


def test_the_same_place_said_twice_is_none(ben, ana):
    takes(ben, "stock", was="out")
    takes(ana, "stock", was="out")
    assert where(ben) == ("stock", [])


def test_who_knew_where_it_was_put_takes_it_on(ben, ana):
    takes(ben, "stock", was="out")
    takes(ana, "counter", was="stock")
    takes(ben, "scrapped", was="counter")
    assert where(ben) == ("scrapped", [])


def test_an_earlier_change_that_is_taken_back_makes_no_dispute(ben, ana):
    """Ben took it to the counter out of his stock; that it went into the stock was a slip."""
    takes(ben, "stock", was="out")
    slip = {"device": ben.device, "seq": ben.seq, "reason": "slip"}
    takes(ana, "counter", was="stock")
    ben.fact("corrected", **slip)
    assert where(ben) == ("counter", [])


def test_who_comes_late_with_where_it_went_on_from_contradicts_nobody(ben, ana):
    """The counter had the part, and it was scrapped, before the phone that handed it over was heard again."""
    takes(ana, "counter", was="out")
    takes(ana, "scrapped", was="counter")
    takes(ben, "counter", was="out")
    assert where(ben)[1] == []


def test_an_entry_from_before_says_not_where_it_was(ben, ana):
    takes(ben, "stock", was="out")
    ana.force("unit_moved", unit=PULLED, place="counter", how="tapped", note="")
    assert where(ben) == ("counter", [])


def test_one_spare_taken_for_two_jobs_is_a_dispute(ben, ana):
    takes(ben, "stock", was="out")
    takes(ben, "out", was="stock")
    ana.job = "j00000000000a"
    ana.open(layout="rear-4")
    takes(ana, "out", was="stock")
    assert where(ben)[1] == ["out", "out"]


def test_each_way_that_the_app_offers_says_where_it_was(ben):
    ways = [choice["events"] for choice in ben.core("unit", unit=PULLED)["next"]["places"]]
    assert ways
    assert {draft["data"]["was"] for events in ways for draft in events} == {"out"}


def test_two_who_close_with_it_in_two_places_are_asked_where_it_is(core):
    """Both stand at the last step off line: one takes the sensor into stock, one to the counter."""
    ben = Phone(core, device=BEN).begin()
    ben.test(OUTER)
    ben.photograph()
    ben.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    ben.test(INNER)
    ben.new_unit(INNER)
    ben.guided()
    while ben.step()["id"] != "home":
        if ben.step()["form"] == "test":
            ben.test()
        else:
            ben.tap()
    ana = phone_of_ana(core)
    counter, _, stock = (choice["events"] for choice in ben.step()["choices"][:3])
    for phone, events in ((ben, stock), (ana, counter)):
        for draft in events:
            phone.force(draft["kind"], **draft["data"])

    view = ben.view()
    assert not view["closed"]
    assert view["step"]["form"] == "contradiction"
    settle(ben, home(OUTER), "At the parts counter")
    assert not ben.view()["disputes"]
