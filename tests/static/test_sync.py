"""Phone and server end in the same state, whatever the line between them does; nothing is ever lost."""

import io
import json
import shutil

import pytest
from PIL import Image

from server.core.host import Host
from tests.browser_support import Complaints
from tests.browser_support import wait_until
from tests.static import app_server as line
from tests.static.app_server import AppServer
from tests.static.conftest import open_bare
from tests.static.phone_parts import records
from tests.static.phone_parts import start_parts
from tests.static.test_photos import encoded

class Phone:
    """One phone: a browser context with the parts of the app, paired on request."""

    def __init__(self, context, server, *, paired=True):
        self.context = context
        self.server = server
        self.complaints = Complaints(server.base)
        self.page = open_bare(context, server.base, self.complaints)
        self.device = start_parts(self.page)
        if paired:
            self.pair()

    def pair(self):
        self.page.evaluate("(token) => sync.pair(token, 'Zoë')", self.server.token())

    def record(self, *notes):
        for note in notes:
            self.page.evaluate("(note) => log.record([stock(note)])", note)

    def record_photo(self, picture):
        self.page.evaluate(
            """async (bytes) => {
              window.photo = await photos.prepare(new Blob([Uint8Array.from(bytes)]));
              const [{ id: layout, positions }] = await core.call('layouts');
              const job = device.newId('j');
              const vehicle = { id: device.newId('v'), name: 'blue estate', vin: '' };
              const { sha256, mime, width, height } = photo;
              const result = await log.record([
                { job, kind: 'job_opened', data: { vehicle, complaint: '', layout, part: '', positions } },
                { job, kind: 'photo_taken', data: { sha256, mime, bytes: photo.bytes.byteLength, width,
                  height, shows: 'work', position: '', unit: '' } },
              ], { photo });
              if (result.refusal) throw new Error(result.refusal.sentence);
            }""",
            list(encoded(picture)),
        )

    def sync(self):
        self.page.evaluate("sync.now()")
        return self.status()

    def status(self):
        return self.page.evaluate("sync.status.value")

    def notes(self):
        return [record["event"]["data"].get("part") for record in records(self.page)]

    def state(self):
        return self.page.evaluate("core.call('state')")

    def reload(self):
        self.page.reload()
        self.device = start_parts(self.page)


@pytest.fixture
def make_phone(browser, app_server):
    """Give a maker of phones on the same server."""
    contexts = []

    def make(**options):
        context = browser.new_context(service_workers="block")
        contexts.append(context)
        return Phone(context, app_server, **options)

    yield make
    for context in contexts:
        context.close()


def on_server(server):
    """Return the notes that the server holds, in its order."""
    rows = server.rows("SELECT json_extract(body, '$.data.part') FROM events ORDER BY n")
    return [note for (note,) in rows]


def state_on_server(server):
    """Return the state that the server's log folds to."""
    rows = server.rows("SELECT body FROM events ORDER BY n")
    host = Host()
    events = [{"event": json.loads(body)} for (body,) in rows]
    host.call(json.dumps({"op": "reset", "events": events}))
    return json.loads(host.call('{"op": "state"}'))["value"]


def test_an_unpaired_phone_keeps_everything_and_says_so(make_phone):
    phone = make_phone(paired=False)
    phone.record("a", "b")

    status = phone.sync()

    assert status["state"] == "not paired"
    assert (status["unsentEvents"], status["sentence"]) == (
        2,
        "This phone is not paired with the server yet.",
    )
    assert phone.complaints.heard == []


def test_what_was_recorded_before_pairing_is_sent_with_it(make_phone, app_server):
    phone = make_phone(paired=False)
    phone.record("a", "b")

    phone.pair()

    assert phone.status()["state"] == "sent"
    assert phone.status()["unsentEvents"] == 0
    assert on_server(app_server) == ["a", "b"]
    assert [record["n"] for record in records(phone.page)] == [1, 2]
    assert phone.page.evaluate("device.actor") == "Zoë"
    assert phone.page.evaluate("device.notice.value.state") == "none"
    assert phone.complaints.heard == []


def test_a_used_pairing_link_is_refused_in_the_servers_words(make_phone, app_server):
    token = app_server.token()
    first, second = make_phone(paired=False), make_phone(paired=False)
    first.page.evaluate("(token) => sync.pair(token, 'Zoë')", token)

    problem = second.page.evaluate("(token) => say(() => sync.pair(token, 'Jo'))", token)

    assert "used already or has expired" in problem["sentence"]


def test_a_paired_phone_lets_the_next_one_in(make_phone):
    first, second = make_phone(), make_phone(paired=False)

    invitation = first.page.evaluate("sync.pairingLink()")
    token = invitation["link"].partition("#")[2]
    second.page.evaluate("(token) => sync.pair(token, 'Jo')", token)

    assert second.status()["state"] == "sent"
    assert set("".join(invitation["qr"])) == {"0", "1"}


def test_many_events_go_in_batches_and_come_back_in_pages(make_phone, app_server):
    phone = make_phone()
    phone.page.evaluate(
        """async () => {
          for (let batch = 0; batch < 6; batch += 1) {
            await log.record(Array.from({ length: 100 }, (_, i) => stock(`${batch}-${i}`)));
          }
        }"""
    )

    assert phone.sync()["state"] == "sent"

    assert app_server.rows("SELECT count(*) FROM events") == [(600,)]
    other = make_phone()
    assert len(records(other.page)) == 600
    assert other.state() == phone.state() == state_on_server(app_server)


def test_two_phones_end_in_the_same_state_in_the_servers_order(make_phone, app_server):
    one, two = make_phone(), make_phone()
    one.record("1a", "1b")
    two.record("2a")
    two.sync()
    assert two.notes() == ["2a"]
    one.record("1c")

    one.sync()  # its own were first here, the other's are first on the server
    two.sync()
    one.sync()

    assert one.notes() == two.notes() == on_server(app_server) == ["2a", "1a", "1b", "1c"]
    assert one.state() == two.state() == state_on_server(app_server)
    assert one.complaints.heard == two.complaints.heard == []


def test_received_events_come_before_what_is_not_sent_yet(make_phone, app_server):
    one, two = make_phone(), make_phone()
    two.record("2a")
    two.sync()
    one.record("1a")
    app_server.fault = only_downwards

    one.sync()

    assert one.notes() == ["2a", "1a"]
    assert one.page.evaluate("core.call('state')")["units"].keys() == {
        record["event"]["data"]["unit"] for record in records(one.page)
    }


def only_downwards(environ, app):
    """Take nothing in, but give out what there is."""
    if environ["PATH_INFO"] != "/api/sync":
        return None
    body = json.loads(environ["wsgi.input"].read(int(environ["CONTENT_LENGTH"])))
    text = json.dumps({**body, "events": []}).encode()
    environ["wsgi.input"] = io.BytesIO(text)
    environ["CONTENT_LENGTH"] = str(len(text))
    return None


@pytest.mark.parametrize("losses", [1, 3])
def test_a_lost_reply_is_asked_for_again_and_nothing_is_doubled(make_phone, app_server, losses):
    phone = make_phone()
    phone.record("a", "b")
    app_server.fault = line.lose_replies("/api/sync", losses)

    for _ in range(losses):
        assert phone.sync()["state"] == "server unreachable"
        assert phone.status()["unsentEvents"] == 2
    phone.record("c")
    assert phone.sync()["state"] == "sent"

    assert on_server(app_server) == phone.notes() == ["a", "b", "c"]
    assert phone.state() == state_on_server(app_server)


def test_syncing_again_and_again_changes_nothing(make_phone, app_server):
    phone = make_phone()
    phone.record("a")
    for _ in range(3):
        phone.sync()

    assert on_server(app_server) == phone.notes() == ["a"]
    assert phone.page.evaluate("core.restarts") == 0


def test_a_sign_in_page_that_answers_with_200_is_not_trusted(make_phone, app_server):
    phone = make_phone()
    phone.record("a")
    app_server.fault = line.sign_in_page

    status = phone.sync()

    assert status["state"] == "server unreachable"
    assert "sign-in page" in status["sentence"]
    assert status["unsentEvents"] == 1
    app_server.fault = None
    assert phone.sync()["state"] == "sent"
    assert phone.complaints.heard == []


def test_a_reply_changed_on_the_way_is_not_stored(make_phone, app_server):
    one, two = make_phone(), make_phone()
    two.record("2a")
    two.sync()
    app_server.fault = line.change_reply("/api/sync", b'"2a"', b'"2b"')

    status = one.sync()

    assert "damaged" in status["sentence"]
    assert one.notes() == []
    app_server.fault = None
    one.sync()
    assert one.notes() == ["2a"]


def test_without_a_network_it_says_so_and_catches_up_by_itself(make_phone, app_server):
    phone = make_phone()
    phone.page.evaluate("sync.start()")
    phone.context.set_offline(True)
    phone.record("a")
    wait_until(phone.page, "sync.status.value.state === 'server unreachable'")
    assert phone.status()["unsentEvents"] == 1

    phone.context.set_offline(False)

    wait_until(phone.page, "sync.status.value.state === 'sent'")
    assert on_server(app_server) == ["a"]
    assert phone.complaints.heard == []


def test_a_record_is_sent_at_once(make_phone, app_server):
    phone = make_phone()
    phone.page.evaluate("sync.start()")

    phone.record("a")

    wait_until(phone.page, "records().then(([record]) => record.n === 1)")
    assert on_server(app_server) == ["a"]


def test_a_server_that_is_down_is_tried_again_later(make_phone, app_server):
    phone = make_phone()
    app_server.close()
    phone.record("a")

    status = phone.sync()

    assert status["state"] == "server unreachable"
    assert status["sentence"] == "The server cannot be reached. Everything is kept on this phone."
    app_server.start()
    wait_until(phone.page, "sync.status.value.state === 'sent'")
    assert on_server(app_server) == ["a"]


def test_a_withdrawn_pairing_keeps_what_waits(make_phone, app_server):
    phone = make_phone()
    phone.record("a")
    db = app_server.database()
    with db.conn:
        db.conn.execute("UPDATE sessions SET revoked_at = 1")
    db.close()

    assert phone.sync()["state"] == "not paired"
    assert phone.status()["unsentEvents"] == 1

    phone.pair()
    assert phone.status()["state"] == "sent"
    assert on_server(app_server) == ["a"]


# --- photos


def test_a_photo_follows_its_event_and_is_confirmed_by_hash(make_phone, app_server):
    phone = make_phone()
    phone.record_photo(Image.new("RGB", (300, 200), "#336699"))
    waiting = phone.page.evaluate("sync.status.value.unsentPhotos")

    status = phone.sync()

    assert waiting in (0, 1)
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


def test_a_photo_that_the_server_refuses_is_said_and_not_sent_for_ever(make_phone, app_server):
    phone = make_phone()
    phone.page.evaluate(
        """async (bytes) => {
          const { sha256Hex } = await import('/app/canonical.js');
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


# --- lost and doubled phones, restored servers


def test_a_phone_that_lost_its_data_says_so_and_gets_a_new_identity(make_phone, app_server):
    phone = make_phone()
    phone.record("a")
    phone.sync()
    before = phone.device
    phone.page.evaluate(
        """async () => {
          await store.close();
          await new Promise((resolve) => {
            indexedDB.deleteDatabase('swaptrail').onsuccess = resolve;
          });
        }"""
    )

    phone.reload()

    assert phone.device != before
    assert phone.page.evaluate("device.notice.value.state") == "lost"
    phone.record("b")
    assert phone.sync()["state"] == "sent"
    assert phone.notes() == on_server(app_server) == ["a", "b"]


def test_the_servers_session_tells_of_a_loss_that_took_everything_else(make_phone):
    phone = make_phone()
    phone.page.evaluate(
        """async () => {
          await store.close();
          localStorage.clear();
          await new Promise((resolve) => {
            indexedDB.deleteDatabase('swaptrail').onsuccess = resolve;
          });
        }"""
    )
    phone.reload()
    assert phone.page.evaluate("device.notice.value.state") == "none"

    phone.sync()

    assert "lost its data" in phone.page.evaluate("device.notice.value.sentence")


def test_a_cloned_phone_goes_on_under_a_new_identity_and_loses_nothing(
    make_profile, app_server, tmp_path
):
    original = Phone(make_profile("original", service_workers="block"), app_server)
    original.record("before")
    original.sync()
    original.context.close()
    shutil.copytree(tmp_path / "original", tmp_path / "clone")
    for lock in (tmp_path / "clone").glob("Singleton*"):
        lock.unlink()

    one = Phone(make_profile("original", service_workers="block"), app_server, paired=False)
    two = Phone(make_profile("clone", service_workers="block"), app_server, paired=False)
    assert one.device == two.device
    one.record("one-a", "one-b")
    one.sync()
    two.record("two-a")
    two.page.evaluate(
        "async () => log.record([{ kind: 'corrected', data: { device: device.id, seq: 2, reason: 'no' } }])"
    )
    status = two.sync()

    assert status["state"] == "sent"
    assert two.page.evaluate("device.notice.value.state") == "forked"
    assert two.page.evaluate("device.id") != one.device
    one.sync()
    corrected = None
    assert one.notes() == two.notes() == ["before", "one-a", "one-b", "two-a", corrected]
    assert on_server(app_server) == one.notes()
    # the correction still names the event it was made for, which has moved
    last, named = records(one.page)[-1]["event"]["data"], records(one.page)[-2]["event"]
    assert (last["device"], last["seq"]) == (named["device"], named["seq"])
    assert one.state() == two.state() == state_on_server(app_server)
    # what had the old identity is kept apart on both sides
    assert app_server.rows("SELECT count(*) FROM quarantine")[0][0] >= 1
    assert two.page.evaluate("store.withDb((db) => db.count('set_aside'))") == 2


def test_an_older_copy_of_a_phone_takes_a_new_identity_before_it_sends(make_profile, app_server, tmp_path):
    phone = Phone(make_profile("phone", service_workers="block"), app_server)
    phone.record("a")
    phone.sync()
    phone.context.close()
    shutil.copytree(tmp_path / "phone", tmp_path / "older")
    newer = Phone(make_profile("phone", service_workers="block"), app_server, paired=False)
    newer.record("b")
    newer.sync()
    newer.context.close()

    older = Phone(make_profile("older", service_workers="block"), app_server, paired=False)
    older.sync()

    assert older.notes() == ["a", "b"]
    assert older.page.evaluate("device.notice.value.state") == "forked"
    older.record("c")
    assert older.sync()["state"] == "sent"
    assert on_server(app_server) == ["a", "b", "c"]


def test_a_server_put_back_from_an_older_copy_gets_everything_again(make_phone, app_server, tmp_path):
    one, two = make_phone(), make_phone()
    one.record("1a")
    one.sync()
    app_server.close()
    shutil.copytree(app_server.data, tmp_path / "older")
    app_server.start()
    one.record("1b")
    one.sync()
    two.record("2a")
    two.sync()

    app_server.close()
    shutil.rmtree(app_server.data)
    shutil.copytree(tmp_path / "older", app_server.data)
    app_server.start()
    two.record("2b")
    for phone in (two, one, two):
        assert phone.sync()["state"] == "sent"

    assert sorted(on_server(app_server)) == ["1a", "1b", "2a", "2b"]
    assert one.notes() == two.notes() == on_server(app_server)
    assert one.state() == two.state() == state_on_server(app_server)


def test_only_one_tab_syncs_at_a_time(make_phone, app_server):
    phone = make_phone()
    other = open_bare(phone.context, app_server.base)
    start_parts(other)
    phone.record("a")
    other.evaluate("navigator.locks.request('swaptrail-sync', () => new Promise((r) => { window.free = r; })), 0")
    app_server.requests.clear()

    phone.page.evaluate("sync.now()")

    assert "/api/sync" not in app_server.paths()
    other.evaluate("free()")
    phone.page.evaluate("sync.now()")
    assert "/api/sync" in app_server.paths()
