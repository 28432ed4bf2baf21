"""What is not sent: how much, what stands against it, what to do about it, and the way out by a file."""

import contextlib
import hashlib
import json
import threading
import time

import pytest
from PIL import Image

from tests.browser.returned import put_on_server
from tests.browser.returned import returned
from tests.browser.screens import screens
from tests.browser.seeded_job import job_driver
from tests.browser_support import wait_until
from tests.core.driver import JOB
from tests.static import app_server as line
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import start_parts
from tests.static.pictures import encoded

SYNC = "/api/sync"
FULL = b"""{"error":{"field":"storage","found":"a full disk","wanted":"free space on the server",
"message":"The server's disk is full. What is on the phone is safe and is sent again."}}"""


@pytest.fixture
def phone_of(screen_browser, app_server):
    """Give a maker of phones of that app; none may have complained by the end of the test."""
    with contextlib.ExitStack() as phones:
        yield lambda **options: phones.enter_context(screens(screen_browser, app_server.base, **options))


def pairs(phone, server):
    """Pair a phone; what is on it is sent then. Seed it before: afterwards a page of it sends by itself."""
    page = phone.show(f"/pair#{server.token()}")
    page.get_by_label("Your name").fill("Zoë")
    phone.tap("Pair this phone")
    page.get_by_role("button", name="Open a job").wait_for()
    return phone.show("/#/outbox")


def answers_with(status, body, path=SYNC):
    """Return a fault of the line: the server refuses one address."""
    return lambda environ, app: (
        (status, "application/json", body) if environ["PATH_INFO"].startswith(path) else None
    )


def forgives(phone, *statuses):
    """Forget that the browser noted refusals of the server, and hold that it noted nothing else."""
    heard = [said for said in phone.complaints.heard if not any(str(status) in said for status in statuses)]
    assert heard == []
    phone.complaints.heard.clear()


def test_a_full_disk_of_the_server_is_said_on_the_phone_and_nothing_is_lost(phone_of, app_server):
    phone = phone_of().holds(job_driver().open())
    app_server.fault = answers_with("507 Insufficient Storage", FULL)
    page = pairs(phone, app_server)
    page.get_by_role("heading", name="1 job not sent yet").wait_for()
    page.get_by_text("The server's disk is full. What is on the phone is safe").wait_for()
    page.get_by_text("Trying again in").wait_for()
    page.get_by_role("link", name="Blue estate 1 entry, saved on this phone").wait_for()

    app_server.fault = None

    page.get_by_role("heading", name="All sent").wait_for()
    assert app_server.rows("SELECT kind FROM events") == [("job_opened",)]
    forgives(phone, 507)


def test_what_waits_comes_back_after_a_reload_and_goes_by_itself(phone_of, app_server):
    phone = phone_of().holds(job_driver().begin())
    app_server.fault = answers_with("503 Service Unavailable", b"{}")
    page = pairs(phone, app_server)
    page.get_by_text("not sent yet").first.wait_for()
    # Only the outbox says this; the list of jobs, which may still be there, says the other too.
    page.get_by_text("Trying again in").wait_for()
    waiting = page.get_by_role("heading", level=1).inner_text()
    page.reload()
    page.get_by_role("heading", name=waiting).wait_for()

    app_server.fault = None
    phone.tap("Send now")

    page.get_by_role("heading", name="All sent").wait_for()
    forgives(phone, 503)


PHOTOS = """async ([job, pictures]) => {
  const { sha256Hex } = await import('/app/parts.js');
  for (const [numbers, position] of pictures) {
    const all = Uint8Array.from(numbers);
    const shown = { sha256: await sha256Hex(all), mime: 'image/jpeg', width: 1, height: 1 };
    const data = { ...shown, bytes: all.length, shows: 'position', position, unit: '' };
    const drafts = [{ job, kind: 'photo_taken', data }];
    const result = await log.record(drafts, { photo: { ...shown, bytes: all.buffer } });
    if (result.refusal) throw new Error(result.refusal.sentence);
  }
}"""


def takes_pictures(phone, *pictures):
    """Record pictures of positions as they are, whatever is in them."""
    page = open_bare(phone.context, phone.base)
    start_parts(page)
    page.evaluate(PHOTOS, [JOB, [[list(content), position] for content, position in pictures]])
    page.close()


def plain(colour):
    return encoded(Image.new("RGB", (64, 48), colour))


def test_a_picture_that_the_server_refuses_holds_up_no_other_and_says_why(phone_of, app_server):
    phone = phone_of().holds(job_driver().open())
    broken, good = plain("#336699")[:-40] + b"no end", plain("#996633")
    takes_pictures(phone, (broken, "rear-right-outer"), (good, "rear-right-inner"))
    page = pairs(phone, app_server)

    page.get_by_role("heading", name="1 picture not sent yet").wait_for()
    refused = page.locator(".not-taken").get_by_text("This is no JPEG.")
    refused.wait_for()
    assert "Blue estate, " in page.locator(".not-taken").inner_text()
    assert app_server.rows("SELECT sha256 FROM photos") == [(hashlib.sha256(good).hexdigest(),)]
    assert page.get_by_role("link", name="Take it again").get_attribute("href").endswith(
        f"{JOB}/position/rear-right-outer"
    )  # fmt: skip
    app_server.requests.clear()
    phone.tap("Try to send it again")
    until = time.monotonic() + 20
    while time.monotonic() < until and not any(request.method == "PUT" for request in app_server.requests):
        page.wait_for_timeout(30)
    refused.wait_for()
    assert [request.method for request in app_server.requests].count("PUT") == 1

    phone.tap("Leave it on this phone")

    page.get_by_role("heading", name="All sent").wait_for()
    page.locator(".not-taken").wait_for(state="detached")
    forgives(phone, 422, 404)


def test_a_picture_that_the_server_stumbles_over_holds_up_no_other(phone_of, app_server):
    phone = phone_of().holds(job_driver().open())
    poison, good = plain("#336699"), plain("#996633")
    bad = hashlib.sha256(poison).hexdigest()
    app_server.fault = answers_with("500 Internal Server Error", b"{}", f"/api/photos/{bad}")
    takes_pictures(phone, (poison, "rear-right-outer"), (good, "rear-right-inner"))
    page = pairs(phone, app_server)
    wait_until(page, "() => document.querySelector('h1').innerText.startsWith('1 picture')")
    assert app_server.rows("SELECT sha256 FROM photos") == [(hashlib.sha256(good).hexdigest(),)]

    app_server.fault = None

    page.get_by_role("heading", name="All sent").wait_for()
    assert {(bad,)} < set(app_server.rows("SELECT sha256 FROM photos"))
    forgives(phone, 500)


def test_a_file_carries_a_job_with_its_pictures_to_another_phone_and_on_to_the_server(
    phone_of, app_server, tmp_path
):
    first = phone_of().holds(job_driver().open())
    takes_pictures(first, (plain("#336699"), "rear-right-outer"))
    page = first.show("/#/outbox")
    phone_words = page.get_by_role("heading", level=1).inner_text()
    assert phone_words == "1 job and 1 picture not sent yet"
    first.tap("Make a file of what waits")
    with page.expect_download() as download:
        first.tap("Save the file")
    assert download.value.suggested_filename.startswith("swaptrail-unsent-d")
    file = tmp_path / "unsent.txt"
    download.value.save_as(file)
    content = file.read_bytes()
    first.context.close()  # this phone is gone for good

    second = phone_of(worker=True)
    page = pairs(second, app_server)
    for cut, title in (
        (content.replace(b"beeps", b"beeqs"), "This file was altered"),
        (plain("#000000"), "This file was not made by this app"),
    ):
        (tmp_path / "other.txt").write_bytes(cut)
        page.get_by_label("Take in a file").set_input_files(tmp_path / "other.txt")
        page.get_by_role("heading", name=title).wait_for()
    second.loses_network()
    page.get_by_label("Take in a file").set_input_files(file)
    page.get_by_text("2 entries and 1 picture came in.").wait_for()
    page.get_by_role("link", name="Blue estate 2 entries and 1 picture, saved on this phone").click()
    page.get_by_role("heading", level=1).wait_for()
    second.context.set_offline(False)
    page.goto(f"{app_server.base}/#/outbox")
    page.get_by_text("Nothing proves which phone recorded this.").first.wait_for()
    assert app_server.rows("SELECT kind FROM events") == []
    page.goto(f"{app_server.base}/#/phones")
    page.get_by_role("heading", name="Brought, not proven").wait_for()
    second.tap("Accept")
    page.get_by_role("heading", name="Brought, not proven").wait_for(state="hidden")
    page.goto(f"{app_server.base}/#/outbox")
    page.get_by_role("heading", name="All sent").wait_for()

    assert app_server.rows("SELECT kind FROM events") == [("job_opened",), ("photo_taken",)]
    assert app_server.rows("SELECT sha256 FROM photos") == [(hashlib.sha256(plain("#336699")).hexdigest(),)]
    page.get_by_label("Take in a file").set_input_files(file)
    page.get_by_text("2 entries of it were here already.").wait_for()
    assert app_server.rows("SELECT count(*) FROM events") == [(2,)]
    forgives(second, 404)


def test_a_file_that_was_cut_off_is_taken_as_far_as_it_goes(take_screens, screen_app, tmp_path):
    first = take_screens().holds(job_driver().begin())
    page = first.show("/#/outbox")
    first.tap("Make a file of what waits")
    with page.expect_download() as download:
        first.tap("Save the file")
    lines = download.value.path().read_bytes().splitlines(keepends=True)
    (tmp_path / "half.txt").write_bytes(b"".join(lines[:4]) + lines[4][:50])
    missing = len(lines) - 2 - 3

    second = take_screens()
    page = second.show("/#/outbox")
    page.get_by_label("Take in a file").set_input_files(tmp_path / "half.txt")

    page.get_by_role("heading", name="Taken in as far as it goes").wait_for()
    page.get_by_text(f"3 entries came in. The file was cut off: {missing} entries are missing.").wait_for()
    page.get_by_role("heading", name="1 job not sent yet").wait_for()


def test_what_is_not_sent_is_counted_in_jobs_and_pictures_not_in_entries(phone_of):
    phone = phone_of().holds(job_driver().begin())
    takes_pictures(phone, (plain("#336699"), "rear-right-outer"), (plain("#663399"), "rear-right-inner"))

    page = phone.show("/#/outbox")

    assert page.get_by_role("heading", level=1).inner_text() == "1 job and 2 pictures not sent yet"
    assert page.locator(".pill").inner_text().endswith("not paired, 3")


def test_pictures_that_the_server_lost_are_listed_with_their_job_until_one_sends_them(phone_of, app_server):
    phone = phone_of().holds(job_driver().open())
    page = pairs(phone, app_server)
    lost = json.dumps([{"sha256": letter * 64, "job": JOB} for letter in "ab"]).encode()
    app_server.fault = line.change_reply(SYNC, b'"photos_lost":[]', b'"photos_lost":' + lost)
    phone.tap("Send now")
    page.get_by_text("The server's copies of 2 pictures are gone or damaged.").wait_for()
    section = page.locator("section", has_text="Pictures missing on the server")
    assert section.get_by_role("link").all_inner_texts() == ["Blue estate"]

    app_server.fault = None
    phone.tap("Send now")
    page.get_by_text("Pictures missing on the server").wait_for(state="hidden")


def test_a_phone_that_was_just_paired_is_not_called_unpaired_while_the_long_log_comes(phone_of, app_server):
    entries, _ = returned(3)
    put_on_server(app_server, entries)
    goes_on = threading.Event()

    def slowly(environ, _app):
        if environ["PATH_INFO"] == SYNC:
            goes_on.wait(20)

    phone = phone_of()
    page = phone.show(f"/pair#{app_server.token()}")
    app_server.fault = slowly
    try:
        page.get_by_label("Your name").fill("Zoë")
        phone.tap("Pair this phone")
        page.get_by_role("button", name="Open a job").wait_for()
        assert "not paired" not in page.locator("header").inner_text()
    finally:
        goes_on.set()
        app_server.fault = None
    page.locator(".pill", has_text="all sent").wait_for()
