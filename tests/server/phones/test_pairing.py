"""Letting phones in: one-time links, what holds a session, what ends it."""

import re
import time

import pytest

from server.app import PAIRING_FAILURES_NOTED
from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.phones import pairing_log
from server.phones.pairing import LINK_MINUTES
from server.phones.pairing import make_link
from server.phones.try_limit import TryLimit
from server.storage import writing
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import assert_refused


def test_a_link_lets_one_phone_in(app, db):
    phone = Phone(app)
    link = make_link(db, BASE, now_ms())

    answer = phone.pair_by(link, " Mara ")

    assert re.fullmatch(rf"{BASE}/pair#[\w-]{{32}}", link)
    assert answer.get_json() == {"paired": True, "name": "Mara", "role": "bench"}
    session = phone.ask_session()
    assert (session["paired"], session["name"]) == (True, "Mara")


def test_before_pairing_the_session_says_so(stranger):
    session = stranger.ask_session()

    assert session["paired"] is False
    assert session["csrf"]


def test_a_link_works_once(app, db, new_phone):
    link = make_link(db, BASE, now_ms())
    Phone(app).pair_by(link)

    error = assert_refused(Phone(app, "d00000000000000bb").pair_by(link), 403, "token")

    assert "used already or has expired" in error["message"]


def test_a_link_for_several_phones_works_that_often(app, db):
    link = make_link(db, BASE, now_ms(), uses=2)

    answers = [Phone(app, f"d00000000000000a{n}").pair_by(link).status_code for n in range(3)]

    assert answers == [200, 200, 403]


def test_a_link_expires(app, db):
    link = make_link(db, BASE, now_ms() - LINK_MINUTES * 60_000 - 1)

    assert_refused(Phone(app).pair_by(link), 403, "token")


def test_a_paired_phone_lets_the_next_one_in(app, phone):
    answer = phone.post("/api/pairings").get_json()
    next_phone = Phone(app, "d00000000000000bb")

    assert next_phone.pair_by(answer["link"], "Nora").status_code == 200
    size = len(answer["qr"])
    assert all(re.fullmatch(rf"[01]{{{size}}}", row) for row in answer["qr"])
    assert answer["expires_at"] > now_ms()


def test_where_phones_have_to_trust_the_server_first_the_link_leads_there(app, phone):
    app.config["TRUST_PAGE"] = "http://yard.local:8766/"
    answer = phone.post("/api/pairings").get_json()
    token = answer["link"].removeprefix("http://yard.local:8766/#")

    assert Phone(app, "d00000000000000bb").pair_by(f"{BASE}/pair#{token}", "Nora").status_code == 200
    assert answer["expires_at"] > now_ms() + 59 * 60_000


def test_a_stranger_makes_no_links(stranger):
    assert_refused(stranger.post("/api/pairings"), 401, "session")


def test_tokens_are_kept_only_as_hashes(phone, db, folder):
    link = phone.post("/api/pairings").get_json()["link"]
    with phone.client.session_transaction(base_url=BASE) as cookie:
        tokens = [cookie["token"], link.partition("#")[2]]
    db.conn.execute("PRAGMA wal_checkpoint(TRUNCATE)")

    everything = folder.database.read_bytes()

    assert not [token for token in tokens if token.encode() in everything]


def test_the_cookie_stays_away_from_scripts_and_other_sites(app, db):
    phone = Phone(app)
    header = phone.pair_by(make_link(db, BASE, now_ms())).headers["Set-Cookie"]

    assert header.startswith("swaptrail-8765=")
    assert "HttpOnly" in header
    assert "SameSite=Strict" in header
    assert "Secure" not in header  # plain HTTP on loopback


def test_over_tls_the_cookie_is_secure(tmp_path, small_static):
    base = "https://shop.example:8765"
    app = create_app(Config(tmp_path / "tls", base, small_static))

    header = app.test_client().get("/api/session", base_url=base).headers["Set-Cookie"]

    assert "Secure" in header


@pytest.mark.parametrize("days", [-1, -1000, 3 * 365], ids=["a day back", "years back", "years ahead"])
def test_a_clock_that_is_wrong_for_a_while_costs_no_phone_its_pairing(phone, monkeypatch, days):
    """A machine without a battery starts with an old time, and is put right once it has a network."""
    before = phone.ask_session()
    seconds, nanoseconds = time.time, time.time_ns
    monkeypatch.setattr(time, "time", lambda: seconds() + days * 86_400)
    monkeypatch.setattr(time, "time_ns", lambda: nanoseconds() + days * 86_400 * 10**9)

    meanwhile = phone.ask_session()
    assert meanwhile["paired"] is (days < 0)  # a year unused is over by the clock that the server has
    if meanwhile["paired"]:
        phone.record()
        assert phone.synced()["refused"] == []

    monkeypatch.undo()
    assert phone.ask_session()["paired"] is True
    assert phone.synced()["installation"] == before["installation"]


def test_a_cookie_that_the_server_did_not_sign_is_nobodys(phone):
    phone.client.set_cookie("swaptrail-8765", "eyJ0b2tlbiI6ICJ4In0.aAAAAA.made-up", domain="localhost")

    assert phone.ask_session()["paired"] is False


def test_files_of_the_app_set_no_cookie(phone):
    for path in ("/", "/app/main.js", "/sw.js"):
        assert "Set-Cookie" not in phone.get(path).headers


def test_a_revoked_session_is_out_at_once(phone, db):
    db.conn.execute("UPDATE sessions SET revoked_at = 1")
    db.conn.commit()

    assert_refused(phone.sync([]), 401, "session")
    assert phone.ask_session()["paired"] is False


def test_pairing_again_takes_the_device_over_and_ends_the_old_session(phone, new_phone):
    phone.record()
    phone.synced()

    again = new_phone(phone.device)
    again.entries = phone.entries

    assert again.synced()["refused"] == []
    assert_refused(phone.sync([]), 401, "session")


def test_a_session_with_another_device_survives_the_take_over_of_one(phone, new_phone):
    phone.synced()
    phone.sync([], device="d00000000000000cc")

    new_phone("d00000000000000cc")

    assert phone.synced()["refused"] == []
    assert_refused(phone.sync([], device="d00000000000000cc"), 403, "device")


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"token": None}, "token"),
        ({"token": "x" * 300}, "token"),
        ({"device": "d1"}, "device"),
        ({"name": 7}, "name"),
        ({"name": "x" * 81}, "name"),
    ],
)
def test_a_request_to_pair_out_of_bounds_is_refused(stranger, change, field):
    body = {"token": "t", "device": stranger.device, "name": "Mara", **change}

    assert_refused(stranger.post("/api/pair", body), 400, field)


def test_guessing_is_stopped(app, db, stranger):
    body = {"token": "guess", "device": stranger.device, "name": "Mara"}
    for _ in range(10):
        assert_refused(stranger.post("/api/pair", body), 403, "token")

    answer = stranger.post("/api/pair", body)

    error = assert_refused(answer, 429, "token")
    assert 0 < int(answer.headers["Retry-After"]) <= 300
    assert "Wait" in error["message"]


def test_a_phone_with_a_good_link_never_waits_for_those_who_guess_behind_its_address(app, db, stranger):
    body = {"token": "guess", "device": stranger.device, "name": "Mara"}
    while stranger.post("/api/pair", body).status_code != 429:
        pass

    assert Phone(app).pair_by(make_link(db, BASE, now_ms())).status_code == 200
    assert stranger.post("/api/pair", body).status_code == 429, "which takes nothing off the others' pause"


def test_guessing_writes_to_the_disk_a_few_times_and_no_more(app, db, stranger):
    body = {"token": "guess", "device": stranger.device, "name": "Mara"}
    for host in range(1, 12):
        for _ in range(12):
            stranger.post("/api/pair", body, environ_overrides={"REMOTE_ADDR": f"192.168.7.{host}"})

    assert db.conn.execute("SELECT count(*) FROM pairing_log").fetchone() == (PAIRING_FAILURES_NOTED,)


def test_who_came_and_went_is_kept_and_told(app, db, phone, counter, stranger):
    body = {"token": "guess", "device": stranger.device, "name": "Nobody"}
    stranger.post("/api/pair", body, environ_overrides={"REMOTE_ADDR": "192.168.7.9"})
    counter.synced()
    [jo] = [each["id"] for each in phone.get("/api/phones").get_json()["phones"] if each["name"] == "Jo"]
    before_jo_left = counter.get("/api/phones").get_json()["log"]
    phone.post(f"/api/phones/{jo}/revoke")

    log = phone.get("/api/phones").get_json()["log"]

    assert [(line["what"], line["name"], line["role"], line["by"]) for line in log] == [
        ("put_out", "Jo", "counter", "Mara"),
        ("failed", "Nobody", "", ""),
        ("paired", "Jo", "counter", ""),
        ("paired", "Mara", "bench", ""),
    ]
    assert [line["address"] for line in log] == ["127.0.0.1", "192.168.7.9", "127.0.0.1", "127.0.0.1"]
    assert [line["device"] for line in log] == [
        counter.device, stranger.device, counter.device, phone.device,
    ]  # fmt: skip
    assert all(line["at"] > 0 for line in log)
    assert [(line["what"], line["name"]) for line in before_jo_left] == [("paired", "Jo")]


def test_the_log_keeps_the_newest_of_each_and_no_more(db):
    with writing(db):
        pairing_log.note(db, pairing_log.PAIRED, 1, name="Mara")
        for at in range(300):
            pairing_log.note(db, pairing_log.FAILED, at, name="Nobody")

    counts = dict(db.conn.execute("SELECT what, count(*) FROM pairing_log GROUP BY what").fetchall())
    assert counts == {"paired": 1, "failed": 200}
    assert pairing_log.last(db, "bench")[0]["at"] == 299


def test_strangers_who_knock_push_nobody_out_of_what_is_shown(db):
    with writing(db):
        pairing_log.note(db, pairing_log.PAIRED, 1, name="Mara", role="bench")
        pairing_log.note(db, pairing_log.PAIRED, 2, name="Jo", role="counter")
        pairing_log.note(db, pairing_log.PUT_OUT, 3, name="Jo", role="counter", by="Mara")
        for at in range(4, 64):
            pairing_log.note(db, pairing_log.FAILED, at, name="Nobody")
        pairing_log.note(db, pairing_log.PAIRED, 64, name="Kim", role="counter")

    shown = pairing_log.last(db, "bench")

    assert [line["name"] for line in shown if line["what"] == "paired"] == ["Kim", "Jo", "Mara"]
    assert [line["by"] for line in shown if line["what"] == "put_out"] == ["Mara"]
    assert [line["at"] for line in shown if line["what"] == "failed"] == list(range(63, 13, -1))
    assert [line["at"] for line in shown] == sorted((line["at"] for line in shown), reverse=True)
    assert [line["name"] for line in pairing_log.last(db, "counter")] == ["Kim", "Jo", "Jo"]


def test_tries_are_forgotten_with_time():
    now = [0.0]
    limit = TryLimit(2, 60, clock=lambda: now[0])
    for _ in range(2):
        limit.count("a")

    with pytest.raises(Exception, match="Wait 61 seconds"):
        limit.check("a")
    limit.check("b")
    now[0] = 60.0
    limit.check("a")


def test_the_key_that_signs_cookies_is_kept_and_readable_by_its_owner_only(app, folder):
    path = folder.keys / "cookie.key"

    assert folder.secret_key() == app.config["SECRET_KEY"]
    assert len(path.read_bytes()) == 32
    assert path.stat().st_mode & 0o077 == 0
