"""The app without a server: one person's tool that asks for no pairing and reminds of its file."""

import contextlib
import re

import pytest

from server.core.log import envelope
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static.alone_app import AloneApp
from tests.unsent_files import unsent_text

UNIT = "v1.rear-right-outer"
# What only an app with a server has, in the words of its screens.
FOREIGN = re.compile(
    r"\b(server|sync|sent|send|sending|unsent|pair|paired|pairing|outbox|offline|not taken|last exchange)\b",
    re.I,
)
# Where these words say how things are: what a file is good for, whose link this is, who checks a record.
TRUE_WORDS = (
    "and a server takes it in",
    "This app works by itself, for one person. A pairing link belongs to a server: open it at the address of"
    " that server, as it was given to you.",
    "A pairing link",
    "Nothing to pair here",
)
SINCE = """() => new Promise((resolve) => {
  const opening = indexedDB.open('swaptrail');
  opening.onsuccess = () => {
    const asked = opening.result.transaction('meta').objectStore('meta').get('setting.file_since');
    asked.onsuccess = () => {
      opening.result.close();
      resolve(asked.result ?? null);
    };
  };
})"""
ADDRESSES = (
    "/#/",
    "/#/new",
    "/#/you",
    "/#/outbox",
    "/#/file",
    "/#/take-in",
    f"/#/job/{JOB}",
    *(f"/#/job/{JOB}/{part}" for part in ("moves", "trail", "history", "photos", "assumptions", "hand")),
    f"/#/job/{JOB}/install",
    f"/#/job/{JOB}/position/rear-right-outer",
    f"/#/job/{JOB}/report",
    f"/#/unit/{UNIT}",
    f"/#/unit/{UNIT}/slip",
    f"/#/unit/{UNIT}/paper",
    "/#/labels",
    "/#/labels/print",
    "/#/record",
    "/#/find",
    "/#/install",
    f"/#/return/{UNIT}",
    "/#/returns",
    "/#/returns/2026-11-28",
    "/#/search",
    "/#/phones",
    "/#/pair",
    "/pair#T0KEN",
    "/#/code/{code}/scanned",
    "/#/code/{code}/typed",
    "/U/{code}",
    "/#/nowhere",
)
KEPT = """(() => {
  const asked = matchMedia.bind(window);
  window.matchMedia = (query) => query === '(display-mode: standalone)' ? { matches: true } : asked(query);
  navigator.storage.persist = async () => true;
})();"""
# The screen itself, no longer the picture of what it showed last.
OPEN = "!document.querySelector('#app').inert && document.querySelector('.screen') !== null"
LATER = """(() => { const now = Date.now; Date.now = () => now() + %d * 24 * 3600 * 1000; })();"""
SHARES = """navigator.canShare = ({ files }) => files.length === 1;
navigator.share = async ({ files }) => {
  if (globalThis.closes) throw new DOMException('closed', 'AbortError');
  if (globalThis.fails) throw new DOMException('no', 'NotAllowedError');
  globalThis.shared = { name: files[0].name, text: await files[0].text() };
};"""


@pytest.fixture(scope="module")
def alone(tmp_path_factory):
    """The app as static files, so to say: whatever asks for a server is noted."""
    server = AloneApp(tmp_path_factory.mktemp("alone"))
    yield server
    server.close()


@pytest.fixture
def take(screen_browser, alone):
    """Give a maker of phones; none complained, and none asked for a server."""
    alone.requests.clear()
    with contextlib.ExitStack() as phones:
        yield lambda **options: phones.enter_context(screens(screen_browser, alone.base, **options))
    assert alone.asked() == []


def exchanged():
    """Return a driver whose suspect was exchanged and tested again, and who photographed nothing."""
    driver = job_driver().begin()
    driver.test("rear-right-outer")
    driver.photograph()
    driver.exchange(rear_right_outer="v1.rear-right-inner", rear_right_inner=UNIT)
    driver.test("rear-right-inner")
    return driver


def closed():
    """Return a driver whose job is done: the suspect was replaced."""
    driver = exchanged()
    driver.new_unit("rear-right-inner")
    driver.guided()
    driver.test()
    driver.finish()
    return driver


def foreign_words(page):
    text = page.locator("body").inner_text()
    text = re.sub(r"\s+", " ", text)
    for true in TRUE_WORDS:
        text = text.replace(true, "")
    return [
        (match[0], text[max(0, match.start() - 40) : match.end() + 40]) for match in FOREIGN.finditer(text)
    ]


@pytest.mark.parametrize("holds", ["nothing", "a job under way", "a job that is done"])
def test_no_screen_speaks_of_a_server_or_asks_for_one(take, alone, holds):
    phone = take()
    driver = None if holds == "nothing" else exchanged() if holds == "a job under way" else closed()
    code = next(iter(driver.labels.values())) if driver else job_driver().codes[0]
    if driver:
        phone.holds(driver)
    found = {}
    for address in ADDRESSES:
        page = phone.show_anew(address.format(code=code))
        wait_until(page, OPEN)
        for width in (390, 320):
            page.set_viewport_size({"width": width, "height": 844})
            told = foreign_words(page) + [("room", lack) for lack in phone.lacks_room()]
            if told:
                found[address, width] = told
    assert found == {}
    assert alone.asked() == []


def test_an_empty_phone_offers_one_beginning_and_the_file_of_another_phone(take):
    phone = take()
    page = phone.show()
    page.get_by_text("nothing recorded yet").wait_for()
    assert page.locator(".screen-foot button").all_inner_texts() == ["Start here"]
    assert page.locator(".panel, .notice").count() == 0
    page.get_by_role("link", name="I have a file from another phone").click()
    page.get_by_role("heading", name="Take in a file").wait_for()
    page.go_back()
    phone.tap("Start here")
    page.get_by_label("Vehicle", exact=True).wait_for()


def test_the_mark_counts_what_is_in_no_file_until_there_is_one(take):
    phone = take().holds(job_driver().open())
    page = phone.show()
    page.get_by_text("1 only on this phone").wait_for()
    page.get_by_role("link", name="1 entry only on this phone").click()
    page.get_by_role("heading", name="1 entry in no file yet").wait_for()

    saves(phone)

    page.get_by_role("heading", name="All of it is in your last file").wait_for()
    phone.tap("Show the jobs")
    mark = page.locator(".pill", has_text=re.compile("all in a file$"))
    mark.wait_for()
    page.reload()
    mark.wait_for()


def saves(phone):
    """Make the file and save it; return the download."""
    phone.tap("Make the file")
    phone.page.get_by_text("The file is ready, not saved yet").wait_for()
    with phone.page.expect_download() as download:
        phone.tap("Save it")
    phone.page.get_by_role("heading", name="The download has begun").wait_for()
    return download.value


def reminder(page):
    """Return (kicker, sentence) of the reminder on the screen; the jobs are there by then."""
    wait_until(page, OPEN)
    page.get_by_role("link", name="Blue estate").first.wait_for()
    panel = page.locator(".panel").filter(has=page.get_by_role("button", name="Save the file"))
    if not panel.count():
        return None
    return panel.locator(".panel-kicker").inner_text().strip(), panel.locator("p").nth(1).inner_text()


def test_the_reminder_grows_with_the_days_and_one_button_leads_to_the_file(take):
    phone = take().holds(job_driver().begin())
    page = phone.show()
    assert reminder(page) is None

    phone.context.add_init_script(LATER % 3)
    page.reload()
    kicker, sentence = reminder(page)
    assert kicker == "Save the file"
    assert "12 entries are on this phone only, the oldest for 3 days. There is no file yet." in sentence
    assert "Some phones clear a page that is not on the home screen after a week" in sentence

    phone.context.add_init_script(LATER % 3)
    page.reload()
    kicker, sentence = reminder(page)
    assert kicker == "Only on this phone"
    assert "12 entries would be gone with this phone, the oldest for 6 days." in sentence

    phone.tap("Save the file")
    page.get_by_text("The file is ready, not saved yet").wait_for()
    with page.expect_download():
        phone.tap("Save it")
    page.get_by_role("heading", name="The download has begun").wait_for()
    phone.tap("Show the jobs")
    assert reminder(page) is None


def test_a_phone_that_promises_to_keep_it_is_left_in_peace_longer(take):
    phone = take().holds(exchanged())
    phone.context.add_init_script(KEPT)
    page = phone.show()
    # The promise is asked for on the first look; once it is on record, a line does.
    line = page.get_by_role("link", name=re.compile("entries and|entries only"))
    line.wait_for()
    page.reload()
    assert reminder(page) is None
    line.wait_for()

    phone.context.add_init_script(LATER % 8)
    page.reload()
    assert reminder(page)[0] == "Save the file"


def test_a_job_that_was_closed_reminds_at_once_and_no_step_before_it_does(take):
    phone = take().holds(exchanged())
    page = phone.show(f"/#/job/{JOB}")
    page.locator("[data-step]").wait_for()
    assert page.get_by_role("button", name="Save the file").count() == 0

    done = take().holds(closed())
    page = done.show(f"/#/job/{JOB}")
    page.locator("[data-step=done]").wait_for()
    assert page.get_by_role("button", name="Save the file").count() == 1


def test_a_share_that_was_closed_or_failed_saved_nothing_and_one_that_came_through_did(take):
    phone = take().holds(job_driver().open())
    phone.context.add_init_script(SHARES)
    page = phone.show("/#/file")
    phone.tap("Make the file")
    share = page.get_by_role("button", name="Share it")
    share.wait_for()

    page.evaluate("globalThis.closes = true")
    share.click()
    page.evaluate("globalThis.closes = false; globalThis.fails = true")
    share.click()
    page.get_by_text("This phone did not share the file.").wait_for()
    page.get_by_role("heading", name="The file is ready, not saved yet").wait_for()

    page.evaluate("globalThis.fails = false")
    share.click()
    page.get_by_role("heading", name="Handed on").wait_for()
    page.get_by_text("Look there that it arrived: this app cannot see it.").wait_for()
    shared = page.evaluate("shared")
    assert re.fullmatch(r"swaptrail-\d{4}-\d\d-\d\d-\d{4}\.txt", shared["name"])
    assert shared["text"].count("\n") == 3
    page.get_by_role("heading", name="All of it is in your last file").wait_for()


def test_a_file_that_is_not_where_it_should_be_does_not_count(take):
    phone = take().holds(job_driver().open())
    page = phone.show("/#/file")
    page.locator("#app:not([inert]) main").wait_for()
    since = page.evaluate(SINCE)
    assert since
    saves(phone)
    assert page.evaluate(SINCE) is None

    phone.tap("It is not there")

    page.get_by_role("heading", name="The file is ready, not saved yet").wait_for()
    assert page.evaluate(SINCE) == since
    page.locator(".pill", has_text="1 only on this phone").wait_for()


def test_what_is_recorded_after_the_file_was_made_makes_it_stale(take):
    phone = take().holds(job_driver().open())
    page = phone.show("/#/file")
    phone.tap("Make the file")
    page.get_by_text("The file is ready, not saved yet").wait_for()
    page.evaluate(f"location.hash = '#/job/{JOB}'")
    phone.tap("I have read these")
    page.locator("[data-step='look']").wait_for()
    page.evaluate("location.hash = '#/file'")
    page.get_by_role("button", name="Make the file").wait_for()
    assert page.get_by_text("The file is ready").count() == 0


def test_a_pairing_link_and_a_label_of_nobody_say_what_to_do(take):
    phone = take()
    page = phone.show("/pair#T0KEN")
    page.get_by_role("heading", name="Nothing to pair here").wait_for()
    page.get_by_text("open it at the address of that server").wait_for()
    phone.tap("Your file")
    page.get_by_role("heading", name="Nothing to save yet").wait_for()

    code = job_driver().codes[0]
    page = phone.show(f"/U/{code}")
    page.get_by_role("heading", name="This phone holds no records yet").wait_for()
    phone.tap("Take in my file")
    page.get_by_role("heading", name="Take in a file").wait_for()


def test_a_phone_that_lost_its_data_names_the_last_file_and_leads_to_taking_it_in(take, tmp_path):
    phone = take().holds(job_driver().open())
    page = phone.show("/#/file")
    download = saves(phone)
    download.save_as(tmp_path / "file.txt")
    name = download.suggested_filename
    page.goto(f"{phone.base}/manifest.webmanifest")
    page.evaluate(
        """() => new Promise((done) => {
          const asked = indexedDB.deleteDatabase('swaptrail');
          asked.onsuccess = done;
          asked.onblocked = () => { throw new Error('blocked'); };
        })"""
    )

    page = phone.show()
    page.get_by_text("Only the last file that you saved still has it.").wait_for()
    page.locator(".banner").get_by_text(name).wait_for()
    page.get_by_role("link", name="Take in that file").click()
    page.get_by_label("The file of the other phone").set_input_files(tmp_path / "file.txt")
    page.get_by_text("1 entry came in.").wait_for()
    phone.tap("I have read this")
    phone.tap("Show the jobs")
    page.get_by_role("link", name="Blue estate").wait_for()


# What is done to a file, and what is said of it. The last one is taken in as far as it goes.
SPOILT = (
    (lambda data: b"", "This file was not made by this app", "begins with swaptrail"),
    (
        lambda data: b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 40,
        "This file was not made by this app",
        "Pick the file that the other phone made",
    ),
    (
        lambda data: data.replace(b"beeps", b"beeqs"),
        "This file was altered",
        "its bytes do not match its hash. Nothing was taken in. Pass the file on once more",
    ),
    (
        lambda data: data.replace(b'"v":2}', b'"v":7}', 1),
        "This file is from a newer version",
        "It has version 7; this phone reads up to 2. Bring the app up to date",
    ),
    (lambda data: data + data, "These are two files in one", "take in one after the other"),
    (
        lambda data: data[:-10],
        "Taken in as far as it goes",
        "its last line is missing. Pass it on once more",
    ),
)


def test_a_bad_file_is_named_with_what_to_do(take, tmp_path):
    phone = take()
    page = phone.show("/#/take-in")
    file = tmp_path / "file.txt"
    for spoil, title, advice in SPOILT:
        file.write_bytes(spoil(unsent_text(entries_of(job_driver().open())).encode()))
        page.reload()

        page.get_by_label("The file of the other phone").set_input_files(file)

        page.get_by_role("heading", name=title).wait_for()
        assert advice in page.get_by_role("alert").inner_text()
        assert not page.locator(".panel-good").count()


def entries_of(driver):
    """Return a driver's facts as the entries of a phone."""
    return [{"event": event, "hash": envelope.hash_of(event)} for event in driver.events]
