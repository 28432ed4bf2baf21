"""The help: every page opens with no network, its links lead on, and it holds on the narrowest screen."""

import pytest

from server.site.make import write
from server.web.help_pages import INDEX
from server.web.help_pages import help_pages
from server.web.shell import find_static
from tests.browser.screens import TOO_WIDE
from tests.browser.seeded_job import job_driver
from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static.builds import first_visit
from tests.static.builds import wait_for_offline_use
from tests.static.file_host import FileHost

PAGES = help_pages(find_static() / "help" / "en")
LOADED = (
    "[...document.querySelectorAll('.help img')].every((image) => image.complete && image.naturalWidth > 0)"
)


def address(page):
    return "#/help" if page.name == INDEX else f"#/help/{page.name}"


@pytest.fixture(scope="module")
def offline_phone(screen_browser, screen_app):
    """Give a phone that was here once and has no network since; it must not have complained by the end."""
    context = screen_browser.new_context(viewport={"width": 390, "height": 844})
    complaints = Complaints(screen_app.base)
    phone = first_visit(context, screen_app, complaints)
    context.set_offline(True)
    yield phone
    assert complaints.heard == []
    context.close()


@pytest.mark.parametrize("help_page", PAGES, ids=lambda page: page.name)
def test_every_page_opens_with_no_network_and_holds_on_a_narrow_screen_and_at_twice_the_text(
    offline_phone, screen_app, help_page
):
    page = offline_phone
    page.set_viewport_size({"width": 390, "height": 844})
    page.goto(f"{screen_app.base}/{address(help_page)}")

    page.get_by_role("heading", level=1, name=help_page.title, exact=True).wait_for()
    assert page.locator("h1").count() == 1
    for image in page.locator(".help img").all():
        image.scroll_into_view_if_needed()
    wait_until(page, LOADED)
    for width, text in ((390, "112.5%"), (320, "112.5%"), (320, "225%")):
        page.set_viewport_size({"width": width, "height": 844})
        page.evaluate("(size) => { document.documentElement.style.fontSize = size; }", text)
        assert page.evaluate(TOO_WIDE) == [], f"{width} wide, text at {text}"
    page.evaluate("document.documentElement.style.fontSize = ''")


def test_the_list_of_jobs_leads_to_the_help_and_its_pages_lead_on_and_back(take_screens):
    page = take_screens().show()
    page.get_by_role("link", name="Help").click()
    page.get_by_role("heading", level=1, name="Help").wait_for()
    page.get_by_role("link", name="Labels", exact=True).click()
    page.get_by_role("heading", level=1, name="Labels").wait_for()
    assert page.url.endswith("/#/help/labels")
    page.get_by_role("link", name="Back").click()
    page.get_by_role("heading", level=1, name="Help").wait_for()
    page.get_by_role("link", name="Back").click()
    page.get_by_role("heading", level=1, name="No job yet").wait_for()


def test_the_help_at_a_step_leads_back_to_it(take_screens):
    page = take_screens().holds(job_driver().begin()).show(f"/#/job/{JOB}")
    page.get_by_role("link", name="How to start the self-test").click()
    page.get_by_role("heading", level=1, name="Start the self-test").wait_for()
    page.get_by_role("link", name="Back").click()
    page.locator("[data-step=test]").wait_for()


def test_a_page_that_there_is_none_of_says_so(take_screens):
    page = take_screens().show("/#/help/no-such-page")
    page.get_by_text("This address leads nowhere").wait_for()


def test_the_counter_and_the_page_about_this_phone_lead_to_the_help(screen_app, take_screens):
    phone = take_screens()
    page = phone.show(screen_app.link("counter").removeprefix(screen_app.base))
    page.get_by_label("Your name").fill("Kim")
    phone.tap("Pair this phone")
    page.get_by_text("Nothing waits").wait_for()
    page.get_by_role("link", name="Help").click()
    page.get_by_role("heading", level=1, name="Help").wait_for()
    page.goto(f"{phone.base}/#/you")
    page.get_by_role("link", name="Help").click()
    page.get_by_role("heading", level=1, name="Help").wait_for()


def test_the_help_is_part_of_the_site_in_a_folder_of_a_host_too(installed, screen_browser, tmp_path):
    write(installed / "server/_static", tmp_path / "site")
    host = FileHost(tmp_path / "site", "/a/b/")
    context = screen_browser.new_context(viewport={"width": 390, "height": 844})
    try:
        complaints = Complaints(host.base)
        page = complaints.listen(context.new_page())
        page.goto(host.base)
        wait_for_offline_use(page, seconds=60)
        context.set_offline(True)
        page.get_by_role("link", name="Help").click()
        page.get_by_role("link", name="In the driveway").click()
        page.get_by_role("heading", level=1, name="First ten minutes in the driveway").wait_for()
        assert page.url == f"{host.base}#/help/driveway"
        for image in page.locator(".help img").all():
            image.scroll_into_view_if_needed()
        wait_until(page, LOADED)
        page.get_by_role("link", name="print labels").click()
        page.get_by_role("heading", level=1, name="Labels", exact=True).wait_for()
        assert complaints.heard == []
        assert not [path for path in host.paths if not path.startswith("/a/b/")]
    finally:
        context.close()
        host.close()
