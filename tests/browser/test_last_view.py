"""At a start the last view of the address stands at once, as a picture: nothing acts, nothing stale stays."""

import re

import pytest

from tests.browser.phone_log import facts
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until
from tests.core.driver import JOB

# The core does not come before `letCoreCome`, whatever else does.
HOLD_CORE = """(() => {
  const Real = window.Worker;
  const held = new Promise((resolve) => { window.letCoreCome = resolve; });
  window.Worker = class extends Real {
    postMessage(...args) { held.then(() => super.postMessage(...args)); }
  };
})()"""
PICTURE = "document.querySelector('#app').inert && document.querySelector('#app main') !== null"
KEPT = """() => new Promise((resolve) => {
  const opening = indexedDB.open('swaptrail');
  opening.onsuccess = () => {
    const asked = opening.result.transaction('meta').objectStore('meta').get('last_views');
    asked.onsuccess = () => {
      opening.result.close();
      resolve((asked.result?.pages ?? []).map(({ path, html }) => [path, html]));
    };
  };
})"""
# What the start does, done once more behind it: once it is through, whatever would be painted stands.
LOOK_FOR_VIEW = """async (path) => {
  const { lastViews } = await import(document.querySelector('script[src*="/begin.js"]').src);
  await lastViews.paint(path);
}"""
SHIFTS = """(() => {
  window.shifted = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) window.shifted += entry.value;
  }).observe({ type: 'layout-shift', buffered: true });
})()"""


@pytest.fixture
def phone(screen_browser, own_app):
    """Give a phone with a job at its first test."""
    with screens(screen_browser, own_app.base, worker=True) as phone:
        phone.holds(job_driver().begin())
        yield phone


def kept(page) -> dict[str, str]:
    return dict(page.evaluate(KEPT))


def see_it_kept(page, path: str) -> str:
    wait_until(page, f"async () => (await ({KEPT})()).some(([path]) => path === '{path}')")
    return kept(page)[path]


def start_again(phone) -> None:
    """Load the page anew, with a core that waits."""
    phone.page.add_init_script(HOLD_CORE)
    phone.page.add_init_script(SHIFTS)
    phone.page.reload(wait_until="commit")


def test_what_stood_there_stands_again_before_the_core_runs_and_cannot_be_tapped(phone):
    page = phone.show(f"/#/job/{JOB}")
    words = page.locator("main").inner_text()
    see_it_kept(page, f"job/{JOB}")
    before = facts(page)
    start_again(phone)

    wait_until(page, PICTURE)
    assert page.locator("main").inner_text() == words
    assert page.get_by_role("status").filter(has_text="Checking it now").count() == 1
    address = page.url
    for what in (
        page.locator(".main-button"),
        page.locator(".pill"),
        page.locator("main button, main a, main summary").first,
    ):
        box = what.bounding_box()
        page.mouse.click(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.url == address
    assert page.evaluate(PICTURE)
    assert page.locator("main").inner_text() == words

    page.evaluate("letCoreCome()")
    wait_until(page, "!document.querySelector('#app').inert")
    assert page.locator("main").inner_text() == words
    assert page.locator(".checking").count() == 0
    assert facts(page) == before
    assert page.evaluate("window.shifted") < 0.02


def test_a_line_that_breaks_off_leaves_no_picture_and_a_way_on(phone):
    """The worker is kept out, as on a first visit: what it holds does not come over the line."""
    page = phone.show(f"/#/job/{JOB}")
    see_it_kept(page, f"job/{JOB}")
    page.evaluate(
        "navigator.serviceWorker.getRegistrations()"
        ".then((all) => Promise.all(all.map((each) => each.unregister())))"
    )
    page.route("**/main.js", lambda route: route.abort())
    page.reload()
    page.get_by_role("heading", name="The app did not come over whole").wait_for()
    assert not page.evaluate("document.querySelector('#app').inert")
    assert page.locator(".checking").count() == 0

    # The browser says so by itself.
    assert {said for said in phone.complaints.heard if "ERR_FAILED" not in said} == set()
    phone.complaints.heard.clear()
    page.unroute("**/main.js")
    page.get_by_role("button", name="Load it again").click()
    page.locator("[data-step]").wait_for()


def test_it_is_gone_once_the_log_has_moved_on(phone):
    page = phone.show(f"/#/job/{JOB}")
    see_it_kept(page, f"job/{JOB}")
    page.evaluate(
        """() => new Promise((resolve) => {
          const opening = indexedDB.open('swaptrail');
          opening.onsuccess = () => {
            const meta = opening.result.transaction('meta', 'readwrite').objectStore('meta');
            const asked = meta.get('head');
            asked.onsuccess = () => {
              meta.put({ ...asked.result, hash: 'another' }, 'head').onsuccess = () => {
                opening.result.close();
                resolve();
              };
            };
          };
        })"""
    )
    start_again(phone)

    wait_until(
        page, "document.querySelector('script[src*=\"/begin.js\"]') !== null && 'letCoreCome' in window"
    )
    page.evaluate(LOOK_FOR_VIEW, f"job/{JOB}")
    assert not page.evaluate(PICTURE)


def test_another_build_shows_no_view_of_this_one(phone, own_app):
    page = phone.show(f"/#/job/{JOB}")
    see_it_kept(page, f"job/{JOB}")
    wait_until(page, "navigator.serviceWorker.controller !== null", seconds=30)
    own_app.new_build("second")
    page.evaluate("navigator.serviceWorker.getRegistration().then((r) => r.unregister())")
    start_again(phone)

    wait_until(
        page, "document.querySelector('script[src*=\"/begin.js\"]') !== null && 'letCoreCome' in window"
    )
    page.evaluate(LOOK_FOR_VIEW, f"job/{JOB}")
    assert not page.evaluate(PICTURE)
    phone.complaints.heard[:] = [said for said in phone.complaints.heard if "ERR_CONN" not in said]


def test_only_what_the_core_says_of_the_log_is_kept_and_nothing_that_lives_in_the_page(phone):
    page = phone.show(f"/#/job/{JOB}")
    html = see_it_kept(page, f"job/{JOB}")
    phone.show("/#/you")
    phone.show("/#/")
    see_it_kept(page, "")

    assert set(kept(page)) == {"", f"job/{JOB}"}
    assert not re.search(r"blob:|<video|<canvas| style=|<script|<!--", html)


def test_what_was_said_of_the_phone_and_has_been_read_does_not_come_back_with_the_view(phone):
    said = "This phone lost its data"
    page = phone.show("/#/")
    page.evaluate(
        """(sentence) => new Promise((resolve) => {
          const opening = indexedDB.open('swaptrail');
          opening.onsuccess = () => {
            const meta = opening.result.transaction('meta', 'readwrite').objectStore('meta');
            meta.put({ state: 'lost', sentence }, 'notice').onsuccess = () => {
              opening.result.close();
              resolve();
            };
          };
        })""",
        said,
    )
    page.reload()
    page.get_by_text(said).wait_for()
    see_it_kept(page, "")
    page.get_by_role("button", name="I have read this").click()
    page.get_by_text(said).wait_for(state="detached")
    start_again(phone)

    wait_until(page, PICTURE)
    assert page.get_by_text(said).count() == 0
    page.evaluate("letCoreCome()")
    wait_until(page, "!document.querySelector('#app').inert")
    assert page.get_by_text(said).count() == 0
