"""Two phones work off line on one job and contradict each other: one card, one scan, the same on both."""

from tests.browser.screens import SMALLEST
from tests.browser.seeded_job import job_driver
from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def contradicted():
    """Ben has exchanged two sensors and tested; Ana had put one of them into stock."""
    driver = job_driver().faulted()
    driver.start_exchange(OUTER, INNER)
    driver.guided()
    ana = Driver(driver.core, device="d00000000000000a1")
    ana.force("unit_moved", unit=home(OUTER), place="stock", how="scanned", note="")
    driver.events += ana.events
    driver.force(
        "test_run",
        heard=True,
        faulted=[INNER],
        silent=[],
        unplugged=[],
        codes=[],
        came_and_went=False,
        note="",
    )
    return driver


def test_the_card_has_both_stories_once_and_a_typed_label_settles_it(take_screens):
    driver = contradicted()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{driver.job}")
    code = driver.labels[home(OUTER)]
    shown = f"{code[:3]}-{code[3:]}"
    page.get_by_role("heading", name=f"{shown} in two places").wait_for()
    words = page.locator("main").inner_text()
    for said in (f"fitted {shown} at right inner", f"put {shown} into stock", "Test 2 counts once this"):
        assert words.count(said) == 1, words
    for gone in ("in dispute", "% sure", "Two places are on record"):
        assert gone not in words
    assert page.locator(".main-button").inner_text() == "Scan it now"
    assert phone.lacks_room_on_any() == {}
    for width in (320, 390):
        page.set_viewport_size({"width": width, "height": 844})
        assert page.locator(".main-button").bounding_box()["height"] >= SMALLEST, width
    page.get_by_role("button", name="Type").click()
    page.get_by_role("textbox").fill(code)
    page.locator(".main-button").click()
    page.get_by_role("heading", name=f"Where is {shown} now?").wait_for()
    assert phone.lacks_room_on_any() == {}
    page.get_by_role("button", name="At right inner", exact=True).click()
    page.get_by_text("The fault followed").first.wait_for()
    assert "two places" not in page.locator("main").inner_text()


def test_a_mix_up_that_somebody_went_on_with_is_settled_by_a_tap_and_no_label(take_screens):
    """Seen: each label that was shown at the card was stopped, and the job stood still."""
    driver = job_driver().faulted()
    driver.start_exchange()
    for _ in range(2):
        driver.scan_wanted()
    driver.fact("units_mixed", units=[home(OUTER), home(INNER)], note="")
    for unit, place in ((INNER, OUTER), (OUTER, INNER)):
        driver.force("unit_fitted", unit=home(unit), position=place, how="scanned", override="", hanging=True)
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{driver.job}")
    page.get_by_role("heading", name="get mixed up?").wait_for()
    assert phone.lacks_room_on_any() == {}
    page.get_by_role("button", name="No: each is where it was put").click()
    page.get_by_role("heading", name="get mixed up?").wait_for(state="detached")
    page.locator("[data-step]").wait_for()
    assert page.locator("[data-step]").get_attribute("data-step") != "settle.mixed"
