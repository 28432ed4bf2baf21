"""Lost, cloned and restored phones take a new identity, a restored server starts over; no fact is lost."""

import shutil

import pytest

from tests.static.phone_parts import Phone
from tests.static.phone_parts import on_server
from tests.static.phone_parts import records
from tests.static.phone_parts import state_on_server


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


TAKE_BACK = "() => log.record([{ kind: 'corrected', data: { device: device.id, seq: 2, reason: 'no' } }])"
PUT_RIGHT = """async () => {
  const { seq, event } = (await records()).at(-1);
  const entry = { kind: event.kind, data: { ...event.data, part: 'another' } };
  return log.record([{ kind: 'put_right', data: { device: device.id, seq, entry, reason: 'no' } }]);
}"""


@pytest.mark.parametrize("correction", [TAKE_BACK, PUT_RIGHT], ids=["taken back", "put right"])
def test_a_cloned_phone_goes_on_under_a_new_identity_and_loses_nothing(
    make_profile, app_server, tmp_path, correction
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
    two.page.evaluate(correction)
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


def test_a_server_that_came_back_a_little_behind_hides_nothing_from_a_phone_with_a_later_cursor(
    make_phone, app_server, tmp_path
):
    """It kept its name, its log has outgrown the phone's cursor, and nothing of the phone's own was lost."""
    one, two, three = make_phone(), make_phone(), make_phone()
    one.record("1a")
    one.sync()
    app_server.close()
    shutil.copytree(app_server.data, tmp_path / "behind")
    app_server.start()
    two.record("2a")
    two.sync()
    two.context.close()
    one.sync()

    app_server.close()
    shutil.rmtree(app_server.data)
    shutil.copytree(tmp_path / "behind", app_server.data)
    app_server.start()
    three.record("3a", "3b")
    three.sync()
    before = three.page.evaluate("store.getMeta('installation')")
    assert one.sync()["state"] == "sent"
    assert three.sync()["state"] == "sent"

    # What the server had signed for that phone proves it, so every phone starts over.
    assert three.page.evaluate("store.getMeta('installation')") != before
    assert sorted(on_server(app_server)) == ["1a", "2a", "3a", "3b"]
    assert one.notes() == three.notes() == on_server(app_server)
    assert one.state() == three.state() == state_on_server(app_server)


LOSE_KEY = "async () => { await store.setMeta('record_key', undefined); }"


def now_under(phone):
    """Return the device id that a phone has now."""
    return phone.page.evaluate("device.id")


def test_what_a_phone_sends_is_signed_by_a_key_of_its_own(make_phone, app_server):
    phone = make_phone()
    phone.record("a")

    assert phone.sync()["state"] == "sent"

    key = phone.page.evaluate(
        "store.getMeta('record_key').then(({ key, privateKey }) => !privateKey.extractable && key)"
    )
    assert app_server.rows("SELECT device, role, key FROM certificates") == [(phone.device, "bench", key)]
    assert app_server.rows("SELECT device, seq FROM heads") == [(phone.device, 1)]


def test_a_phone_whose_key_is_gone_goes_on_under_a_new_identity_and_loses_nothing(make_phone, app_server):
    phone = make_phone()
    phone.record("a")
    phone.sync()
    before = phone.device
    phone.record("b")
    phone.page.evaluate(LOSE_KEY)
    phone.reload()

    assert phone.sync()["state"] == "sent"

    assert now_under(phone) != before
    assert "its key was lost" in phone.page.evaluate("device.notice.value.sentence")
    assert phone.notes() == on_server(app_server) == ["a", "b"]
    assert [row[0] for row in app_server.rows("SELECT device FROM events ORDER BY n")] == [
        before,
        now_under(phone),
    ]


def test_a_phone_that_was_put_out_comes_back_under_a_new_identity_with_its_work(make_phone, app_server):
    phone, other = make_phone(), make_phone()
    phone.record("a")
    phone.sync()
    before = phone.device
    phone.record("b")
    other.page.evaluate(
        """async () => {
          const { phones } = await sync.api.get('/api/phones');
          for (const each of phones) if (!each.this) await sync.api.post(`/api/phones/${each.id}/revoke`, {});
        }"""
    )
    assert phone.sync()["state"] == "not paired"

    phone.pair()

    assert phone.sync()["state"] == "sent"
    assert now_under(phone) != before
    assert on_server(app_server) == ["a", "b"]


def test_what_a_phone_hands_back_after_a_restore_counts_in_the_name_of_the_lost_one(make_phone, app_server):
    lost, other = make_phone(), make_phone()
    other.sync()
    lost.record("a")
    lost.sync()
    other.sync()
    kept = app_server.rows("SELECT device, hash FROM events")
    lost.context.close()

    other.page.evaluate(
        """async () => {
          const { forgetNumbers } = await import('/app/parts.js');
          await forgetNumbers(store);
        }"""
    )
    sent = []
    other.page.on(
        "request", lambda request: sent.append(request.post_data_json) if "/api/sync" in request.url else None
    )
    other.sync()

    [brought] = [body for body in sent if body["events"]]
    assert [(each["relayed"], each["event"]["device"]) for each in brought["events"]] == [(True, lost.device)]
    assert [each["device"] for each in brought["certificates"]] == [lost.device]
    assert [(each["device"], each["hash"]) for each in brought["signed_heads"]] == kept
