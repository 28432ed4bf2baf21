"""Finding a job, a vehicle, a sensor on a phone with years of work; Back keeps the place."""

import re

import pytest

from tests.browser.phone_log import facts
from tests.browser.returned import put_on_server
from tests.browser.returned import returned
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser.yard import put_yard
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.core.driver import home
from tests.core.scenarios import OUTER
from tests.core.scenarios import replaced_and_proven
from tests.many_jobs import OPEN
from tests.many_jobs import WAITING

ROWS = ".job-list a"
JOBS = 60
SIZES = [(390, 844, 100), (320, 640, 100), (390, 844, 200), (844, 390, 100)]


@pytest.fixture(scope="module")
def yard_kept(screen_browser, screen_app):
    """Give a phone with sixty jobs, and what they are."""
    with screens(screen_browser, screen_app.base) as phone:
        yield phone, put_yard(phone.page, phone.base, JOBS)


@pytest.fixture
def yard_phone(yard_kept):
    """Show that phone's list as it stands when one comes to it, for a test that records nothing."""
    phone, yard = yard_kept
    phone.lacking((390, 844, 100))
    phone.show("/#/you")
    phone.show_anew("/#/")
    phone.page.locator(ROWS).first.wait_for()
    yield phone, yard
    assert phone.complaints.heard == []


def search(page, text, found):
    """Type into the search and wait until the list is that of it."""
    page.get_by_label("Search", exact=True).fill(text)
    page.get_by_text(re.compile(rf"^{found or 'No'} jobs? found$")).wait_for()


def _another(driver, number):
    """Name what a job on another vehicle begins with, and turn the driver to it."""
    driver.job = f"j{number:012x}"
    first = next(event["data"] for event in driver.events if event["kind"] == "job_opened")
    return {**first, "vehicle": {"id": f"v{number:012x}", "name": f"Van {number}", "vin": ""}}


def titles(page):
    return page.locator(".job-list .list-title").all_inner_texts()


def scrolled(page):
    return page.evaluate("document.querySelector('main').scrollTop")


def test_a_job_is_two_taps_from_the_list_by_its_plate(yard_phone):
    phone, yard = yard_phone
    page, old = phone.page, yard.jobs[4]
    page.get_by_label("Search", exact=True).click()
    search(page, old["vehicle"]["plate"].lower().replace("-", ""), 1)
    assert titles(page) == [old["vehicle"]["name"]]
    page.locator(ROWS).click()
    wait_until(page, "(job) => location.hash === `#/job/${job}`", old["id"])
    page.locator(".screen-title", has_text=old["vehicle"]["name"]).wait_for()


def test_a_label_finds_its_job_and_its_sensor(yard_phone):
    phone, yard = yard_phone
    page, code = phone.page, yard.jobs[9]["codes"][0]
    search(page, code.lower(), 1)
    assert page.get_by_text(f"Sensor {code[:3]}-{code[3:]}").is_visible()
    page.get_by_role("heading", name="Sensors").wait_for()
    page.locator(".list a", has_text=code[:3]).last.click()
    wait_until(page, "() => location.hash.startsWith('#/unit/')")


def test_a_plate_leads_to_the_page_of_its_vehicle_too(yard_phone):
    phone, yard = yard_phone
    page, vehicle = phone.page, yard.jobs[4]["vehicle"]
    search(page, vehicle["plate"], 1)
    page.get_by_role("heading", name="Vehicles").wait_for()
    page.locator("a[href*='#/vehicle/']").click()
    wait_until(page, "() => location.hash.startsWith('#/vehicle/')")
    page.get_by_role("heading", name=vehicle["name"]).wait_for()


def test_what_is_not_there_is_said_and_the_search_is_cleared_by_a_tap(yard_phone):
    page = yard_phone[0].page
    search(page, "no such car", 0)
    page.get_by_role("button", name="Clear the search").click()
    page.get_by_role("heading", name="Open jobs").wait_for()
    assert page.get_by_label("Search", exact=True).input_value() == ""


def test_the_list_has_what_is_new_and_folds_away_what_was_closed_long_ago(yard_phone):
    phone, yard = yard_phone
    page = phone.page
    headings = page.locator("h1, h2.list-head").all_inner_texts()
    assert headings == ["Open jobs", "Waiting", "Closed"]
    assert titles(page)[0] == yard.jobs[-1 - WAITING]["vehicle"]["name"]
    page.get_by_role("button", name="closed earlier").click()
    page.get_by_role("heading", name="Closed").wait_for()
    page.get_by_role("button", name="Show more").click()
    wait_until(
        page, "(count) => document.querySelectorAll('.job-list a').length === count", JOBS - OPEN - WAITING
    )
    assert titles(page)[-1] == yard.jobs[0]["vehicle"]["name"]


def test_the_list_is_filtered_by_how_jobs_stand(yard_phone):
    page = yard_phone[0].page
    for words, count in (("Waiting", WAITING), ("Open", OPEN)):
        page.get_by_role("button", name=f"{count} {words}").click()
        wait_until(page, "(count) => document.querySelectorAll('.job-list a').length === count", count)
        assert page.get_by_role("button", name=f"{count} {words}").get_attribute("aria-pressed") == "true"


@pytest.mark.parametrize("way", ["arrow", "phone", "after a reload"])
def test_back_keeps_the_search_the_filter_and_the_place(yard_phone, way):
    page = yard_phone[0].page
    page.get_by_role("button", name="Closed", exact=False).first.click()
    page.get_by_role("button", name="Show more").click()
    page.get_by_label("Search", exact=True).fill("e")
    page.get_by_text(re.compile(r"jobs found$")).wait_for()
    page.wait_for_function("document.querySelector('main').scrollHeight > 1500")
    page.evaluate("document.querySelector('main').scrollTop = 400")
    shown = titles(page)
    before = scrolled(page)
    page.locator(ROWS).nth(4).click()
    page.locator(".screen-back").wait_for()
    if way == "after a reload":
        page.reload()
        page.locator(".screen-back").wait_for()
    if way == "phone":
        page.go_back()
    else:
        page.locator(".screen-back").click()
    page.get_by_label("Search", exact=True).wait_for()
    assert page.get_by_label("Search", exact=True).input_value() == "e"
    assert page.locator(".filter-button[aria-pressed=true]").inner_text().endswith("Closed")
    assert titles(page) == shown
    assert before == scrolled(page) > 0


_BROKEN = """(all) => all.filter((words) => {
  const range = document.createRange();
  range.selectNodeContents(words);
  return range.getClientRects().length > 1;
}).map(({ textContent }) => textContent)"""


def test_no_word_of_the_filter_is_broken_and_all_stand_in_one_row(yard_phone):
    page = yard_phone[0].page
    page.set_viewport_size({"width": 320, "height": 640})
    for chosen in ("Waiting", "Closed"):
        page.get_by_role("button", name=chosen, exact=False).first.click()
        assert page.locator(".filter-button span").evaluate_all(_BROKEN) == []
        tops = page.locator(".filter-button").evaluate_all("(all) => all.map((each) => each.offsetTop)")
        assert len(set(tops)) == 1


def test_the_search_has_room(yard_phone):
    phone, yard = yard_phone
    assert phone.lacking(*SIZES) == {}
    phone.page.get_by_label("Search", exact=True).fill(yard.jobs[0]["codes"][0])
    phone.page.get_by_text("1 job found").wait_for()
    assert phone.lacking(*SIZES) == {}


def opens_the_job(phone) -> dict:
    """Open the job that was filled in, and return what was recorded of its vehicle."""
    phone.tap("Open the job")
    phone.page.locator("[data-step]").wait_for()
    return [fact for fact in facts(phone.page) if fact["kind"] == "job_opened"][-1]["data"]["vehicle"]


def test_a_vehicle_on_record_is_matched_and_none_is_opened_a_second_time_unasked(take_screens):
    phone = take_screens()
    yard = put_yard(phone.page, phone.base, JOBS)
    old = yard.jobs[11]["vehicle"]
    page = phone.show("/#/new")
    # It is matched while it is typed, and a new one is the button.
    page.get_by_label("Vehicle", exact=True).fill(old["plate"].lower().replace(" ", ""))
    page.get_by_role("radio", name=old["name"]).click()
    page.get_by_role("button", name="Another vehicle").wait_for()
    assert page.get_by_label("Vehicle", exact=True).count() == 0
    assert opens_the_job(phone) == old

    phone.show_anew("/#/new")
    page.get_by_label("Vehicle", exact=True).fill("Brown camper")
    wait_until(page, "() => !document.querySelector('input[name=vehicle]')")
    page.get_by_text("Plate, VIN").click()
    page.get_by_label("Plate", exact=True).fill("zz 77")
    page.get_by_role("radio", name="Rear, 4 sensors").check()
    opened = opens_the_job(phone)
    assert (opened["name"], opened["plate"]) == ("Brown camper", "zz 77")

    for field in ("Vehicle", "VIN", "Plate"):  # a plate may have come to another vehicle: last
        phone.show_anew("/#/new")
        if field != "Vehicle":
            page.get_by_label("Vehicle", exact=True).fill("Brown camper")
            page.get_by_text("Plate, VIN").click()
        page.get_by_label(field, exact=True).fill(old["vin"] if field == "VIN" else old["plate"].lower())
        page.get_by_role("radio", name="Rear, 4 sensors").check()
        phone.tap("Open the job")
        page.get_by_text("That plate or VIN is on record. Tap which vehicle it is.").wait_for()
        assert page.locator("[data-step]").count() == 0, field
        assert phone.lacking(*SIZES, (390, 844, 100)) == {}, field
        chosen = "None of these, it is new here" if field == "Plate" else old["name"]
        page.get_by_role("radio", name=chosen).click()
        assert (opens_the_job(phone)["id"] == old["id"]) == (field != "Plate"), field


def test_gaps_and_marks_alone_search_for_nothing(yard_phone):
    page = yard_phone[0].page
    shown = titles(page)
    for text in ("   ", '"'):
        page.get_by_label("Search", exact=True).fill(text)
        page.get_by_role("button", name="Clear the search").wait_for()
        page.get_by_role("heading", name="Open jobs").wait_for()
        assert titles(page) == shown
        assert page.get_by_text("jobs found").count() == 0
        page.get_by_role("button", name="Clear the search").click()


def test_a_search_says_what_the_filter_leaves_out(yard_phone):
    phone, yard = yard_phone
    page, old = phone.page, yard.jobs[4]
    page.get_by_role("button", name=f"{WAITING} Waiting").click()
    search(page, old["vehicle"]["plate"], 0)
    assert page.get_by_text("Try fewer letters").count() == 0
    page.get_by_role("button", name="One stands otherwise: show it").click()
    page.locator(ROWS, has_text=old["vehicle"]["name"]).click()
    wait_until(page, "(job) => location.hash === `#/job/${job}`", old["id"])


def test_a_bad_one_in_stock_is_marked_where_a_search_shows_it(take_screens):
    driver = job_driver()
    replaced_and_proven(driver)
    for number in range(16, 21):  # a search is for more jobs than a few
        driver.force("job_opened", **_another(driver, number))
    driver.job = JOB
    driver.fact("unit_moved", unit=home(OUTER), place="stock", how="tapped", note="as a dummy for the bench")
    page = take_screens().holds(driver).show("/#/")
    page.get_by_label("Search", exact=True).fill(driver.labels[home(OUTER)])
    page.locator("a[href*='#/unit/']", has_text="found bad on Blue estate").wait_for()


# What is not there: what is said of it.
NOWHERE = {
    "job/jx": "This job is not on this phone",
    "job/jx/trail": "This job is not on this phone",
    "job/jx/report": "This job is not on this phone",
    "job/jx/shared": "This job is not on this phone",
    "unit/ux": "This sensor is not on this phone",
    "unit/ux/slip": "This sensor is not on this phone",
    f"job/{JOB}/position/nowhere": "This job has no such position",
    "help/no-page": "This address leads nowhere",
    "no/such/screen": "This address leads nowhere",
}


def test_an_address_of_what_is_not_there_is_a_sentence_with_a_way_on(take_screens):
    phone = take_screens().holds(job_driver().begin())
    page = phone.show()
    page.locator(ROWS).wait_for()
    assert page.get_by_label("Search", exact=True).count() == 0, "few jobs need no search"
    for address, said in NOWHERE.items():
        phone.show_anew(f"/#/{address}")
        assert page.get_by_role("heading", level=1).all_inner_texts() == [said], address
        assert "wanted" not in page.locator("main").inner_text(), address
        phone.tap("Show the jobs")
        page.locator(ROWS).wait_for()
    # And so where the app begins there.
    page.goto("about:blank")
    phone.show("/#/no/such/screen").get_by_role("heading", name=said).wait_for()


def test_a_phone_whose_jobs_are_still_coming_says_that_they_are_not_counted(screen_browser, app_server):
    """The line breaks after the first of several pages: what the list counts is not all that there is."""
    entries, codes = returned(60)
    put_on_server(app_server, entries)
    answered = []

    def breaks_after_a_page(environ, app):
        if environ["PATH_INFO"] != "/api/sync":
            return None
        answered.append(environ["PATH_INFO"])
        return None if len(answered) == 1 else ("504 Gateway Timeout", "text/html", b"")

    app_server.fault = breaks_after_a_page
    with screens(screen_browser, app_server.base) as phone:
        phone.lacks_pictures()
        page = phone.page
        page.goto(app_server.link())
        page.get_by_label("Your name").fill("Zoë")
        page.get_by_role("button", name="Pair this phone").click()
        page.locator(ROWS).first.wait_for()
        coming = page.get_by_text("still on their way to this phone")
        coming.wait_for()
        page.locator(".filter-button").last.click()
        assert int(page.locator(".filter-count").last.inner_text()) < len(codes)
        assert coming.is_visible()
        page.reload()
        coming.wait_for()

        app_server.fault = None
        page.evaluate("dispatchEvent(new Event('online'))")
        coming.wait_for(state="detached")
        page.locator(".filter-count", has_text=str(len(codes))).last.wait_for()
        phone.complaints.heard.clear()
