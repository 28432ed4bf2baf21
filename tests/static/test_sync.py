"""Phone and server end in the same state, whatever the line between them does; nothing is ever lost."""

import contextlib

import pytest

from server.labelling import store
from server.log import sync as server_sync
from tests.browser_support import wait_until
from tests.static import app_server as line
from tests.static.phone_parts import on_server
from tests.static.phone_parts import open_bare
from tests.static.phone_parts import records
from tests.static.phone_parts import state_on_server
from tests.waiting import wait_for


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


OPEN_A_JOB = """async () => {
  const [{ id: layout, positions }] = await core.call('layouts');
  const vehicle = { id: device.newId('v'), name: 'blue estate', vin: '' };
  const data = { vehicle, complaint: '', layout, part: '', positions };
  await log.record([{ job: device.newId('j'), kind: 'job_opened', data }]);
}"""
FLAGGED = """async () => {
  const { conflicts } = await core.call('conflicts');
  return conflicts.map(({ about, event }) => [about, event]);
}"""


def test_a_certificate_that_comes_after_the_entries_flags_them_at_once(make_phone):
    """What a phone recorded before it was paired for the counter is no work of the counter."""
    phone = make_phone(paired=False)
    phone.page.evaluate(OPEN_A_JOB)
    assert phone.page.evaluate(FLAGGED) == []

    token = phone.server.link(role="counter").partition("#")[2]
    phone.page.evaluate("(token) => sync.pair(token, 'Jo')", token)
    phone.sync()

    assert phone.page.evaluate(FLAGGED) == [["role", f"{phone.device}:1"]]


STOPPED = """async (code) => {
  await log.catchUp();
  const data = { unit: device.newId('u'), part: 'PS-1', serial: '', code, how: 'scanned', place: 'stock' };
  const { refusal } = await core.call('check', { events: [{ job: null, kind: 'unit_added', data }] });
  return refusal?.title ?? null;
}"""


def test_a_label_that_the_server_took_out_of_use_goes_on_no_sensor(make_phone, app_server):
    """It hung on no sensor, so no entry says that it is void: each phone hears of it from the server."""
    phone = make_phone()
    with contextlib.closing(app_server.database()) as db:
        torn, good, lost = store.issue(db, 3, app_server.base, {}, 0).codes
        assert phone.page.evaluate(STOPPED, torn) is None
        store.void(db, 1, [torn], "torn off the roll", 1)
        phone.sync()
        assert phone.page.evaluate(STOPPED, torn) == "This label is void"
        phone.reload()  # without the server, too
        assert phone.page.evaluate(STOPPED, torn) == "This label is void"
        assert phone.page.evaluate(STOPPED, good) is None
        store.void(db, 1, [lost], "lost", 2)
    phone.sync()
    assert [phone.page.evaluate(STOPPED, code) for code in (torn, lost)] == ["This label is void"] * 2
    assert phone.complaints.heard == []


KEPT_OF_LABELS = """async () => [await store.getMeta('labels_out'), await store.getMeta('labels_out_upto')]"""
AS_BEFORE_NUMBERS = """(codes) => store.write(['meta'], async (tx) => {
  await tx.objectStore('meta').put(codes, 'labels_out');
  await tx.objectStore('meta').delete('labels_out_upto');
})"""


def test_labels_out_of_use_come_page_by_page_and_none_comes_twice(make_phone, app_server, monkeypatch):
    monkeypatch.setattr(server_sync, "MOST_LABELS_OUT", 2)
    phone = make_phone()
    with contextlib.closing(app_server.database()) as db:
        codes = store.issue(db, 7, app_server.base, {}, 0).codes
        store.void(db, 1, codes[:5], "torn off the roll", 1)
        with phone.page.expect_request("**/api/sync") as asked:
            phone.sync()
        assert asked.value.post_data_json["labels_out_upto"] == 0
        assert phone.page.evaluate(KEPT_OF_LABELS) == [codes[:5], 5]
        store.void(db, 1, codes[5:6], "lost", 2)
        with phone.page.expect_response("**/api/sync") as told:
            phone.sync()
        assert told.value.json()["labels_out_after"] == codes[5:6]
        # What an app from before has: all that there were, without a number.
        phone.page.evaluate(AS_BEFORE_NUMBERS, sorted(codes[:6]))
        phone.sync()
        assert phone.page.evaluate(KEPT_OF_LABELS) == [sorted(codes[:6]), 6]
    assert [phone.page.evaluate(STOPPED, code) for code in codes[5:]] == ["This label is void", None]
    assert phone.complaints.heard == []


def test_an_answer_from_before_the_pairing_does_not_undo_it(make_phone, app_server):
    """Each answer about who is asking sets the cookie; one that comes late is not to bring the old one."""
    phone = make_phone(paired=False)
    app_server.fault = line.late_until_paired(app_server)

    with phone.page.expect_request("**/api/session"):
        phone.page.evaluate("void sync.now()")
    phone.pair()

    assert phone.sync()["state"] == "sent"
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
    app_server.fault = line.only_downwards

    one.sync()

    assert one.notes() == ["2a", "1a"]
    assert one.page.evaluate("core.call('state')")["units"].keys() == {
        record["event"]["data"]["unit"] for record in records(one.page)
    }


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


@pytest.mark.parametrize(
    "fault",
    [
        pytest.param(lambda: line.cut_short, id="answers cut short"),
        pytest.param(lambda: line.stumble, id="faults"),
        pytest.param(lambda: line.deliver_twice, id="requests doubled"),
        pytest.param(line.overtaken, id="requests out of order"),
    ],
)
def test_a_bad_line_ends_in_the_same_log(make_phone, app_server, fault):
    phone = make_phone()
    phone.record("a")
    app_server.fault = fault()

    phone.sync()
    phone.record("b")
    phone.sync()
    app_server.fault = None

    assert phone.sync()["state"] == "sent"
    assert on_server(app_server) == phone.notes() == ["a", "b"]
    assert app_server.rows("SELECT count(*) FROM quarantine") == [(0,)]
    assert phone.page.evaluate("device.notice.value.state") == "none"
    assert phone.state() == state_on_server(app_server)


def test_without_a_network_it_says_so_and_catches_up_by_itself(make_phone, app_server):
    phone = make_phone()
    # The network goes between two requests, not in the midst of one, and the browser has noticed: a request
    # that dies on the way is complained of by the browser itself, whatever the app does.
    phone.page.evaluate("async () => { sync.start(); await sync.now(); }")
    phone.context.set_offline(True)
    wait_until(phone.page, "!navigator.onLine")
    phone.record("a")
    wait_until(phone.page, "sync.status.value.state === 'server unreachable'")
    wait_until(phone.page, "sync.status.value.unsentEvents === 1")

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


def test_seen_again_it_asks_the_server(make_phone, app_server):
    phone = make_phone()
    phone.page.evaluate("sync.start()")
    wait_until(phone.page, "sync.status.value.state === 'sent'")
    phone.page.evaluate("sync.now()")
    app_server.requests.clear()

    phone.page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")

    wait_until(phone.page, "sync.status.value.state === 'sent'")
    phone.page.evaluate("sync.now()")
    assert app_server.paths().count("/api/sync") == 2


def test_it_waits_longer_after_each_failure_and_no_two_phones_alike(make_phone, app_server):
    """Doubling with a bound and a random share: common practice for retries (AWS 'Exponential Backoff and
    Jitter', from memory); the figures are ours.
    """
    phone = make_phone()
    app_server.close()
    # In one go and with a clock that stands: a busy machine would try by itself in between, or wait for less.
    waits = """async (chances) => {
      const now = Date.now();
      Date.now = () => now;
      const found = [];
      for (const chance of chances) {
        Math.random = () => chance;
        await sync.now();
        found.push(Math.round((sync.status.value.nextTryAt - now) / 1000));
      }
      return found;
    }"""

    assert phone.page.evaluate(waits, [0.5] * 9) == [2, 4, 8, 16, 32, 64, 128, 256, 300]
    assert phone.page.evaluate(waits, [0, 0.999]) == [150, 450]
    app_server.start()


def test_back_online_it_does_not_wait_for_the_tries_made_offline(make_phone, app_server):
    phone = make_phone()
    app_server.close()
    phone.page.evaluate("sync.start()")
    for _ in range(9):
        phone.page.evaluate("sync.now()")
    online = """async () => {
      Math.random = () => 0.5;
      const now = Date.now();
      Date.now = () => now;
      dispatchEvent(new Event('online'));
      await sync.now();
      return Math.round((sync.status.value.nextTryAt - Date.now()) / 1000);
    }"""

    assert phone.page.evaluate(online) == 2
    app_server.start()
    wait_until(phone.page, "sync.status.value.state === 'sent'")


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


def hold_sync_lock(page) -> None:
    """Stand for a tab that syncs: hold its lock until `free()`, which waits for that, or the page's end."""
    page.evaluate(
        """new Promise((held) => {
            const given_back = navigator.locks.request('swaptrail-sync', () => new Promise((free) => {
                window.free = () => { free(); return given_back; };
                held();
            }));
        })"""
    )


def test_only_one_tab_syncs_at_a_time(make_phone, app_server):
    phone = make_phone()
    other = open_bare(phone.context, app_server.base)
    phone.record("a")
    hold_sync_lock(other)
    app_server.requests.clear()

    phone.page.evaluate("sync.now()")

    assert "/api/sync" not in app_server.paths()
    other.evaluate("free()")
    wait_for(lambda: on_server(app_server) == ["a"])


def test_a_sync_asked_for_again_while_another_tab_syncs_follows_it(make_phone, app_server):
    phone = make_phone()
    other = open_bare(phone.context, app_server.base)
    hold_sync_lock(other)
    phone.page.evaluate("sync.now()")
    phone.page.evaluate("sync.now()")
    app_server.requests.clear()

    other.evaluate("free()")

    wait_for(lambda: "/api/sync" in app_server.paths())


def test_a_tab_goes_on_where_another_was_closed_while_it_sent(make_phone, app_server):
    phone = make_phone()
    other = open_bare(phone.context, app_server.base)
    hold_sync_lock(other)
    phone.page.evaluate("sync.start()")
    phone.record("a")
    wait_until(phone.page, "sync.status.value.unsentEvents === 1")

    other.close()

    wait_until(phone.page, "sync.status.value.state === 'sent'")
    assert on_server(app_server) == ["a"]
