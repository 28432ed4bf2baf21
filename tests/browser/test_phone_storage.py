"""A phone that is full loses nothing that was entered; one whose browser threw its data away says so."""

import shutil

import pytest

from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until

OUTER = "right outer"
PLENTY = 500_000_000
LEFT = """navigator.storage.estimate = async () => ({ usage: 3_000_000, quota: 3_000_000 + %d });"""
LOST = "This phone lost its data: the browser removed it."


@pytest.fixture
def take_phone(tmp_path, app_server):
    """Give a maker of phones that keep their data from one day to the next."""
    phones = []

    def take(name="phone"):
        phone = Phone(tmp_path / name, app_server.base)
        phones.append(phone)
        return phone

    yield take
    for phone in phones:
        phone.close()


def begins_full(phone, address="/#/"):
    """Start the app on a phone on which nothing more fits; return how to make room.

    From its start: a browser goes on for half a minute with the room that it once found.
    """
    session = phone.context.new_cdp_session(phone.page)

    def grant(size):
        session.send("Storage.overrideQuotaForOrigin", {"origin": phone.base, "quotaSize": size})

    grant(1)
    phone.page.goto(phone.base + address)
    return lambda: grant(PLENTY)


def test_a_full_phone_keeps_the_form_and_the_picture_and_saves_them_once_there_is_room(
    take_phone, app_server
):
    phone = take_phone()
    phone.visit(app_server.link())
    phone.close()
    phone = take_phone()
    page = phone.page
    makes_room = begins_full(phone)
    phone.tap("Open a job")
    page.get_by_label("Vehicle", exact=True).fill("Grey van")
    page.get_by_text("Something else").tap()
    page.get_by_label("What is wrong").fill("Silent at the left")
    page.get_by_role("radio", name="Rear, 4 sensors").tap()
    page.get_by_label("Part number").fill("PS-4711")
    phone.tap("Open the job")

    page.get_by_role("heading", name="Not saved: this phone is full").wait_for()
    phone.see("Free some space on the phone, or send what waits, then save again.")
    assert page.get_by_label("Vehicle", exact=True).input_value() == "Grey van"
    assert page.get_by_label("What is wrong").input_value() == "Silent at the left"
    assert app_server.rows("SELECT count(*) FROM events") == [(0,)]

    makes_room()
    phone.tap("Save again")
    Mechanic(phone).looks_around()
    Mechanic(phone).enters_a_test(OUTER)
    phone.wait_step("photo")
    job = page.evaluate("location.hash")
    phone.close()
    phone = take_phone()
    page = phone.page
    makes_room = begins_full(phone, f"/{job}")
    phone.wait_step("photo")
    phone.tap("Open the camera")
    wait_until(page, "() => document.querySelector('video')?.videoWidth > 0")
    phone.tap("Take left outer")
    page.get_by_role("heading", name="Not saved: this phone is full").wait_for()

    makes_room()
    phone.tap("Save again")

    page.get_by_role("button", name="Take left inner").wait_for()
    page.goto(f"{app_server.base}/#/outbox")
    page.get_by_role("heading", name="All sent").wait_for()
    assert app_server.rows("SELECT count(*) FROM photos") == [(1,)]
    assert [said for said in phone.complaints.heard if "404" not in said] == []


def evicts(folder, *, all_of_it):
    """Throw away what a browser keeps for a page, as it does with the app closed; cookies stay."""
    own = folder / "profile" / "Default"
    for name in ("IndexedDB", "Local Storage", "Service Worker") if all_of_it else ("IndexedDB",):
        shutil.rmtree(own / name)


@pytest.mark.parametrize("all_of_it", [False, True], ids=["the database", "all but the cookie"])
def test_a_phone_whose_data_was_thrown_away_says_so_and_never_starts_again_at_one(
    take_phone, app_server, tmp_path, all_of_it
):
    phone = take_phone()
    phone.visit(app_server.link())
    Mechanic(phone).opens_a_job()
    phone.page.goto(f"{app_server.base}/#/outbox")
    phone.page.get_by_role("heading", name="All sent").wait_for()
    before = app_server.rows("SELECT device, max(seq) FROM events GROUP BY device")
    phone.close()
    evicts(tmp_path / "phone", all_of_it=all_of_it)

    phone = take_phone()
    phone.page.goto(app_server.base)
    phone.see(LOST)
    phone.see("Blue estate")  # what was sent comes back from the server
    phone.page.reload()
    phone.see(LOST)
    phone.page.get_by_role("button", name="I have read this").tap()
    phone.page.get_by_text(LOST).wait_for(state="detached")
    phone.page.reload()
    phone.see("Blue estate")
    assert phone.page.get_by_text(LOST).count() == 0
    phone.page.goto(f"{app_server.base}/#/you")
    phone.page.get_by_label("Your name").fill("Mara")
    phone.tap("Use this name")
    phone.page.goto(f"{app_server.base}/#/")
    Mechanic(phone).opens_a_job(vehicle="Grey van")
    phone.page.goto(f"{app_server.base}/#/outbox")
    phone.page.get_by_role("heading", name="All sent").wait_for()
    after = dict(app_server.rows("SELECT device, max(seq) FROM events GROUP BY device"))
    assert before[0] in after.items()
    assert sorted(after) != [device for device, _ in before]
    assert len(after) == 2
    assert app_server.rows("SELECT count(*) FROM quarantine") == [(0,)]


INSTALLED = """() => {
  const asked = matchMedia.bind(window);
  window.matchMedia = (query) => query === '(display-mode: standalone)' ? { matches: true } : asked(query);
}"""
NOT_PROMISED = "The browser has not promised to keep what is not sent."


def test_an_app_that_is_only_a_page_in_the_browser_says_so_and_how_to_change_it(take_screens):
    page = take_screens().show("/#/you")
    page.get_by_text("The app is not on the home screen").wait_for()
    page.get_by_role("link", name="How to put it on the home screen").wait_for()


@pytest.mark.parametrize(
    "standing",
    [
        pytest.param(f"({INSTALLED})();", id="as the standard says it"),
        pytest.param(
            "Object.defineProperty(navigator, 'standalone', { value: true });", id="as an iPhone does"
        ),
    ],
)
def test_on_the_home_screen_a_promise_that_was_refused_is_named_while_something_waits(take_screens, standing):
    phone = take_screens().holds(job_driver().open())
    phone.context.add_init_script(standing)
    page = phone.show()
    page.get_by_text(NOT_PROMISED).wait_for()
    assert page.get_by_role("heading", name="Put Swaptrail on the home screen").count() == 0

    page.get_by_text(NOT_PROMISED).click()
    page.get_by_text("The app is on the home screen").wait_for()
    page.get_by_text("The browser may remove the data when space is short").wait_for()
    assert page.get_by_role("button", name="Ask the browser to keep it").is_visible()


def test_one_that_does_promise_is_believed_and_no_more(take_screens, screen_browser):
    phone = take_screens()
    session = screen_browser.new_browser_cdp_session()
    page = phone.show()
    contexts = session.send("Target.getBrowserContexts")["browserContextIds"]
    for context in contexts:
        session.send(
            "Browser.setPermission",
            {
                "permission": {"name": "persistent-storage"},
                "setting": "granted",
                "origin": phone.base,
                "browserContextId": context,
            },
        )
    page.goto(f"{phone.base}/#/you")
    phone.tap("Ask the browser to keep it")
    page.get_by_text("The browser has promised to keep the data").wait_for()
    page.get_by_text("Only what was sent is safe from a lost phone.").wait_for()


def test_little_room_is_said_before_it_runs_out(take_screens):
    phone = take_screens()
    phone.context.add_init_script(LEFT % 20_000_000)
    page = phone.show()
    page.get_by_text("Space runs short on this phone: 3.0 MB in use, 20.0 MB left at most.").click()
    page.get_by_role("button", name="Take sent pictures off this phone").wait_for()

    roomy = take_screens()
    roomy.context.add_init_script(LEFT % 2_000_000_000)
    page = roomy.show("/#/you")
    page.get_by_text("3.0 MB in use, 2.0 GB left at most").wait_for()
    assert page.get_by_text("runs short").count() == 0
