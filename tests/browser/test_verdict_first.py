"""What the tests say is on the screen before the next moves are worked out."""

import pytest

from tests.browser.seeded_job import job_driver
from tests.browser.seeded_job import open_job
from tests.browser_support import Complaints
from tests.static.app_server import AppServer

# Holds every answer to `plan` back until it is let go, as a slow phone does.
_SLOW = """(() => {
  const post = Worker.prototype.postMessage;
  window.held = [];
  window.letGo = () => {
    window.held.forEach((send) => send());
    window.held = { push: (send) => send() };
  };
  Worker.prototype.postMessage = function (message, ...more) {
    const send = () => post.call(this, message, ...more);
    if (typeof message?.text === 'string' && message.text.includes('"op":"plan"')) window.held.push(send);
    else send();
  };
})()"""


@pytest.fixture
def page(screen_browser, tmp_path):
    server = AppServer(tmp_path / "data")
    complaints = Complaints(server.base)
    context = screen_browser.new_context(viewport={"width": 390, "height": 844})
    context.add_init_script(_SLOW)
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.photograph()
    yield open_job(context, server.base, driver, complaints)
    context.close()
    server.close()
    assert complaints.heard == []


def test_the_standing_is_read_while_the_move_is_worked_out(page):
    page.get_by_role("heading", name="Working out the next move").wait_for()
    assert page.locator(".verdict").inner_text().startswith("Not settled yet.")
    assert page.get_by_role("button", name="One moment").is_disabled()
    page.evaluate("letGo()")
    page.locator("[data-step=move]").wait_for()
    assert page.get_by_role("heading", name="Working out").count() == 0


def test_what_was_opened_meanwhile_stays_open(page):
    page.get_by_role("heading", name="Working out the next move").wait_for()
    page.get_by_text("More", exact=True).click()
    page.evaluate("letGo()")
    page.locator("[data-step=move]").wait_for()
    assert page.get_by_role("link", name="What the figures rest on").is_visible()
