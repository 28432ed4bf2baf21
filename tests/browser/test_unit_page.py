"""A sensor's page, as a scan opens it: with and without a network, and on a phone that is not paired."""

import demo_db
from tests.browser.phone import Phone
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser.seeded_job import label
from tests.core.driver import JOB
from tests.core.driver import home
from tests.static.app_server import AppServer

OUTER, INNER = "rear-right-outer", "rear-right-inner"


def swapped():
    """A job whose fault followed the sensor from right outer."""
    driver = job_driver().begin()
    driver.test(OUTER)
    driver.exchange(rear_right_outer=home(INNER), rear_right_inner=home(OUTER))
    driver.test(INNER)
    return driver


def test_a_scan_opens_everything_that_is_on_record(take_screens):
    driver = swapped()
    phone = take_screens(width=320).holds(driver)
    page = phone.show(label(phone.base, driver.labels[home(OUTER)]).removeprefix(phone.base.upper()))
    for heading in ("Its trail", "Tests", "Who had it", "Labels", "Jobs", "To hand on"):
        page.get_by_role("heading", name=heading, exact=True).wait_for()
    assert "The fault followed" in page.locator(".verdict-sentence").inner_text()
    page.get_by_text("2 tests with it: 2 showed a fault.").wait_for()
    page.get_by_text("2 handovers, each with its label scanned.").wait_for()
    assert page.locator(".station").count() == 2
    assert page.locator(".station .trail-suspect").count() > 0
    assert phone.lacks_room() == []
    page.get_by_role("link", name="Return slip").click()
    page.locator(".sheet .qr").wait_for()
    assert phone.lacks_room() == []


def test_it_opens_without_a_network_and_so_does_its_slip(tmp_path):
    server = AppServer(tmp_path / "data")
    demo_db.build(server.data, server.base)
    phone = Phone(tmp_path / "phone", server.base)
    page = phone.page
    try:
        phone.visit(server.link())
        page.goto(f"{server.base}/#/find")
        row = page.get_by_role("link").filter(has_text="at the parts counter").first
        row.wait_for(timeout=30_000)
        shown = row.locator(".code").inner_text()
        phone.offline()
        page.goto(label(server.base, shown.replace("-", "")))
        page.get_by_role("heading", name="Its trail").wait_for()
        phone.see("The fault followed")
        phone.tap("Show the return slip")
        page.locator(".sheet .qr").wait_for()
        page.get_by_text("What the tests say").wait_for()
        # The phone's own sign that nothing answers is no complaint.
        assert [each for each in phone.complaints.heard if "ERR_INTERNET_DISCONNECTED" not in each] == []
    finally:
        phone.close()
        server.close()


def test_a_phone_that_is_not_paired_is_told_what_to_do_and_nothing_else(screen_browser, tmp_path):
    driver = swapped()
    server = AppServer(tmp_path / "data")
    code = driver.labels[home(OUTER)]
    try:
        with screens(screen_browser, server.base) as stranger:
            page = stranger.show(f"/U/{code}")
            page.get_by_role("heading", name="This phone is not paired").wait_for()
            words = page.locator("main").inner_text()
            assert f"{code[:3]}-{code[3:]}" in words
            assert "Ask someone with a paired phone for a pairing link" in words
            assert "Leave the label on it" in words
            for leaked in ("Blue estate", "PS-1", "fault", "Add the spare"):
                assert leaked not in page.locator("body").inner_text()
            answer = page.request.get(f"{server.base}/api/units/{code}")
            assert answer.status == 401
            assert "estate" not in answer.text()
    finally:
        server.close()


def test_a_picture_of_the_finished_work_goes_into_the_report(take_screens):
    driver = swapped()
    driver.new_unit(INNER)
    driver.guided()
    driver.test()
    phone = take_screens().holds(driver)
    page = phone.show(f"/#/job/{JOB}/report")
    page.get_by_text("There is no picture from after the work yet.").wait_for()
    page.get_by_role("link", name="Take one").click()
    phone.tap("Take a picture")
    phone.sees()
    phone.tap("Take the picture")
    phone.tap("Keep this picture")
    page.get_by_text("The work").first.wait_for()
    page.goto(f"{phone.base}/#/job/{JOB}/report")
    page.get_by_role("heading", name="After the work").wait_for()
    assert page.get_by_text("There is no picture").count() == 0
