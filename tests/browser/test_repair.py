"""A repair at the phone: where it was, what was done, pictures of it; then the bad reading once more."""

import functools

import pytest

from tests.browser.phone_log import facts
from tests.browser.seeded_job import JOB
from tests.browser.seeded_job import job_driver
from tests.core.scenarios import all_four
from tests.core.scenarios import both_places
from tests.core.scenarios import meter_bad

OUTER = "rear-right-outer"
WIRING = f"circuit:{OUTER}"


@pytest.fixture
def at_repair(take_screens):
    """Give a maker of phones at a job whose fault stayed and whose ground read 12 Ω."""

    def make(driver=None, width=390):
        if driver is None:
            driver = job_driver()
            meter_bad(driver)
        phone = take_screens(width=width).holds(driver)
        phone.show(f"/#/job/{JOB}")
        return phone

    return make


def told(page, kind):
    return [fact["data"] for fact in facts(page) if fact["kind"] == kind]


@functools.cache
def stuck():
    """Return a driver at the step where every check of the wiring was good and the fault stayed."""
    driver = job_driver()
    meter_bad(driver)
    slip = next(each for each in driver.events if each["kind"] == "circuit_measured")
    driver.fact("corrected", device=slip["device"], seq=slip["seq"], reason="slip")
    for check in ("connector", "ground", "supply", "signal"):
        driver.fact("circuit_measured", position=OUTER, check=check, value="", reads="good")
    while driver.step()["id"] != "wiring.stuck":
        driver.test(OUTER)
    return driver


def take(phone, moment):
    phone.page.locator(f"[data-picture={moment}]").click()
    phone.sees()
    phone.tap("Take the picture")
    phone.page.get_by_role("button", name="Keep this picture").click()
    phone.page.locator(f"[data-picture={moment}] .icon").wait_for()


def test_a_repair_says_where_and_what_and_its_bad_reading_is_taken_again(at_repair):
    phone = at_repair()
    page = phone.page
    phone.tap("I have repaired it")
    page.get_by_role("heading", name="Where was it?").wait_for()
    assert page.get_by_text("Key off to unplug").is_visible()
    assert phone.lacking((320, 700, 100), (390, 844, 200)) == {}
    phone.tap("I have repaired it")
    page.get_by_role("alert").get_by_text("Tap where it was.").wait_for()
    page.get_by_label("Sensor plug").check()
    page.get_by_label("Pin seated and locked").check()
    take(phone, "before")
    take(phone, "after")
    assert page.get_by_label("Sensor plug").is_checked()
    phone.tap("I have repaired it")

    page.locator("[data-step='measure.again']").wait_for()
    assert page.get_by_text("Before the repair it read 12 Ω.").is_visible()
    assert page.locator("[data-reads]").count() == 2
    page.locator(".measured").first.fill("0,3")
    page.locator("[data-reads=good]").click()
    page.locator("[data-step=seat]").wait_for()

    [repair] = told(page, "circuit_repaired")
    assert repair == {"cause": WIRING, "what": "Pin seated and locked", "segment": "connector"}
    pictures = [(each["repair"], each["shows"], each["position"]) for each in told(page, "photo_taken")[-2:]]
    assert pictures == [("before", "work", OUTER), ("after", "work", OUTER)]
    assert told(page, "circuit_measured")[-1]["value"] == "0,3 Ω"


def test_a_reading_that_cannot_be_taken_again_is_left_with_its_reason(at_repair):
    driver = job_driver()
    meter_bad(driver)
    driver.fact("circuit_repaired", cause=WIRING, what="repaired", segment="wire")
    phone = at_repair(driver)
    phone.tap("It is out of reach now")
    phone.page.locator("[data-step=seat]").wait_for()
    assert told(phone.page, "reading_not_retaken") == [
        {"position": OUTER, "check": "ground", "reason": "out-of-reach"}
    ]


def test_a_reading_that_is_still_bad_asks_for_another_repair(at_repair):
    driver = job_driver()
    meter_bad(driver)
    driver.fact("circuit_repaired", cause=WIRING, what="repaired", segment="wire")
    phone = at_repair(driver, width=320)
    page = phone.page
    page.locator("[data-reads=bad]").click()
    page.get_by_role("heading", name="Still bad").wait_for()
    assert phone.lacking((320, 700, 100)) == {}
    page.get_by_label("Control unit plug").check()
    phone.tap("I have repaired it")
    page.locator("[data-step='measure.again']").wait_for()


def test_what_was_found_after_all_checks_says_where_too(at_repair):
    phone = at_repair(stuck())
    phone.tap("Found it and repaired it")
    phone.page.get_by_label("Inside the control unit").check()
    phone.tap("Found it and repaired it")
    phone.page.locator("[data-step=seat], [data-step=test]").first.wait_for()
    assert [each["segment"] for each in told(phone.page, "circuit_repaired")] == ["channel"]


def test_a_new_control_unit_after_all_checks_says_where_and_what_before_it_is_recorded(at_repair):
    phone = at_repair(stuck())
    phone.tap("The control unit was replaced")
    assert told(phone.page, "circuit_repaired") == []
    phone.page.get_by_label("Inside the control unit").check()
    phone.page.get_by_role("textbox").first.fill("New unit, set up")
    phone.tap("The control unit was replaced")
    phone.page.locator("[data-step=seat], [data-step=test]").first.wait_for()
    assert told(phone.page, "circuit_repaired") == [
        {"cause": cause, "what": "New unit, set up", "segment": "channel"} for cause in (WIRING, "control")
    ]


def test_a_control_unit_that_never_sounds_says_where_and_what_before_it_is_recorded(at_repair):
    driver = job_driver().begin()
    while driver.step()["id"] != "sounder.rest":
        if driver.step()["id"].startswith("sounder."):
            driver.choose(0)
        else:
            driver.test(OUTER, heard=False)
    phone = at_repair(driver, width=320)
    phone.tap("I replaced or repaired the control unit")
    assert told(phone.page, "circuit_repaired") == []
    assert phone.lacking((320, 700, 100), (390, 844, 200)) == {}
    phone.page.get_by_label("Control unit plug").check()
    phone.page.get_by_role("textbox").first.fill("Plug dried")
    phone.tap("I replaced or repaired the control unit")
    phone.page.locator("[data-step=test]").wait_for()
    assert told(phone.page, "circuit_repaired") == [
        {"cause": "control", "what": "Plug dried", "segment": "control-plug"}
    ]


def test_a_repair_among_the_other_moves_asks_where_and_what_before_it_is_recorded(at_repair):
    driver = job_driver()
    both_places(driver)
    phone = at_repair(driver)
    page = phone.page
    phone.tap("Other moves")
    page.get_by_text("more moves").click()
    phone.tap("I have repaired it")
    page.get_by_role("heading", name="Where was it?").wait_for()
    assert told(page, "circuit_repaired") == []
    assert page.get_by_text("Key off to unplug").is_visible()
    assert phone.lacking((320, 700, 100), (390, 844, 200)) == {}
    phone.tap("Not this")
    page.get_by_text("more moves").click()
    phone.tap("I have repaired it")
    page.get_by_label("Sensor plug").check()
    page.get_by_label("Plug cleaned and dried").check()
    take(phone, "before")
    phone.tap("I have repaired it")

    page.locator("[data-step=test]").wait_for()
    assert told(page, "circuit_repaired") == [
        {"cause": WIRING, "what": "Plug cleaned and dried", "segment": "connector"}
    ]
    assert told(page, "photo_taken")[-1]["repair"] == "before"


def test_a_place_tapped_for_one_cause_is_not_recorded_for_another_that_has_no_such_place(at_repair):
    driver = job_driver()
    all_four(driver)
    phone = at_repair(driver)
    page = phone.page
    phone.show(f"/#/job/{JOB}/ways/repair")
    page.get_by_label("iring at right outer").check()
    page.get_by_label("Sensor plug").check()
    page.get_by_label("upply or ground of the rear").check()
    phone.tap("Record the repair")
    page.get_by_role("alert").get_by_text("Tap where it was.").wait_for()
    assert told(page, "circuit_repaired") == []
