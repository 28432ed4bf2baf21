"""A photo travels apart from its event, is sent once, and is confirmed by its hash."""

import json
import threading

import pytest
from PIL import Image

from tests.static import app_server as line
from tests.static.phone_parts import on_server


def test_a_photo_follows_its_event_and_is_confirmed_by_hash(make_phone, app_server):
    phone = make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    app_server.fault = line.lose_replies("/api/sync", 1)
    assert phone.sync()["unsentPhotos"] == 1

    status = phone.sync()

    assert (status["state"], status["unsentPhotos"], status["unsentBytes"]) == ("sent", 0, 0)
    sha = phone.page.evaluate("photo.sha256")
    assert [path.name for path in app_server.data.rglob(f"{sha}*")]
    assert phone.page.evaluate("store.photoBytes(photo.sha256).then((b) => b.byteLength)") > 0
    other = make_phone()
    assert other.page.evaluate("(sha) => photos.url(sha)", sha).startswith("blob:")
    assert other.page.evaluate("photos.url('0'.repeat(64))") is None


def test_a_photo_whose_reply_was_lost_is_asked_about_and_not_sent_twice(make_phone, app_server):
    phone = make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    sha = phone.page.evaluate("photo.sha256")
    app_server.fault = line.lose_replies(f"/api/photos/{sha}", 1)
    phone.sync()
    assert phone.status()["unsentPhotos"] == 1
    assert [r.method for r in app_server.requests if r.path.endswith(sha)] == ["PUT"]
    app_server.requests.clear()

    assert phone.sync()["unsentPhotos"] == 0

    asked = [r.method for r in app_server.requests if r.path.startswith("/api/photos/")]
    assert asked == ["HEAD"]


def test_a_photo_damaged_on_the_phone_is_said_and_not_sent(make_phone, app_server):
    phone = make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    phone.page.evaluate(
        """store.write(['photo_bytes'], async (tx) => {
          const table = tx.objectStore('photo_bytes');
          const bytes = new Uint8Array(await table.get(photo.sha256));
          bytes[100] ^= 1;
          await table.put(bytes.buffer, photo.sha256);
        })"""
    )

    status = phone.sync()

    assert status["state"] == "refused"
    assert status["sentence"] == "A photo cannot be sent: it was damaged on this phone."
    assert not [r for r in app_server.requests if r.method == "PUT"]


_LEAVE_OUT = "import('/app/parts.js').then(({ leavePhotoOut }) => leavePhotoOut(store, photo.sha256))"
_DROP = "store.write(['photos'], (tx) => tx.objectStore('photos').delete(photo.sha256))"


@pytest.mark.parametrize(
    ("meanwhile", "left"),
    [(_LEAVE_OUT, {"left_out": 1}), (_DROP, {})],
    ids=["a person leaves it out", "room is made of it"],
)
def test_what_becomes_of_a_photo_while_it_is_on_its_way_stays_so(make_phone, app_server, meanwhile, left):
    phone = make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    asked, done = threading.Event(), threading.Event()

    def fault(environ, app):
        if environ["REQUEST_METHOD"] != "PUT":
            return None
        asked.set()
        done.wait(20)
        refusal = {"field": "photo", "found": "no end", "wanted": "a JPEG", "message": "This is no JPEG."}
        return "422 Unprocessable Entity", "application/json", json.dumps({"error": refusal}).encode()

    app_server.fault = fault
    phone.page.evaluate("() => { globalThis.sending = sync.now(); }")
    while not asked.is_set():
        phone.page.wait_for_timeout(30)
    phone.page.evaluate(meanwhile)
    done.set()
    phone.page.evaluate("sending")

    kept = phone.page.evaluate("store.photo(photo.sha256)") or {}
    assert {name: kept[name] for name in ("left_out", "unsent", "problem") if name in kept} == left
    assert (phone.status()["state"], phone.status()["unsentPhotos"]) == ("sent", 0)


def test_a_photo_that_the_browser_has_lost_holds_up_no_other(make_phone, app_server):
    phone = make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    # What Chromium says of a value whose file is gone from its storage.
    phone.page.evaluate(
        """() => {
          const lost = photo.sha256;
          const withDb = store.withDb.bind(store);
          const get = (db) => (table, key) => table === 'photo_bytes' && key === lost
            ? Promise.reject(new DOMException('Data lost due to missing file.', 'NotReadableError'))
            : db.get(table, key);
          const own = (db, name) => db[name]?.bind?.(db) ?? db[name];
          const asked = (db, name) => (name === 'get' ? get(db) : own(db, name));
          const shut = (db) => new Proxy(db, { get: (_, name) => asked(db, name) });
          store.withDb = (work) => withDb((db) => work(shut(db)));
        }"""
    )
    phone.record_photo(Image.new("RGB", (300, 200), "#993366"))

    status = phone.sync()

    assert status["sentence"] == "A photo cannot be sent: its bytes are missing on this phone."
    assert [r.method for r in app_server.requests if r.path.startswith("/api/photos/")].count("PUT") == 1


def test_a_photo_that_the_server_refuses_is_said_and_not_sent_for_ever(make_phone, app_server):
    phone = make_phone()
    phone.page.evaluate(
        """async (bytes) => {
          const { sha256Hex } = await import('/app/parts.js');
          const all = Uint8Array.from(bytes);
          const photo = { bytes: all.buffer, mime: 'image/jpeg', sha256: await sha256Hex(all),
            width: 1, height: 1 };
          await log.record([stock('a')], { photo });
        }""",
        list(b"no picture at all"),
    )

    first = phone.sync()
    app_server.requests.clear()
    second = phone.sync()

    assert first["state"] == second["state"] == "refused"
    assert first["sentence"].startswith("A photo cannot be sent: ")
    assert not [r for r in app_server.requests if r.method == "PUT"]
    assert on_server(app_server) == ["a"]


@pytest.mark.parametrize(
    "fault",
    [
        pytest.param(line.sign_in_page, id="a sign-in page with 200"),
        pytest.param(line.confirm_another_photo, id="another hash"),
    ],
)
def test_a_photo_counts_as_sent_by_the_servers_own_word_only(make_phone, app_server, fault):
    phone = make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))

    def only_photos(environ, app):
        return fault(environ, app) if environ["PATH_INFO"].startswith("/api/photos/") else None

    app_server.fault = only_photos
    status = phone.sync()

    assert (status["unsentEvents"], status["unsentPhotos"]) == (0, 1)
    assert status["state"] == "server unreachable"
    app_server.fault = None
    assert phone.sync()["unsentPhotos"] == 0
    sha = phone.page.evaluate("photo.sha256")
    assert [path.name for path in app_server.data.rglob(f"{sha}*")]


def test_small_versions_of_what_others_took_are_there_without_a_network(make_phone, app_server):
    phone, other = make_phone(), make_phone()
    phone.record_photo(Image.effect_noise((2000, 1500), 40).convert("RGB"))
    phone.sync()
    sha = phone.page.evaluate("photo.sha256")
    other.sync()

    other.page.evaluate("small.fetchMissing()")
    other.context.set_offline(True)

    shown = """(sha) => photos.url(sha, { small: true }).then(async (url) => {
      const image = new Image();
      image.src = url;
      await image.decode();
      return [image.naturalWidth, image.naturalHeight];
    })"""
    assert other.page.evaluate(shown, sha) == [480, 360]
    assert other.page.evaluate("(sha) => photos.url(sha)", sha) is None


def test_a_small_version_is_fetched_once_and_again_where_it_was_dropped(make_phone, app_server):
    phone, other = make_phone(), make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    sha = phone.page.evaluate("photo.sha256")
    # The entry is there before its picture.
    app_server.fault = line.lose_replies(f"/api/photos/{sha}", 1)
    phone.sync()
    other.sync()
    app_server.requests.clear()
    for _ in range(2):
        other.page.evaluate("small.fetchMissing()")
    phone.sync()
    other.page.evaluate("small.fetchMissing()")
    kept = "(sha) => small.bytes(sha).then((bytes) => bytes?.byteLength > 0)"
    assert other.page.evaluate(kept, sha)

    other.page.evaluate("import('/app/parts.js').then(({ dropSmallPictures }) => dropSmallPictures())")
    assert not other.page.evaluate(kept, sha)
    other.page.evaluate("small.fetchMissing()")

    assert other.page.evaluate(kept, sha)
    # Its own pictures are on the phone whole.
    phone.page.evaluate("small.fetchMissing()")
    assert not phone.page.evaluate(kept, sha)


def test_a_photo_that_rots_on_the_server_is_sent_again_by_any_phone_that_has_it(make_phone, app_server):
    phone, other = make_phone(), make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    assert phone.sync()["state"] == "sent"
    sha = phone.page.evaluate("photo.sha256")
    (file,) = app_server.data.rglob(f"{sha}*")
    picture = file.read_bytes()
    file.write_bytes(picture[:-9])

    # Whoever looks at it has the server notice; its round would, in time.
    assert other.page.evaluate("(sha) => photos.url(sha)", sha) is None
    assert [lost["sha256"] for lost in other.sync()["lostPhotos"]] == [sha]
    status = phone.sync()

    assert (status["state"], status["lostPhotos"]) == ("sent", [])
    assert file.read_bytes() == picture
    assert other.sync()["lostPhotos"] == []
    assert other.page.evaluate("(sha) => photos.url(sha)", sha).startswith("blob:")
