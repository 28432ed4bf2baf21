"""An app and a server of different versions, and clocks that differ: nothing is dropped, and it is said."""

import json
from contextlib import closing

from server.clock import now_ms
from server.core.log import envelope
from server.log import events
from tests.static import app_server as line
from tests.static.phone_parts import on_server
from tests.static.phone_parts import records

MINUTE = 60_000
DAY = 24 * 60 * MINUTE
SHIFT_CLOCK = """(ms) => {
  window.rightly ??= Date.now;
  Date.now = () => window.rightly.call(Date) + ms;
}"""
CLOCK_AHEAD = "device.server.standing.value.clockAhead"
OPEN_JOB = """async () => {
  const [{ id: layout, positions }] = await core.call('layouts');
  const vehicle = { id: device.newId('v'), name: 'blue estate', vin: '' };
  const data = { vehicle, complaint: '', layout, part: '', positions };
  const result = await log.record([{ kind: 'job_opened', job: device.newId('j'), data }]);
  return result.refusal?.rule ?? '';
}"""


def from_a_newer_version(device):
    """Return an event in a format and of a kind that this version does not know."""
    return {
        "device": device,
        "seq": 1,
        "prev": "",
        "v": 2,
        "at": 1,
        "actor": "Kim",
        "job": None,
        "kind": "sensor_weighed",
        "data": {"grams": 31},
        "place": "bay 4",
    }


def answers(changes):
    """Return a fault that changes the JSON of answers: {path: change(answer, environ)}."""

    def fault(environ, app):
        change = changes.get(environ["PATH_INFO"])
        if change is None:
            return None
        answer = json.loads(line.answer_of(app, environ))
        change(answer)
        return "200 OK", "application/json", json.dumps(answer).encode()

    return fault


def test_what_a_newer_version_recorded_is_kept_and_the_rest_goes_on(make_phone, app_server):
    event = from_a_newer_version("d00000000000000ee")
    with closing(app_server.database()) as db:
        taken = events.receive(db, [{"event": event, "hash": envelope.hash_of(event)}], None, 1)
    assert (taken.stored, taken.refused) == (1, [])
    phone = make_phone()
    phone.record("a")

    assert phone.sync()["state"] == "sent"

    kept = {record["device"]: record["event"] for record in records(phone.page)}
    assert kept["d00000000000000ee"] == event
    assert phone.page.evaluate("core.available") is True
    missed = phone.page.evaluate("core.call('conflicts')")["not_understood"]
    assert [entry["kind"] for entry in missed] == ["sensor_weighed"]
    assert phone.state()["units"]


def test_what_an_older_server_refuses_stays_and_is_said_and_goes_later(make_phone, app_server):
    phone = make_phone()
    phone.record("a")
    reason = "event.place is there; wanted no field of this name."

    def older(answer):
        answer["format"] = 0

    def refusing(answer):
        answer["refused"] = [{"device": phone.device, "seq": 1, "reason": reason, "code": "malformed"}]

    changed = answers({"/api/session": older, "/api/sync": refusing})

    def fault(environ, app):
        line.only_downwards(environ, app)
        return changed(environ, app)

    app_server.fault = fault
    phone.record("b")
    status = phone.sync()
    waiting = status["unsentEvents"]
    assert status["state"] == "refused"
    assert "The server runs an older version than this app" in status["sentence"]
    assert reason in status["sentence"]

    app_server.fault = None
    assert phone.sync()["state"] == "sent"
    assert waiting >= 1
    assert on_server(app_server) == ["a", "b"]


def test_an_app_that_is_too_old_begins_no_job_but_sends_all_it_has(make_phone, app_server):
    phone = make_phone()
    assert phone.page.evaluate(OPEN_JOB) == ""

    app_server.fault = answers({"/api/session": lambda answer: answer.update(oldest_format=2)})
    phone.sync()
    assert phone.page.evaluate(OPEN_JOB) == "too_old"
    phone.record("a")
    assert phone.sync()["state"] == "sent"
    assert phone.status()["unsentEvents"] == 0

    # it holds while there is no server to ask
    app_server.close()
    phone.context.set_offline(True)
    assert (
        phone.page.evaluate(
            """async () => {
          const { openDevice } = await import('/app/parts.js');
          return (await openDevice(store)).server.standing.value.oldest;
        }"""
        )
        == 2
    )
    phone.context.set_offline(False)
    app_server.start()


def test_a_clock_that_is_wrong_is_measured_and_orders_nothing(make_phone, app_server):
    phone = make_phone()
    assert abs(phone.page.evaluate(CLOCK_AHEAD)) < MINUTE
    phone.page.evaluate(SHIFT_CLOCK, -12 * MINUTE)
    phone.record("a")
    phone.sync()
    assert abs(phone.page.evaluate(CLOCK_AHEAD) + 12 * MINUTE) < MINUTE

    phone.page.evaluate(SHIFT_CLOCK, 400 * DAY)
    phone.record("b")
    phone.page.evaluate(SHIFT_CLOCK, 0)
    phone.record("c")
    assert phone.sync()["state"] == "sent"

    assert abs(phone.page.evaluate(CLOCK_AHEAD)) < MINUTE
    assert on_server(app_server) == ["a", "b", "c"]


def test_a_phone_that_comes_weeks_late_keeps_its_times_beside_those_of_receipt(make_phone, app_server):
    late, other = make_phone(), make_phone()
    late.page.evaluate(SHIFT_CLOCK, -30 * DAY)
    late.page.evaluate("log.record([stock('a')]).then(() => log.record([stock('b')]))")
    other.record("c")
    other.sync()
    late.page.evaluate(SHIFT_CLOCK, 0)

    assert late.sync()["state"] == "sent"
    other.sync()

    for phone in (late, other):
        kept = {record["event"]["data"]["part"]: record for record in records(phone.page)}
        for part in ("a", "b"):
            apart = kept[part]["received_at"] - kept[part]["event"]["at"]
            assert 29 * DAY < apart < 31 * DAY
        assert now_ms() - kept["c"]["event"]["at"] < DAY
    assert late.state() == other.state()
    assert sorted(late.notes()) == ["a", "b", "c"]
