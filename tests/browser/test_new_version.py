"""A new version of the app is the person's choice, and what was being entered is as it was after it."""

import pytest

from tests.browser.phone_log import facts
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static.builds import STYLE

BUTTON = "Change over now"
FORM = """() => [...document.querySelectorAll('main input, main textarea, main [aria-pressed]')].map(
  ({ name, id, value, checked, ariaPressed }) => [name, id, value, checked, ariaPressed])"""
SHOWN = "document.querySelector('main').innerText"
# Questions that the core has not answered yet.
COUNT_QUESTIONS = """(() => {
  window.unanswered = 0;
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (typeof message.text === 'string') {
      unanswered += 1;
      const heard = ({ data }) => {
        if (data.id !== message.id) return;
        this.removeEventListener('message', heard);
        unanswered -= 1;
      };
      this.addEventListener('message', heard);
    }
    return postMessage.call(this, message, ...rest);
  };
})()"""
SHOWS = f"(text) => {SHOWN} === text"


@pytest.fixture
def phone(screen_browser, own_app):
    """Give a phone of that app."""
    with screens(screen_browser, own_app.base, worker=True) as phone:
        phone.context.add_init_script(COUNT_QUESTIONS)
        yield phone


def get_ready(phone, server) -> None:
    """Serve a new build; the app hears of it and takes it by itself."""
    wait_until(phone.page, "navigator.serviceWorker.controller !== null", seconds=30)
    server.new_build("second")
    phone.page.evaluate("navigator.serviceWorker.getRegistration().then((r) => r.update())")
    waiting = "navigator.serviceWorker.getRegistration().then((r) => Boolean(r.waiting))"
    wait_until(phone.page, waiting, seconds=30)
    # The server was away for a moment, which the browser notes by itself.
    phone.complaints.heard[:] = [said for said in phone.complaints.heard if "ERR_CONN" not in said]


def change_over(phone) -> None:
    """Tap on the new version in the list of jobs."""
    page = phone.show("/#/")
    with page.expect_event("load"):
        phone.tap(BUTTON)
    page.locator(".screen").wait_for()
    assert page.evaluate(STYLE) == "second"
    assert page.get_by_role("button", name=BUTTON).count() == 0


def as_it_stands(page) -> tuple:
    """Return what a form shows, once it has come to rest: its pauses are over, and the core has answered."""
    page.wait_for_timeout(400)
    wait_until(page, "unanswered === 0")
    return page.evaluate(FORM), page.evaluate(SHOWN)


def stands_again(page, form: tuple) -> None:
    """Fail unless a form shows what it did."""
    wait_until(page, SHOWS, form[1])
    assert as_it_stands(page) == form


def open_a_job(phone):
    page = phone.show("/#/new")
    page.get_by_label("Vehicle", exact=True).fill("Green van")
    page.get_by_text("Something else").click()
    page.get_by_label("What is wrong").fill("beeps in the rain")


def enter_a_test(phone):
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_role("button", name="right outer").click()
    page.get_by_text("More: codes, picture, note").click()
    page.get_by_text("Enter the codes on the screen").click()
    page.get_by_label("Code", exact=True).first.fill("c1a2b-13")
    phone.tap("Photograph the screen")
    phone.sees()
    assert page.get_by_role("button", name=BUTTON).count() == 0
    phone.tap("Take the picture")
    page.get_by_role("img", name="The screen of the test").wait_for()


def type_a_code(phone):
    page = phone.show("/#/find")
    phone.tap("Type it")
    page.get_by_label("Code on the label").fill("k7f")


def note_a_part(phone):
    page = phone.show(f"/#/job/{JOB}/position/rear-right-outer")
    page.get_by_text("Note what is printed on it").click()
    page.get_by_label("Part number", exact=True).fill("PS-44")


def test_every_form_is_as_it_was_after_the_change(phone, own_app):
    phone.holds(job_driver().begin())
    forms = {}
    for fill in (open_a_job, enter_a_test, type_a_code, note_a_part):
        fill(phone)
        forms[phone.page.url] = as_it_stands(phone.page)
    before = facts(phone.page)
    get_ready(phone, own_app)

    change_over(phone)

    for address, form in forms.items():
        phone.show(address.removeprefix(phone.base))
        stands_again(phone.page, form)
    assert facts(phone.page) == before


def test_a_check_of_the_wiring_is_as_it_was_after_the_change(phone, own_app):
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.fact("move_started", move="meter", fitted={}, position="rear-right-outer", reason="to see")
    while driver.step()["expects"]["check"] != "continuity":
        driver.choose(2)
    then = f"Check · {driver.step()['progress']['now'] + 1} of"
    phone.holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    page.get_by_label("Measured").fill("4,7")
    form = as_it_stands(page)
    get_ready(phone, own_app)

    change_over(phone)

    phone.show(f"/#/job/{JOB}")
    stands_again(page, form)
    phone.tap("Bad More than 2 Ω, or open")
    page.get_by_text(then).wait_for()
    assert facts(page)[-1]["data"]["value"] == "4,7 Ω"


def test_the_new_version_waits_while_something_is_not_on_record(phone, own_app):
    driver = job_driver().open()
    driver.tap()
    phone.holds(driver)
    page = phone.show(f"/#/job/{JOB}")
    get_ready(phone, own_app)
    page.evaluate(
        """() => {
          window.add = IDBObjectStore.prototype.add;
          IDBObjectStore.prototype.add = () => { throw new DOMException('no', 'UnknownError'); };
        }"""
    )
    phone.tap("All as it should be")
    page.get_by_role("heading", name="Not saved").wait_for()
    page.get_by_role("link", name="Back").click()
    page.get_by_text("It waits until what you entered is on record.").wait_for()
    assert page.get_by_role("button", name=BUTTON).is_disabled()

    page.evaluate("() => { IDBObjectStore.prototype.add = window.add; }")
    phone.tap("Save again")
    page.get_by_role("heading", name="Not saved").wait_for(state="detached")
    change_over(phone)
    assert facts(page)[-1]["kind"] == "looked"
