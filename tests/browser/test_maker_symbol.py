"""The maker's symbol before the camera fills part number and serial, wherever they are asked for."""

import pytest

from tests.browser.phone import CODES
from tests.browser.phone import label_picture
from tests.browser.phone_log import facts
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser.test_job_screens import last
from tests.browser.test_unit_care import INNER
from tests.browser.test_unit_care import one_in_hand
from tests.browser_support import wait_until
from tests.core.driver import home
from tests.static.symbols import CODE_128
from tests.static.symbols import DATA_MATRIX
from tests.static.symbols import envelope
from tests.static.symbols import symbol
from tests.waiting import wait_for

READ = "Read the maker's symbol"
VALUES = "() => ['part', 'serial'].map((name) => document.getElementById(`field-${name}`).value)"
TONES = """() => {
  window.tones = [];
  const { prototype } = AudioContext;
  const make = prototype.createOscillator;
  prototype.createOscillator = function () {
    const tone = make.call(this);
    tones.push(tone);
    return tone;
  };
}"""


@pytest.fixture
def phone(camera_browser, screen_app, camera):
    """Give a phone with that camera; nothing may have complained by the end."""
    camera.show()
    with screens(camera_browser, screen_app.base) as phone:
        yield phone


def at_fresh_label(phone):
    return phone.holds(job_driver().begin()).show(f"/U/{CODES[0]}")


def test_an_envelope_on_a_new_spare_fills_both_fields_and_is_recorded(phone, camera):
    page = at_fresh_label(phone)
    camera.show(symbol(envelope("1P4L0014-163B", "SSA10197"), DATA_MATRIX))
    phone.tap(READ)

    page.get_by_text("part number 4L0014-163B, serial SA10197").wait_for()
    assert page.evaluate(VALUES) == ["4L0014-163B", "SA10197"]

    phone.tap("Add the spare")
    # The text beside the symbol has the serial too: the next screen is told by what is gone.
    page.get_by_role("button", name="Add the spare").wait_for(state="detached")
    page.get_by_text("SA10197").first.wait_for()
    added = last(page, "unit_added")
    assert (added["part"], added["serial"]) == ("4L0014-163B", "SA10197")


def test_bars_that_do_not_say_what_they_are_are_asked_about(phone, camera):
    driver = one_in_hand()
    page = phone.holds(driver).show(f"/U/{driver.labels[home(INNER)]}")
    page.get_by_text("Note what is printed on it").click()
    camera.show(symbol("6620-1774", CODE_128, pixels=4))
    phone.tap(READ)

    page.get_by_text("Which number is which?").wait_for()
    phone.tap("Serial 6620-1774")
    wait_until(page, "() => document.getElementById('field-serial').value === '6620-1774'")
    assert page.get_by_text("Which number is which?").count() == 0
    assert phone.lacks_room() == []

    phone.tap("Record these numbers")
    # What was read stands beside the symbol: that it is recorded, no text tells.
    wait_for(lambda: facts(page)[-1]["kind"] == "part_noted")
    assert facts(page)[-1]["data"]["serial"] == "6620-1774"


def test_two_symbols_on_one_bag_fill_a_field_each(phone, camera):
    page = at_fresh_label(phone)
    camera.show(symbol(envelope("1P77-A"), DATA_MATRIX), symbol(envelope("S0042"), DATA_MATRIX))
    phone.tap(READ)

    wait_until(page, "() => document.getElementById('field-serial')?.value")
    assert page.evaluate(VALUES) == ["77-A", "0042"]


def test_our_own_label_in_its_place_is_refused_with_what_to_show(phone, camera):
    page = at_fresh_label(phone)
    camera.show(label_picture(CODES[1], phone.base))
    phone.tap(READ)

    page.get_by_text("This is a label of your own").wait_for()
    assert page.evaluate(VALUES) == ["", ""]
    assert page.get_by_role("button", name="Read the symbol again").is_visible()


def test_typing_is_one_tap_away_from_the_camera(phone):
    page = at_fresh_label(phone)
    phone.tap(READ)
    phone.sees()
    assert phone.lacks_room() == []

    phone.tap("Close the camera and type")

    assert page.locator("video").count() == 0
    page.get_by_label("Part number").fill("PS-1")


def test_a_read_is_heard_unless_that_is_switched_off(phone, camera):
    page = at_fresh_label(phone)
    page.evaluate(TONES)
    camera.show(symbol(envelope("P1"), DATA_MATRIX))
    phone.tap(READ)
    page.get_by_text("Read: part number 1").wait_for()
    assert page.evaluate("tones.length") == 2

    page = phone.show("/#/you")
    page.get_by_role("checkbox", name="Sound a short tone").uncheck()
    page = phone.show(f"/U/{CODES[2]}")
    page.evaluate(TONES)
    phone.tap(READ)
    page.get_by_text("Read: part number 1").wait_for()
    assert page.evaluate("tones.length") == 0
