"""POST /api/sync: what is taken, what is refused and why, and what comes back."""

import json
import random
import sqlite3
import threading

import pytest

from server.app import Config
from server.app import create_app
from server.log.events import of_unit
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import assert_refused
from tests.server.phone import entry_after
from tests.server.phone import entry_of
from tests.server.phone import job_opened


def kept(db):
    rows = db.conn.execute("SELECT device, seq, body FROM events ORDER BY n").fetchall()
    return [(device, seq) for device, seq, _ in rows]


def test_own_events_come_back_numbered_as_the_acknowledgement(phone):
    for _ in range(3):
        phone.record()

    answer = phone.synced()

    assert [entry["n"] for entry in answer["events"]] == [1, 2, 3]
    assert [entry["event"] for entry in answer["events"]] == [e["event"] for e in phone.entries]
    assert [entry["hash"] for entry in answer["events"]] == [e["hash"] for e in phone.entries]
    assert answer["cursor"] == 3
    assert answer["more"] is False
    assert answer["refused"] == []
    assert answer["heads"] == {phone.device: {"seq": 3, "hash": phone.entries[2]["hash"]}}


def test_an_answer_is_committed_before_it_is_sent(phone, db):
    phone.record()

    phone.synced()

    assert kept(db) == [(phone.device, 1)]
    assert db.conn.execute("PRAGMA synchronous").fetchone() == (2,)  # FULL


def test_sending_everything_again_changes_nothing(phone, db):
    for _ in range(3):
        phone.record()
    phone.synced()

    answer = phone.synced(cursor=3)

    assert answer["refused"] == []
    assert answer["events"] == []
    assert len(kept(db)) == 3


def test_batches_in_any_order_and_repetition_end_in_the_same_log(phone, db):
    entries = [phone.record() for _ in range(12)]
    dice = random.Random(7)
    for _ in range(60):
        start = dice.randrange(12)
        phone.sync(entries[start : start + dice.randrange(1, 5)])
    phone.synced()

    bodies = [json.loads(body) for (body,) in db.conn.execute("SELECT body FROM events ORDER BY n")]
    assert bodies == [entry["event"] for entry in entries]
    assert db.table("quarantine").count == 0


def test_an_overlap_with_what_is_kept_is_no_fault(phone, db):
    phone.record()
    phone.record()
    phone.synced()
    phone.record()

    answer = phone.synced()

    assert answer["refused"] == []
    assert len(kept(db)) == 3


def test_a_gap_is_refused_and_answered_with_where_the_server_stands(phone, db):
    phone.record()
    phone.record()
    phone.synced(phone.entries[:1])
    third = phone.record()

    answer = phone.synced([third])

    (refusal,) = answer["refused"]
    assert refusal["code"] == "gap"
    assert (refusal["device"], refusal["seq"]) == (phone.device, 3)
    assert "2 to 2" in refusal["reason"]
    assert answer["heads"][phone.device]["seq"] == 1
    assert len(kept(db)) == 1


def test_a_changed_byte_is_refused(phone, db):
    entry = phone.record()
    changed = {"event": {**entry["event"], "actor": "Nora"}, "hash": entry["hash"]}

    answer = phone.synced([changed])

    assert [refusal["code"] for refusal in answer["refused"]] == ["changed"]
    assert kept(db) == []


def test_the_same_identity_with_other_bytes_is_kept_apart_and_flagged(phone, db):
    phone.record()
    phone.synced()
    clone = entry_after([], phone.device, data={"positions": [], "missed": ["rear-left"]})

    answers = [phone.synced([clone]) for _ in range(2)]

    assert [a["refused"][0]["code"] for a in answers] == ["forked", "forked"]
    assert [row["hash"] for row in db.table("quarantine").rows] == [clone["hash"]]
    assert kept(db) == [(phone.device, 1)]


def test_what_a_cloned_phone_records_after_the_fork_is_kept_too(phone, db):
    first = phone.record()
    phone.synced()
    fork = [first, entry_after([first], phone.device)]
    phone.record(kind="job_closed", data={"note": ""})
    phone.synced()
    fork.append(entry_after(fork, phone.device))

    answer = phone.synced(fork)

    assert [r["code"] for r in answer["refused"]] == ["forked", "forked"]
    assert [row["seq"] for row in db.table("quarantine").rows] == [2, 3]


@pytest.mark.parametrize(
    "change",
    [
        pytest.param({"device": "phone-1"}, id="device"),
        pytest.param({"seq": 0}, id="seq below 1"),
        pytest.param({"seq": True}, id="seq no number"),
        pytest.param({"prev": "f" * 64}, id="first event with a prev"),
        pytest.param({"at": 1.5}, id="float in a field"),
        pytest.param({"data": {"value": 0.5}}, id="float in the data"),
        pytest.param({"data": {"value": 2**53}}, id="integer too large for a phone"),
        pytest.param({"data": {"é": 1}}, id="key beyond ASCII"),
        pytest.param({"data": {"text": "\ud800"}}, id="half a character"),
        pytest.param({"data": []}, id="data no object"),
        pytest.param({"data": {"text": "x" * 70_000}}, id="too long"),
        pytest.param({"extra": 1}, id="a field too many"),
    ],
)
def test_a_malformed_event_is_refused_with_a_reason(phone, db, change):
    entry = entry_after([], phone.device)
    entry["event"].update(change)

    answer = phone.synced([entry])

    (refusal,) = answer["refused"]
    assert refusal["code"] == "malformed"
    assert refusal["reason"]
    assert kept(db) == []


def test_an_event_nested_deeper_than_a_phone_can_read_is_refused(phone, db):
    entry = entry_after([], phone.device)
    nested = []
    for _ in range(40):
        nested = [nested]
    entry["event"]["data"] = {"list": nested}

    assert phone.synced([entry])["refused"][0]["code"] == "malformed"


@pytest.mark.parametrize("entry", [None, 7, "text", [], {}, {"event": None}, {"hash": "x"}])
def test_an_entry_that_is_no_event_is_refused(phone, entry):
    (refusal,) = phone.synced([entry])["refused"]

    assert refusal["code"] == "malformed"
    assert refusal["device"] is None
    assert refusal["seq"] is None


def test_an_unknown_kind_is_kept(phone, db):
    phone.record(kind="hovercraft_inspected", data={"eels": 3})

    answer = phone.synced()

    assert answer["refused"] == []
    assert answer["events"][0]["event"]["kind"] == "hovercraft_inspected"


def test_a_fact_that_conflicts_is_stored_all_the_same(phone, db):
    phone.record(kind="unit_fitted", data={"unit": "nobody", "position": "nowhere"})

    assert phone.synced()["refused"] == []
    assert len(kept(db)) == 1


def test_one_refused_event_does_not_keep_the_others_of_the_batch_out(phone, db):
    good = phone.record()
    other_device = entry_after([], "d00000000000000cc")
    other_device["hash"] = "0" * 64

    answer = phone.synced([other_device, good])

    assert [r["code"] for r in answer["refused"]] == ["changed"]
    assert kept(db) == [(phone.device, 1)]


def test_another_phones_device_id_is_refused(phone, new_phone, db):
    phone.record()
    phone.synced()
    other = new_phone("d00000000000000bb", "Nora")

    assert_refused(other.sync([], device=phone.device), 403, "device")
    answer = other.synced([entry_after(phone.entries, phone.device)])

    assert [r["code"] for r in answer["refused"]] == ["not_yours"]
    assert kept(db) == [(phone.device, 1)]


def test_a_phone_may_go_on_under_a_new_device_id(phone):
    phone.record()
    phone.synced()

    answer = phone.sync([entry_after([], "d00000000000000cc")], device="d00000000000000cc")

    assert answer.get_json()["refused"] == []


def test_every_phone_gets_every_event_in_order_of_receipt(phone, new_phone):
    other = new_phone("d00000000000000bb", "Nora")
    phone.record()
    phone.synced()
    other.record()
    other.synced()
    phone.record()
    phone.synced()

    feed = other.synced([], cursor=0)["events"]

    order = [(entry["n"], entry["event"]["device"], entry["event"]["seq"]) for entry in feed]
    assert order == [(1, phone.device, 1), (2, other.device, 1), (3, phone.device, 2)]


def test_a_long_feed_comes_in_pages(phone):
    for _ in range(620):
        phone.record()
    for start in range(0, 620, 200):
        phone.sync(phone.entries[start : start + 200])

    first = phone.synced([], cursor=0)
    second = phone.synced([], cursor=first["cursor"])

    assert (len(first["events"]), first["more"]) == (500, True)
    assert (len(second["events"]), second["more"]) == (120, False)
    assert second["cursor"] == 620


def test_a_cursor_beyond_the_log_starts_over(phone):
    phone.record()

    answer = phone.synced(cursor=900)

    assert answer["cursor"] == 1
    assert [entry["n"] for entry in answer["events"]] == [1]


def test_the_answer_names_installation_and_build(phone):
    session = phone.ask_session()

    answer = phone.synced()

    assert answer["installation"] == session["installation"]
    assert answer["build"] == session["build"]
    assert answer["now"] > 1_700_000_000_000


@pytest.mark.parametrize(
    ("data", "field"),
    [
        pytest.param(b"", "body", id="empty"),
        pytest.param(b"<html>sign in</html>", "body", id="html"),
        pytest.param(b"\xff\xfe{}", "body", id="not utf-8"),
        pytest.param(b"[]", "body", id="a list"),
        pytest.param(b'{"v": 1', "body", id="cut off"),
        pytest.param(b"[" * 100_000, "body", id="nested without end"),
        pytest.param(b"{}", "v", id="no version"),
        pytest.param(b'{"v": 2}', "v", id="another version"),
        pytest.param(b'{"v": 1, "device": 5}', "device", id="device no text"),
        pytest.param(b'{"v": 1, "device": "dXX"}', "device", id="device malformed"),
    ],
)
def test_a_body_that_cannot_be_read_is_refused_in_plain_words(phone, data, field):
    assert_refused(phone.write("POST", "/api/sync", data=data), 400, field)


@pytest.mark.parametrize(
    ("change", "status", "field"),
    [
        pytest.param({"cursor": -1}, 400, "cursor", id="cursor below 0"),
        pytest.param({"cursor": "1"}, 400, "cursor", id="cursor no number"),
        pytest.param({"cursor": 2**70}, 400, "cursor", id="cursor without end"),
        pytest.param({"events": {}}, 400, "events", id="events no list"),
        pytest.param({"events": [None] * 201}, 413, "events", id="too many events"),
        pytest.param({"app": "x" * 90}, 400, "app", id="app too long"),
        pytest.param({"storage": "kept"}, 400, "storage", id="storage no object"),
        pytest.param({"storage": {"promised": 1}}, 400, "storage.promised", id="promise no yes or no"),
        pytest.param(
            {"storage": {"installed": "yes"}}, 400, "storage.installed", id="installed no yes or no"
        ),
    ],
)
def test_a_request_out_of_bounds_is_refused(phone, change, status, field):
    assert_refused(phone.sync(**change), status, field)


def test_more_than_two_megabytes_are_refused(phone):
    assert_refused(phone.write("POST", "/api/sync", data=b" " * (2 * 1024 * 1024 + 1)), 413, "body")


def test_a_phone_that_is_not_paired_gets_nothing(stranger):
    assert_refused(stranger.sync([]), 401, "session")


def test_a_failed_batch_leaves_no_half_of_it(phone, db, monkeypatch):
    phone.record()
    phone.record()
    monkeypatch.setattr("server.log.named.units", lambda event: 1 / (2 - event["seq"]) and [])

    assert_refused(phone.sync(), 500, "server")

    assert kept(db) == []


def test_events_are_found_again_by_the_units_they_name(phone, db):
    phone.record(kind="job_opened", data=job_opened())
    phone.record(kind="unknown_kind", data={"deep": [{"unit": "u00000000000a"}]})
    phone.synced()

    assert [e["seq"] for e in of_unit(db, "v00000000000a.rear-left")] == [1]
    assert [e["seq"] for e in of_unit(db, "u00000000000a")] == [2]


@pytest.mark.parametrize("change", ["UPDATE events SET body = ''", "DELETE FROM events"])
def test_a_kept_event_cannot_be_changed_or_deleted(phone, db, change):
    phone.record()
    phone.synced()

    with pytest.raises(sqlite3.DatabaseError, match="only ever appended"):
        db.conn.execute(change)
    db.conn.rollback()


def test_two_phones_at_once_lose_nothing(app, new_phone, db):
    phones = [new_phone(f"d00000000000000{n}0", f"Phone {n}") for n in range(4)]
    for phone in phones:
        for _ in range(25):
            phone.record()

    def send(phone):
        for end in range(1, 26):
            phone.sync(phone.entries[end - 1 : end])

    threads = [threading.Thread(target=send, args=[phone]) for phone in phones]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()

    assert sorted(kept(db)) == sorted((p.device, seq) for p in phones for seq in range(1, 26))


def test_a_second_installation_answers_under_another_id(app, tmp_path, small_static, phone):
    other = Phone(create_app(Config(tmp_path / "other", BASE, small_static)))

    assert other.ask_session()["installation"] != phone.ask_session()["installation"]


def test_an_event_with_its_hash_of_a_non_text_is_refused(phone):
    entry = phone.record()
    entry_without = {"event": entry["event"], "hash": 5}

    assert phone.synced([entry_without])["refused"][0]["code"] == "changed"
    assert phone.synced([entry_of(entry["event"])])["refused"] == []
