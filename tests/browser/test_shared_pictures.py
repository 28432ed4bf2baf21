"""Pictures that another app shares: kept before anything is asked, then put to a job by the person."""

import json

from tests.browser.phone import Phone
from tests.browser.phone_log import facts
from tests.browser.seeded_job import job_driver
from tests.browser_support import ROOT
from tests.browser_support import wait_until
from tests.static.builds import wait_for_offline_use
from tests.static.pictures import encoded
from tests.static.pictures import picture
from tests.static.pictures import with_location

# What the phone does with what a person shares: a form with files, sent as one navigation.
SHARE = """(files) => {
  const { share_target: target } = globalThis.manifest;
  const form = document.createElement('form');
  const chosen = new DataTransfer();
  for (const { name, type, bytes } of files) {
    chosen.items.add(new File([new Uint8Array(bytes)], name, { type }));
  }
  const input = document.createElement('input');
  Object.assign(form, { action: new URL(target.action, globalThis.manifestUrl), method: target.method });
  Object.assign(form, { enctype: target.enctype });
  Object.assign(input, { type: 'file', name: target.params.files[0].name, multiple: true });
  input.files = chosen.files;
  form.append(input);
  document.body.append(form);
  form.submit();
}"""
READ_MANIFEST = """async () => {
  globalThis.manifestUrl = document.querySelector('link[rel=manifest]').href;
  globalThis.manifest = await (await fetch(globalThis.manifestUrl)).json();
}"""
KEPT = """() => new Promise((resolve, reject) => {
  const opening = indexedDB.open('swaptrail');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const asked = opening.result.transaction('photo_bytes').objectStore('photo_bytes').getAll();
    asked.onsuccess = () => {
      opening.result.close();
      resolve(asked.result.map((bytes) => [...new Uint8Array(bytes)]));
    };
  };
})"""
WAITING = "() => caches.open('swaptrail-shared').then((cache) => cache.keys()).then(({ length }) => length)"


def jpeg(corner="#c00000", **options) -> dict:
    """Return a picture as another app hands it over."""
    return {
        "name": "yard.jpg",
        "type": "image/jpeg",
        "bytes": list(encoded(picture(corner=corner), **options)),
    }


NO_PICTURE = {"name": "notes.pdf", "type": "application/pdf", "bytes": list(b"%PDF-1.7 nothing")}


def ready(phone, address="/#/"):
    """Show the app and wait until its worker takes what comes."""
    page = phone.show(address)
    wait_for_offline_use(page)
    page.evaluate(READ_MANIFEST)
    return page


def share(page, *files):
    """Share files with the app."""
    with page.expect_event("load"):
        page.evaluate(SHARE, list(files))
    page.locator(".screen").wait_for()


def test_shared_pictures_go_on_record_without_a_network_and_without_what_the_file_tells(take_screens):
    phone = take_screens(worker=True).holds(job_driver().begin())
    page = ready(phone)
    phone.loses_network()
    share(page, jpeg(exif=with_location()), jpeg(corner="#0000c0"), NO_PICTURE)
    page.get_by_role("heading", name="What do they show?").wait_for()
    page.get_by_text("Not kept: notes.pdf").wait_for()
    page.get_by_text("This file is not a picture.").wait_for()
    phone.tap("Keep 2 pictures")
    assert page.get_by_text("Say what this picture shows.").count() == 2

    page.get_by_label("It shows").first.select_option("Right outer")
    page.get_by_label("It shows").last.select_option("The screen of the test")
    phone.tap("Keep 2 pictures")
    page.get_by_role("heading", name="Pictures").wait_for()
    taken = [fact["data"] for fact in facts(page) if fact["kind"] == "photo_taken"]
    assert [(each["shows"], each["position"]) for each in taken] == [
        ("position", "rear-right-outer"),
        ("screen", ""),
    ]
    kept = [bytes(each) for each in page.evaluate(KEPT)]
    assert len(kept) == 2
    assert all(b"Exif" not in each and b"CAMERA-MAKE" not in each for each in kept)
    assert page.evaluate(WAITING) == 0


def test_what_was_shared_waits_over_a_reload_until_somebody_says_what_it_shows(take_screens):
    phone = take_screens(worker=True).holds(job_driver().begin())
    page = ready(phone)
    share(page, jpeg())
    page.get_by_label("It shows").wait_for()
    page.goto(f"{phone.base}/#/")
    page.reload()
    page.get_by_text("1 shared picture waits for a job.").click()
    phone.tap("Keep none")
    page.get_by_role("link", name="Blue estate").wait_for()
    assert page.get_by_text("shared picture").count() == 0
    assert page.evaluate(WAITING) == 0


def test_with_several_jobs_open_it_asks_which(take_screens):
    phone = take_screens(worker=True).holds(job_driver().begin())
    other = job_driver()
    other.job = "j000000000002"
    layout = other.core("layouts")[0]
    other.fact(
        "job_opened", vehicle={"id": "v2", "name": "Grey van", "vin": ""}, complaint="silent",
        layout=layout["id"], part="", positions=layout["positions"],
    )  # fmt: skip
    phone.holds(other)
    page = ready(phone)
    share(page, jpeg())
    page.get_by_role("heading", name="Which job do they belong to?").wait_for()
    page.get_by_role("link", name="Grey van").click()
    page.get_by_label("It shows").select_option("The work, or something else")
    phone.tap("Keep this picture")
    page.get_by_role("heading", name="Pictures · Grey van").wait_for()
    assert page.evaluate(WAITING) == 0


def test_with_no_job_open_it_says_so_and_keeps_nothing(take_screens):
    phone = take_screens(worker=True)
    page = ready(phone)
    share(page, jpeg(), jpeg(corner="#0000c0"))
    page.get_by_role("heading", name="No job is open").wait_for()
    page.get_by_text("2 pictures were not kept").wait_for()
    assert page.evaluate(WAITING) == 0


def test_at_the_parts_counter_it_says_so_and_nothing_lies_unseen(tmp_path, app_server):
    phone = Phone(tmp_path / "phone", app_server.base)
    try:
        page = phone.page
        page.goto(app_server.link("counter"))
        page.get_by_label("Your name").fill("Jo")
        phone.tap("Pair this phone")
        page.get_by_role("button", name="Scan returns").wait_for()
        wait_until(page, "() => navigator.serviceWorker.controller !== null", seconds=30)
        page.evaluate(READ_MANIFEST)
        share(page, jpeg(), jpeg(corner="#0000c0"))
        page.get_by_role("heading", name="This phone is at the parts counter").wait_for()
        page.get_by_text("2 pictures were not kept").wait_for()
        assert page.evaluate(WAITING) == 0
        phone.tap("To the counter")
        page.get_by_role("button", name="Scan returns").wait_for()
        assert phone.complaints.heard == []
    finally:
        phone.close()


def test_a_share_that_holds_no_file_says_so(take_screens):
    page = ready(take_screens(worker=True))
    share(page)
    page.get_by_role("heading", name="No picture came along").wait_for()


def test_a_phone_without_its_worker_is_led_to_a_screen_that_says_so(take_screens):
    phone = take_screens()
    page = phone.show()
    page.evaluate(READ_MANIFEST)
    share(page, jpeg())
    page.get_by_role("heading", name="The pictures did not arrive").wait_for()


def test_a_phone_on_which_nothing_fits_keeps_none_of_them(tmp_path, app_server):
    phone = Phone(tmp_path / "phone", app_server.base)
    try:
        phone.visit(app_server.link())
        page = phone.page
        wait_until(page, "() => navigator.serviceWorker.controller !== null", seconds=30)
        page.evaluate(READ_MANIFEST)
        session = phone.context.new_cdp_session(page)
        session.send("Storage.overrideQuotaForOrigin", {"origin": phone.base, "quotaSize": 1})
        share(page, jpeg(), jpeg(corner="#0000c0"))
        page.get_by_role("heading", name="This phone is full").wait_for()
        assert page.evaluate(WAITING) == 0
    finally:
        phone.close()


def test_the_address_in_the_manifest_is_relative():
    manifest = json.loads((ROOT / "static" / "manifest.webmanifest").read_text("utf-8"))
    assert not manifest["share_target"]["action"].startswith(("/", "http"))


def test_a_sharing_that_fails_is_said_also_where_an_earlier_picture_waits(take_screens):
    phone = take_screens(worker=True).holds(job_driver().begin())
    page = ready(phone)
    share(page, jpeg())
    page.get_by_role("heading", name="What do they show?").wait_for()
    page.evaluate("location.hash = '#/shared/full'")
    page.get_by_text("This phone is full").wait_for()
    page.get_by_role("heading", name="What do they show?").wait_for()
