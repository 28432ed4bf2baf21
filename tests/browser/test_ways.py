"""The other ways of a job on the phone: a pause with its part number, an end without a repair, and why."""

import pytest

from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.browser.seeded_job import open_job
from tests.browser.test_exchange_screens import TOO_SMALL
from tests.browser.test_exchange_screens import TOO_WIDE
from tests.browser_support import Complaints
from tests.core.driver import JOB
from tests.core.scenarios import both_places
from tests.core.scenarios import replaced_and_proven
from tests.static.app_server import AppServer

# Another person takes this phone in hand.
IS_USED_BY = """(name) => new Promise((resolve, reject) => {
  const opening = indexedDB.open('swaptrail');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const writing = opening.result.transaction('meta', 'readwrite');
    writing.objectStore('meta').put(name, 'actor');
    writing.oncomplete = () => { opening.result.close(); resolve(); };
  };
})"""


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    server = AppServer(tmp_path_factory.mktemp("ways") / "data")
    yield server
    server.close()


@pytest.fixture
def open_at(screen_browser, server):
    """Give a maker of pages at the driver's job; fails on anything the browser objects to."""
    complaints = Complaints(server.base)
    contexts = []

    def make(driver):
        contexts.append(screen_browser.new_context(viewport={"width": 390, "height": 844}))
        return open_job(contexts[-1], server.base, driver, complaints)

    yield make
    for context in contexts:
        context.close()
    assert complaints.heard == []


def faulted():
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.photograph()
    return driver


def has_room(page):
    """Hold the screen to its room on a phone and on the narrowest one."""
    for width in (320, 390):
        page.set_viewport_size({"width": width, "height": 844})
        assert page.evaluate(TOO_SMALL) == page.evaluate(TOO_WIDE) == [], width


def ways(page, which):
    page.locator(".job-links summary").click()
    page.get_by_role("link", name="Other ways").click()
    page.locator(f"[data-way={which}]").click()


def test_what_was_heard_at_each_position_is_one_tap_and_one_entry(open_at):
    page = open_at(faulted())
    # It is among the moves, and among the other ways.
    page.get_by_role("button", name="Other moves").click()
    page.locator("summary", has_text="more move").click()
    page.locator(".move", has_text="Listen at right outer").get_by_role("button", name="Listen").click()
    page.get_by_role("heading", name="Listen at the sensors").wait_for()
    assert page.get_by_text("Never a foot on the brake").is_visible()
    page.goto(page.url.partition("#")[0] + f"#/job/{JOB}")
    page.locator("[data-step=move]").wait_for()

    page.locator(".job-links summary").click()
    page.get_by_role("link", name="Other ways").click()
    page.get_by_role("link", name="Listen at the sensors").click()
    page.get_by_role("button", name="Tap what you hear").wait_for()
    assert page.get_by_role("button", name="Tap what you hear").is_disabled()
    has_room(page)

    page.get_by_role("group", name="right outer").get_by_label("Nothing to hear").check()
    page.get_by_role("group", name="right inner").get_by_label("It ticks").check()
    page.get_by_role("button", name="Save what you heard").click()

    page.locator("[data-step=move]").wait_for()
    said = [fact["data"] for fact in facts(page) if fact["kind"] == "listened"]
    assert said == [{"ticks": ["rear-right-inner"], "silent": ["rear-right-outer"]}]


def test_a_pause_asks_for_the_part_and_the_list_says_what_it_waits_for(open_at):
    page = open_at(faulted())
    ways(page, "pause")
    page.get_by_label("Waiting for a part").check()
    assert page.get_by_label("Part number to order").input_value() == "PS-1"
    page.get_by_label("Part number to order").fill("PS-2")
    page.get_by_role("button", name="Pause the job").click()

    page.get_by_role("heading", name="Waiting for a part").wait_for()
    assert "PS-2" in page.locator(".lead").inner_text()
    said = [fact["data"] for fact in facts(page) if fact["kind"] == "job_paused"]
    assert said == [{"why": "part", "part": "PS-2", "note": ""}]

    page.get_by_role("button", name="Go on").click()
    page.locator("[data-step=move]").wait_for()


def test_whoever_has_no_new_part_pauses_from_replace_in_two_taps(open_at):
    driver = faulted()
    driver.start_exchange()
    driver.guided()
    driver.test("rear-right-inner")
    page = open_at(driver)
    page.get_by_role("button", name="No new one yet").click()
    page.get_by_role("radio", name="Waiting for a part", checked=True).wait_for()
    page.locator(".lead", has_text="hang on their wires").wait_for()
    page.get_by_role("button", name="Pause the job").click()

    page.get_by_role("heading", name="Waiting for a part").wait_for()
    page.locator(".lead", has_text="hang on their wires").wait_for()


def test_back_from_each_of_the_ways_leads_to_the_list_of_them_and_then_to_the_step(open_at):
    page = open_at(faulted())
    for how in ("the phone's own", "the button"):
        for which in ("repair", "pause", "hand", "close"):
            ways(page, which)
            page.locator("[data-way]").first.wait_for(state="detached")
            if how == "the button":
                page.get_by_role("button", name="Other ways").click()
            else:
                page.go_back()
            page.locator(f"[data-way={which}]").wait_for()
            page.go_back()
            page.locator("[data-step=move]").wait_for()


def test_the_end_without_a_repair_asks_why_and_what_was_typed_stays_there_and_is_on_no_other_way(open_at):
    page = open_at(faulted())
    ways(page, "close")
    has_room(page)
    page.get_by_role("button", name="Close without a repair").click()
    assert "job_closed" not in [fact["kind"] for fact in facts(page)]
    page.get_by_label("Another reason").check()
    page.get_by_role("button", name="Close without a repair").click()
    page.get_by_text("Say why in a word.").wait_for()
    page.get_by_label("A word for the record").fill("the car is sold")

    page.go_back()
    page.locator("[data-way=pause]").click()
    page.get_by_role("heading", name="Pause the job").wait_for()
    assert page.get_by_role("radio", checked=True).count() == 0
    page.go_back()
    page.locator("[data-way=close]").click()
    page.get_by_role("radio", name="Another reason", checked=True).wait_for()
    assert page.get_by_label("A word for the record").input_value() == "the car is sold"
    page.get_by_role("button", name="Close without a repair").click()

    page.locator("[data-step=done]").wait_for()
    said = next(fact["data"] for fact in facts(page) if fact["kind"] == "job_closed")
    assert (said["why"], said["note"]) == ("other", "the car is sold")


def test_what_is_in_the_hand_is_settled_before_the_end(open_at):
    driver = faulted()
    driver.start_exchange()
    driver.scan_wanted()
    page = open_at(driver)
    ways(page, "close")
    page.get_by_text("Settle this first").wait_for()
    page.get_by_role("button", name="Stop this move").click()
    page.locator("[data-step=fit]").wait_for()


def test_once_what_hung_was_pushed_home_the_end_is_asked_for_at_once(open_at):
    driver = job_driver()
    both_places(driver)
    page = open_at(driver)
    ways(page, "close")
    page.get_by_text("Settle this first").wait_for()
    page.get_by_role("button", name="Pushed home and checked").click()
    page.get_by_role("radio").first.wait_for()
    assert page.get_by_role("button", name="Close without a repair").is_enabled()


def test_where_a_sensor_in_the_hand_goes_is_asked_before_an_end_without_a_repair(open_at):
    driver = job_driver()
    replaced_and_proven(driver)
    page = open_at(driver)
    ways(page, "close")
    page.get_by_text("Settle this first").wait_for()
    has_room(page)
    page.get_by_role("button", name="To the parts counter").click()
    page.get_by_role("radio").first.wait_for()
    moved = [fact["data"] for fact in facts(page) if fact["kind"] == "unit_moved"]
    assert [each["place"] for each in moved] == ["counter"]


def test_a_repair_is_recorded_from_any_step(open_at):
    page = open_at(faulted())
    ways(page, "repair")
    page.get_by_label("wiring at right outer").check()
    page.get_by_label("Sensor pins").check()
    page.get_by_label("In your own words").fill("pin pushed back")
    page.get_by_role("button", name="Record the repair").click()
    page.locator("[data-step=test]").wait_for()
    said = next(fact["data"] for fact in facts(page) if fact["kind"] == "circuit_repaired")
    assert said == {"cause": "circuit:rear-right-outer", "what": "pin pushed back", "segment": "pins"}


def hands_over(page, *, to: str):
    """Hand the job that is on the screen over to somebody by name."""
    page.locator("[data-way=hand]").click()
    page.get_by_label("Name", exact=True).fill(to)
    page.get_by_role("button", name="Hand it over").click()
    page.get_by_role("heading", name=f"Handed over to {to}").wait_for()


def test_a_job_handed_over_is_shown_to_the_other_phone_and_the_list_says_whose_it_is(open_at):
    page = open_at(faulted())
    page.locator(".job-links summary").click()
    page.get_by_role("link", name="Other ways").click()
    page.locator("[data-way=hand]").click()
    page.get_by_role("button", name="Hand it over").click()
    page.get_by_text("Say who works on.").wait_for()
    page.get_by_label("Name", exact=True).fill("Ben")
    page.get_by_role("button", name="Hand it over").click()

    page.get_by_role("heading", name="Handed over to Ben").wait_for()
    assert page.get_by_role("img", name="QR code that opens this job").is_visible()
    has_room(page)
    said = [fact["data"] for fact in facts(page) if fact["kind"] == "job_handed_over"]
    assert said == [{"to": "Ben", "note": ""}]

    page.get_by_role("button", name="Show the jobs").click()
    page.locator(".job-handed").wait_for()
    assert page.locator(".job-handed").inner_text().strip() == "with Ben"
    page.locator(".job-list a").click()
    page.locator(".handed").wait_for()
    assert page.locator(".handed").inner_text().strip() == "Ben works on from here."

    page.locator(".job-links summary").click()
    page.get_by_role("link", name="Other ways").click()
    page.locator("[data-way=close]").click()
    page.get_by_label("The customer stops here").check()
    page.get_by_role("button", name="Close without a repair").click()
    page.get_by_text("Job closed without a repair: the customer stops here.").wait_for()
    assert page.locator(".handed").count() == 0


def test_a_job_handed_to_whoever_reads_the_list_is_said_to_be_theirs(open_at):
    page = open_at(faulted())
    page.locator(".job-links summary").click()
    page.get_by_role("link", name="Other ways").click()
    hands_over(page, to="Zoë")
    page.evaluate(IS_USED_BY, "Zoë")
    page.goto(page.url.partition("#")[0])
    page.reload()
    page.locator(".job-handed").wait_for()
    assert page.locator(".job-handed").inner_text().strip() == "handed to you"


@pytest.mark.parametrize(
    ("comes_to", "shows"),
    [
        ("camera", "Scan its label"),
        ("typing", "Type the code"),
    ],
)
def test_the_other_ways_are_one_tap_away_from_a_camera_and_a_typed_code(open_at, comes_to, shows):
    driver = faulted()
    driver.start_exchange()
    page = open_at(driver)
    page.get_by_role("button", name=shows).click()
    page.get_by_role("link", name="Other ways").click()
    for way in ("pause", "repair", "hand", "close"):
        page.locator(f"[data-way={way}]").wait_for()
    hands_over(page, to="Ben")


def test_the_other_ways_are_one_tap_away_from_a_stop_and_from_the_sensors_in_hand(open_at):
    driver = faulted()
    driver.start_exchange()
    driver.scan_wanted()
    page = open_at(driver)
    page.get_by_role("button", name="Type the code").click()
    page.get_by_label("Code").fill(driver.labels[next(iter(driver.labels))])
    page.keyboard.press("Enter")
    page.get_by_role("alert").wait_for()
    page.get_by_role("link", name="Other ways").click()
    page.locator("[data-way=hand]").wait_for()

    page.goto(page.url.replace("/ways", "/hand"))
    page.get_by_role("link", name="Other ways").click()
    hands_over(page, to="Ben")
    page.get_by_role("button", name="Go on with the job").click()
    page.locator(".handed").wait_for()
