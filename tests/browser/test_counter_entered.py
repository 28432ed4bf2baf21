"""What a clerk enters at the counter stays with its sensor; a serial number is a way in, too."""

import pytest

from tests.browser import phone_log
from tests.browser.clerk import scans_label
from tests.browser.returned import serial_of
from tests.browser_support import wait_until

WHY = "its cable was cut"
ALSO = "its cable was cut, and its clip"
_FIELD = "document.querySelector('#app .field input[type=text]')"
_TYPES_AND_LOADS_ANEW = f"""(words) => {{
  const field = {_FIELD};
  field.value = words;
  field.dispatchEvent(new InputEvent('input', {{ bubbles: true }}));
  setTimeout(() => location.reload());
}}"""
_HAS_TYPED = f"(words) => {_FIELD}?.value === words"
_IS_KEPT = """(words) => new Promise((resolve, reject) => {
  const asked = indexedDB.open('swaptrail');
  asked.onerror = reject;
  asked.onsuccess = () => {
    const kept = asked.result.transaction('drafts').objectStore('drafts').getAll();
    kept.onsuccess = () => { asked.result.close(); resolve(JSON.stringify(kept.result).includes(words)); };
  };
})"""


@pytest.fixture
def counter(clerk_at):
    return clerk_at(3, size=(1280, 800))


def enters_a_reason(page):
    page.keyboard.press("F9")
    page.get_by_label("Or in your own words").fill(WHY)


def test_a_reason_stays_with_its_sensor_while_others_come_and_the_page_goes(counter):
    clerk, codes = counter
    page, phone = clerk.page, clerk.phone
    scans_label(clerk, codes[0])
    enters_a_reason(page)
    scans_label(clerk, codes[1])
    phone.see(f"What you entered for {codes[0][:3]}-{codes[0][3:]} is kept")
    page.keyboard.press("F9")
    assert page.get_by_label("Or in your own words").input_value() == "", "that was said of another sensor"
    wait_until(page, _IS_KEPT, WHY)
    page.reload()
    page.locator("#app:not([inert]) main").wait_for()  # not the picture of it, which hears no scanner
    scans_label(clerk, codes[0])
    page.keyboard.press("F9")
    assert page.get_by_label("Or in your own words").input_value() == WHY
    with page.expect_navigation():
        page.evaluate(_TYPES_AND_LOADS_ANEW, ALSO)
    wait_until(page, _HAS_TYPED, ALSO, seconds=30)
    page.keyboard.press("F9")
    phone.see("Cancel the decision")
    [decided] = [each for each in phone_log.facts(page) if each["kind"] == "return_decided"]
    assert (decided["data"]["decision"], decided["data"]["overrule"]) == ("refuse", ALSO)


def test_a_sensor_opened_from_the_queue_takes_no_reason_or_symbol_of_another(counter):
    clerk, codes = counter
    page, phone = clerk.page, clerk.phone
    scans_label(clerk, codes[0])
    phone.tap("Take it in")
    phone.tap("Decide later")
    scans_label(clerk, codes[1])
    enters_a_reason(page)
    page.get_by_role("link", name=f"{codes[0][:3]}-{codes[0][3:]}").tap()
    clerk.sees(codes[0], "hold")
    assert page.get_by_label("Or in your own words").count() == 0
    page.keyboard.press("F9")
    assert page.get_by_label("Or in your own words").input_value() == ""


def test_a_serial_number_that_is_typed_leads_to_its_sensor_and_any_other_text_to_the_search(clerk_at):
    clerk, codes = clerk_at(2)
    page, phone = clerk.page, clerk.phone
    serial = serial_of(1)
    phone.tap("Type a code")
    page.get_by_label("Code").fill(serial)
    phone.tap("Look it up")
    phone.see("This serial number is on record")
    clerk.looks_on_any()
    phone.tap(f"{codes[1][:3]}-{codes[1][3:]}")
    clerk.sees(codes[1], "hold")
    phone.see("Label not read")
    clerk.looks_on_any()
    phone.tap("Only looked")

    phone.tap("Type a code")
    page.get_by_label("Code").fill("4711")
    phone.tap("Look it up")
    phone.see("No part here has it as its serial number either")
    clerk.looks_on_any()
    phone.tap("Search what is on record")
    assert page.get_by_label("What do you look for").input_value() == "4711"
    phone.tap("Search")
    phone.see("Nothing found")
    clerk.looks_on_any()
    page.get_by_role("link", name="Scan or type its label").tap()
    page.get_by_role("button", name="Scan returns").wait_for()
