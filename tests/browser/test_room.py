"""Every screen has room for a finger and stays on the screen: narrow, and with the text twice as large."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.core.driver import JOB

JOB_SCREENS = (
    "",
    "/moves",
    "/trail",
    "/history",
    "/photos",
    "/position/rear-right-outer",
    "/assumptions",
    "/hand",
    "/report",
)
UNIT_SCREENS = [f"/#/unit/v1.rear-right-outer{part}" for part in ("", "/slip", "/paper")]
OTHER_SCREENS = ("/#/", "/#/new", "/#/you", "/#/outbox", "/#/find", "/#/nowhere", "/pair#token", "/U/22222")


def steps():
    """Return a driver for each kind of step on the way, by its name."""
    found = {"cautions": job_driver().open()}
    found["lamps"] = job_driver().open()
    found["lamps"].tap()
    found["look"] = job_driver().open()
    found["look"].tap()
    found["test"] = job_driver().begin(layout="around-12")
    found["photo"] = job_driver().begin()
    found["photo"].test("rear-right-outer")
    found["move"] = job_driver().begin()
    found["move"].test("rear-right-outer")
    found["move"].photograph()
    found["meter"] = job_driver().begin()
    found["meter"].test("rear-right-outer")
    found["meter"].fact("move_started", move="meter", fitted={}, position="rear-right-outer", reason="to see")
    found["meter"].choose(0)
    return found


STEPS = steps()
NARROW = ((320, 640, 100), (320, 640, 200))


@pytest.mark.parametrize("name", STEPS)
def test_steps_have_room(take_screens, name):
    phone = take_screens(width=320, height=640).holds(STEPS[name])
    page = phone.show(f"/#/job/{JOB}")
    page.locator("[data-step]").wait_for()
    if name == "test":
        page.get_by_text("Tap what shows a fault").wait_for()
        page.get_by_text("More: codes, picture, note").click()
    if name == "lamps":
        phone.tap("Engage reverse")
    if name == "look":
        phone.tap("Left inner")
    assert phone.lacking((320, 640, 100), (390, 640, 200), (320, 640, 200)) == {}


def test_what_lies_behind_a_job_has_room(take_screens):
    phone = take_screens(width=320, height=640).holds(STEPS["move"])
    addresses = [f"/#/job/{JOB}{part}" for part in JOB_SCREENS] + UNIT_SCREENS
    for address in addresses:
        phone.show_anew(address)
        assert (address, phone.lacking(*NARROW)) == (address, {})


def test_other_screens_have_room(take_screens):
    phone = take_screens(width=320, height=640)
    for address in OTHER_SCREENS:
        phone.show_anew(address)
        assert (address, phone.lacking(*NARROW)) == (address, {})


def test_a_long_number_of_a_known_vehicle_has_room_in_large_text(take_screens):
    phone = take_screens(width=360, height=640).holds(job_driver().open(vin="00SWAPTR0AXDEM001"))
    page = phone.show("/#/new")
    phone.text_at(200)
    page.get_by_text("00SWAPTR0AXDEM001").wait_for()
    assert phone.lacks_room() == []
