"""The page that works where the app does not start: it saves what is on the phone as files."""

import hashlib

import pytest

from server.log import unsent_file
from tests.browser.phone_log import entries
from tests.browser.screens import SMALLEST
from tests.browser.screens import TOO_SMALL
from tests.browser.screens import TOO_WIDE
from tests.browser.seeded_job import job_driver
from tests.static.builds import first_visit
from tests.static.pictures import encoded
from tests.static.pictures import picture

_KEEP_PHOTO = """async ([sha256, bytes, kept]) => {
  const { openStore } = await import('/app/parts.js');
  const store = await openStore();
  await store.write(['photos', 'photo_bytes'], async (tx) => {
    await tx.objectStore('photos').put({ sha256, mime: 'image/jpeg', size: bytes.length, at: 1, unsent: 1 });
    await tx.objectStore('photo_bytes').put(new Uint8Array(kept).buffer, sha256);
  });
  await store.close();
}"""
_SENT = """() => new Promise((resolve, reject) => {
  const opening = indexedDB.open('swaptrail');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const tx = opening.result.transaction('events', 'readwrite');
    const events = tx.objectStore('events');
    const asked = events.getAll();
    asked.onsuccess = () => {
      const { unsent, ...first } = asked.result[0];
      events.put({ ...first, n: 1, received_at: 1 });
    };
    tx.oncomplete = () => {
      opening.result.close();
      resolve();
    };
  };
})"""


def keep_photo(page, body: bytes, kept: bytes | None = None) -> str:
    """Keep a photo on this phone, with other bytes than its hash says where `kept` are given."""
    digest = hashlib.sha256(body).hexdigest()
    page.evaluate(_KEEP_PHOTO, [digest, list(body), list(kept or body)])
    return digest


def saved(page, words: str, folder) -> list:
    """Tap a button and read the file that comes of it as a server does."""
    with page.expect_download() as download:
        page.get_by_role("button", name=words).click()
    path = folder / download.value.suggested_filename
    download.value.save_as(path)
    return list(unsent_file.parts(path))


@pytest.fixture
def phone(take_screens):
    """A phone with a job, of which the server has the first entry, and two pictures; one has changed."""
    phone = take_screens().holds(job_driver().begin())
    phone.photo = keep_photo(phone.page, encoded(picture(corner="#336699")))
    keep_photo(phone.page, encoded(picture(corner="#993366")), kept=b"no longer that")
    phone.page.evaluate(_SENT)
    phone.complaints.listen(phone.page)
    return phone


def open_plain(phone):
    phone.page.goto(f"{phone.base}/plain.html")
    phone.page.get_by_role("button", name="Save everything").wait_for()
    return phone.page


def test_all_and_what_was_not_sent_are_saved_as_files_that_a_server_reads(phone, tmp_path):
    page = open_plain(phone)
    kept = entries(page)
    for words, wanted in (("Save everything", kept), ("Save what was not sent", kept[1:])):
        *found, end = saved(page, words, tmp_path)
        events = [part.event for part in found if isinstance(part, unsent_file.Entry)]
        assert events == [entry["event"] for entry in wanted]
        assert [part.sha256 for part in found if isinstance(part, unsent_file.Photo)] == [phone.photo]
        assert end == unsent_file.End(True, len(wanted), 1)
    page.get_by_text("Pictures that changed on this phone are left out.").first.wait_for()


# What Chromium says of a value whose file is gone from its storage.
_LOSE = """(lost) => {
  const { get } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.get = function (key) {
    if (this.name !== 'photo_bytes' || key !== lost) return get.call(this, key);
    const request = { error: new DOMException('Data lost due to missing file.', 'NotReadableError') };
    queueMicrotask(() => request.onerror());
    return request;
  };
}"""


def test_a_picture_that_the_storage_has_lost_costs_nothing_else(phone, tmp_path):
    lost = keep_photo(phone.page, encoded(picture(corner="#669933")))
    page = open_plain(phone)
    page.evaluate(_LOSE, lost)

    *found, end = saved(page, "Save everything", tmp_path)

    assert [part.sha256 for part in found if isinstance(part, unsent_file.Photo)] == [phone.photo]
    assert end == unsent_file.End(True, len(entries(page)), 1)
    page.get_by_text("Pictures that changed on this phone are left out.").wait_for()


@pytest.mark.parametrize("file", ["core.json", "**/micropython*.wasm"])
def test_without_a_core_everything_is_saved(phone, tmp_path, file):
    """A core that is damaged, and one that has nothing to run it: this page asks for neither."""
    asked = []
    phone.context.route(f"**/{file}", lambda route: (asked.append(route), route.fulfill(body=b"\x00{")))
    page = open_plain(phone)

    *_, end = saved(page, "Save everything", tmp_path)

    assert end == unsent_file.End(True, len(entries(page)), 1)
    assert asked == []


_REFUSALS = {
    "throws": "IDBFactory.prototype.open = () => { throw new DOMException('shut', 'SecurityError'); };",
    "fails": """IDBFactory.prototype.open = () => {
      const request = { error: new DOMException('broken', 'UnknownError') };
      queueMicrotask(() => request.onerror());
      return request;
    };""",
    "is not there": "Object.defineProperty(window, 'indexedDB', { value: undefined });",
}


@pytest.mark.parametrize("how", _REFUSALS)
def test_where_the_storage_refuses_it_says_so_and_what_to_do(take_screens, how):
    phone = take_screens()
    phone.context.add_init_script(_REFUSALS[how])
    phone.page.goto(f"{phone.base}/plain.html")

    phone.page.get_by_text("What this phone keeps can't be opened. Close all other tabs").wait_for()
    phone.page.get_by_role("link", name="Start the app").wait_for()


def test_another_phone_takes_in_what_the_plain_page_saved(phone, take_screens, tmp_path):
    saved(open_plain(phone), "Save everything", tmp_path)
    (file,) = tmp_path.iterdir()
    other = take_screens()
    page = other.show("/#/outbox")
    page.locator("input[type=file]").first.set_input_files(file)
    page.get_by_text("Taken in").first.wait_for()
    page.goto(f"{other.base}/#/")
    page.get_by_role("link", name="Blue estate").wait_for()


def test_where_the_app_does_not_come_over_whole_its_screen_leads_to_the_plain_page(phone):
    phone.context.route("**/main.js", lambda route: route.abort())
    phone.page.goto(f"{phone.base}/#/")
    phone.page.get_by_role("link", name="Save what is on this phone").click()
    phone.page.get_by_role("button", name="Save everything").wait_for()
    # The browser itself notes what did not come.
    assert [said for said in phone.complaints.heard if "ERR_FAILED" not in said] == []
    phone.complaints.heard.clear()


def test_where_the_app_fails_at_its_start_its_screen_leads_to_the_plain_page(phone):
    phone.context.add_init_script("BroadcastChannel = function () { throw new Error('no'); };")
    phone.page.goto(f"{phone.base}/#/")
    phone.page.get_by_role("heading", name="could not start").wait_for()
    phone.page.get_by_role("link", name="Save what is on this phone").click()
    phone.page.get_by_role("button", name="Save everything").wait_for()


def test_where_the_start_hangs_the_way_to_the_plain_page_appears(phone):
    phone.page.clock.install()
    held = []
    phone.context.route("**/main.js", lambda route: held.append(route))
    phone.page.goto(f"{phone.base}/#/you")
    phone.page.locator(".starting").wait_for()
    phone.page.clock.fast_forward(20_000)
    phone.page.get_by_role("link", name="Save what is on this phone").wait_for()
    for route in held:
        route.abort()
    phone.page.get_by_role("button", name="Load it again").wait_for()
    phone.complaints.heard.clear()  # the browser notes what did not come


def test_an_empty_phone_says_so_and_is_left_empty_for_the_app(take_screens):
    phone = take_screens()
    phone.page.goto(f"{phone.base}/plain.html")
    phone.page.get_by_text("Nothing was recorded on this phone.").wait_for()
    assert phone.page.evaluate("async () => (await indexedDB.databases()).length") == 0
    phone.show("/#/")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_there_is_room_and_nothing_too_small_in_either_theme(phone, scheme):
    page = open_plain(phone)
    page.emulate_media(color_scheme=scheme)
    for width in (390, 320):
        page.set_viewport_size({"width": width, "height": 844})
        assert page.evaluate(TOO_SMALL, SMALLEST) == []
        assert page.evaluate(TOO_WIDE) == []


def test_it_speaks_the_language_of_the_phone(take_screens):
    phone = take_screens(locale="es-ES")
    phone.page.goto(f"{phone.base}/plain.html")
    phone.page.get_by_role("heading", name="Guardar lo que hay en este teléfono").wait_for()
    assert phone.page.locator("html").get_attribute("lang") == "es"


def test_it_is_there_without_a_network(screen_browser, screen_app):
    context = screen_browser.new_context()
    page = first_visit(context, screen_app)
    context.set_offline(True)
    page.goto(f"{screen_app.base}/plain.html")
    page.get_by_role("heading", name="Save what is on this phone").wait_for()
    page.get_by_text("Nothing was recorded on this phone.").wait_for()
    context.close()
