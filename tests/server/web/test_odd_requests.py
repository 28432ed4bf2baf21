"""Whatever anyone sends ends in a refusal in the one shape, never in an error of the server."""

import json
import re
from urllib.parse import quote

import pytest

from server.phones.sessions import UNUSED_DAYS
from tests.server.phone import assert_refused
from tests.server.phone import job_opened
from tests.server.phones.test_roles import ROUTES
from tests.server.phones.test_roles import SENT as SENT_BY_ROUTE

HALF = "\ud800"  # one half of a surrogate pair, which JSON can hold and UTF-8 can't
DAY_MS = 86_400_000


@pytest.mark.parametrize("field", ["token", "name"])
def test_half_a_character_is_no_text_where_a_stranger_pairs(stranger, field):
    body = {"token": "t" * 32, "name": "Jo", "device": stranger.device, field: f"a{HALF}b"}

    assert_refused(stranger.write("POST", "/api/pair", json=body), 400, field)


def test_half_a_character_is_no_name_of_an_app(phone):
    assert_refused(phone.sync([], app=f"1{HALF}"), 400, "app")


@pytest.mark.parametrize(
    ("method", "path"),
    [
        ("GET", "/api/labels/batches/{}"),
        ("POST", "/api/labels/batches/{}/again"),
        ("POST", "/api/phones/{}/revoke"),
    ],
)
@pytest.mark.parametrize("number", [2**63, 10**30])
def test_a_number_that_no_table_can_hold_names_nothing(phone, method, path, number):
    answer = phone.write(method, path.format(number), json={})

    assert_refused(answer, 404, "path")


@pytest.mark.parametrize("address", ["/api/returns", "/api/returns.csv"])
def test_days_end_with_the_year_9999(counter, address):
    last = 253_402_300_799_999  # 9999-12-31T23:59:59.999Z: the last date of ISO 8601 in four digits
    assert_refused(counter.get(f"{address}?from=0&to={last}"), 400, "to")
    assert_refused(counter.get(f"{address}?from={last}&to={last + 1}&offset=960"), 400, "from")
    latest = last + 1 - DAY_MS

    for offset in (-960, 960):
        assert counter.get(f"{address}?from={latest - 2}&to={latest - 1}&offset={offset}").status_code == 200


@pytest.mark.parametrize("path", ["/a%0d%0aSet-Cookie:%20a=b", "/a?b=%0d%0aSet-Cookie:%20a=b", "/%C3%A4?ö=1"])
def test_another_name_leads_on_whatever_the_address_holds(stranger, path):
    answer = stranger.client.get(path, base_url="http://127.0.0.1:8765")

    assert answer.status_code == 307
    assert "Set-Cookie" not in answer.headers
    assert "\r" not in answer.headers["Location"]
    assert "\n" not in answer.headers["Location"]


def test_a_phone_that_did_not_come_by_for_a_year_is_not_let_in(phone, db):
    assert phone.get("/api/jobs").status_code == 200
    long_ago = UNUSED_DAYS * DAY_MS + 60_000
    db.conn.execute("UPDATE sessions SET created_at = created_at - ?", [long_ago])
    db.conn.execute("UPDATE devices SET last_seen = last_seen - ?", [long_ago - 120_000])
    db.conn.commit()
    assert phone.get("/api/jobs").status_code == 200

    db.conn.execute("UPDATE devices SET last_seen = last_seen - 120000")
    db.conn.commit()

    assert_refused(phone.get("/api/jobs"), 401, "session")


# Signs of other languages, which must stay what they are: text of somebody.
SIGNS = [
    "'; DROP TABLE events; --", '" OR "" = "', "%", "_", "*", "NEAR(", "a AND", "\0", "<b>x</b>", "../..",
    "\r\nX: y", "$(id)", "{{7*7}}", "٣", "1e9", "-1", "9" * 30, "x" * 3000, "",
]  # fmt: skip
ASKED = ("text", "from", "to", "offset", "layout", "distance", "one")
SENT = (
    "token",
    "device",
    "name",
    "role",
    "app",
    "cursor",
    "events",
    "window",
    "at",
    "count",
    "codes",
    "reason",
)


@pytest.mark.parametrize("role", ["bench", "counter"])
def test_no_route_fails_at_a_sign_and_no_sign_does_anything(new_phone, phone, db, role):
    phone.record("job_opened", job_opened())
    phone.synced()
    asker = new_phone("d00000000000000cc", "Jo", role)
    kept = log_and_sessions(db)

    for endpoint in ROUTES:
        method, _, path = endpoint.partition(" ")
        for sign in SIGNS:
            part = quote(sign, safe="")
            question = "&".join(f"{name}={part}" for name in ASKED)
            body = {} if method == "GET" else {"json": dict.fromkeys(SENT, sign)}
            answer = asker.write(method, f"{re.sub('<.+?>', part, path)}?{question}", **body)
            assert answer.status_code < 500, (endpoint, sign)

    assert log_and_sessions(db) == kept


def log_and_sessions(db):
    return [
        db.conn.execute(asked).fetchall()
        for asked in (
            "SELECT * FROM events ORDER BY n",
            "SELECT id, token_hash, role, revoked_at FROM sessions",
        )
    ]


def test_a_search_for_a_sign_finds_nothing_by_it(counter, phone):
    opened = job_opened()
    phone.record("job_opened", opened)
    fitted = f"{opened['vehicle']['id']}.rear-left"
    phone.record("part_noted", {"unit": fitted, "part": "SN-1", "serial": "7890"})
    phone.synced()
    assert len(counter.get("/api/search?text=7890").get_json()) == 1

    for sign in ("%", "_", "*", '" OR "', "' OR 1 --", "NEAR(", "serial: 7890"):
        found = counter.get(f"/api/search?text={quote(sign)}").get_json()
        assert [line for line in found if not line["near"]] == [], sign  # "near" comes close to a "rear"


# What no body of the app has in place of any of its values.
VALUES = [None, True, -1, 2**63, 10**400, 1.5, float("nan"), "", HALF, "x" * 3000, [[]], {"a": HALF}]
BODIES = {
    **{endpoint: sent["json"] for endpoint, sent in SENT_BY_ROUTE.items() if "json" in sent},
    "POST /api/pairings": {"role": "bench"},
    "POST /api/labels": {"count": 1, "layout": "a4", "distance": 20, "format": "pdf"},
    "POST /api/labels/<row:batch>/void": {"codes": ["JRMMA"], "reason": "torn"},
}


def others(value):
    """Give a body with each of its values, and the whole, replaced by each of VALUES."""
    yield from VALUES
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, item in list(inner):
        for other in others(item):
            changed = value.copy()
            changed[key] = other
            yield changed


def test_no_route_fails_at_any_value_of_a_body(new_phone):
    bench = new_phone("d00000000000000aa")
    clerk = new_phone("d00000000000000cc", "Jo", "counter")
    bench.record("job_opened", job_opened())
    sync = {"app": "b1", "v": 1, "device": bench.device, "cursor": 0, "key": "", "events": bench.entries}
    bodies = {**BODIES, "POST /api/sync": {**sync, "certificates": [], "signed_heads": [], "seen": {}}}
    for endpoint, body in bodies.items():
        method, _, path = endpoint.partition(" ")
        address = re.sub("<.+?>", "99", path)
        asker = clerk if "register" in path else bench
        for other in others(body):
            text = json.dumps(other)
            answer = asker.write(method, address, data=text, content_type="application/json")
            assert answer.status_code < 500, (endpoint, text[:300])
