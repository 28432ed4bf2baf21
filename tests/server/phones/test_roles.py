"""What a phone of each role may ask in each state, and how phones are listed and put out."""

import hashlib

import pytest

from server.clock import now_ms
from server.core.facts import roles
from server.phones.pairing import make_link
from server.phones.sessions import UNUSED_DAYS
from tests.server.phone import BASE
from tests.server.phone import JOB
from tests.server.phone import Phone
from tests.server.phone import assert_refused
from tests.server.phone import jpeg
from tests.server.signed_phone import SignedPhone

BOTH = ("bench", "counter")
SHA = "ab" * 32
PICTURE = {
    "mime": "image/jpeg",
    "width": 64,
    "height": 48,
    "shows": "unit",
    "position": "",
    "unit": "u000000000001",
}

# Every route of the app with what it answers to a stranger, to the bench and at the counter. A phone that was
# put out, or that nobody used for a year, is a stranger again. A new route wants its row here.
OPEN, PAIRED, BENCH_ALONE, COUNTER_ALONE = (200, 200, 200), (401, 200, 200), (401, 200, 403), (401, 403, 200)
ROUTES = {
    "GET /": OPEN,
    "GET /pair": OPEN,
    "GET /U/<code>": OPEN,
    "GET /u/<code>": OPEN,
    "GET /job/<path:rest>": OPEN,
    "GET /app/<path:name>": OPEN,
    "GET /manifest.webmanifest": OPEN,
    "GET /plain.html": OPEN,
    "GET /sw.js": OPEN,
    "POST /share": (303, 303, 303),
    "GET /api/ping": OPEN,
    "GET /api/session": OPEN,
    "POST /api/pair": (403, 403, 403),
    "POST /api/pairings": PAIRED,
    "GET /api/phones": PAIRED,
    "POST /api/phones/<row:phone>/revoke": (401, 404, 404),
    "POST /api/sync": PAIRED,
    "POST /api/news": PAIRED,
    "GET /api/brought": PAIRED,
    "POST /api/brought/<device>/accept": PAIRED,
    "POST /api/brought/<device>/set-aside": PAIRED,
    "POST /api/brought/set-aside": PAIRED,
    "POST /api/brought/take-back": PAIRED,
    "GET /api/jobs": PAIRED,
    "GET /api/jobs/<job>": (401, 404, 404),
    "GET /api/units/<name>": (401, 404, 404),
    "GET /api/photos/<digest>": (401, 404, 404),
    "GET /api/photos/<digest>/small": (401, 204, 204),
    "PUT /api/photos/<digest>": PAIRED,
    "GET /api/labels": BENCH_ALONE,
    "GET /api/labels/<row:batch>": (401, 400, 403),
    "GET /api/labels/plan": BENCH_ALONE,
    "GET /api/labels/preview.svg": BENCH_ALONE,
    "POST /api/labels": BENCH_ALONE,
    "POST /api/labels/<row:batch>/again": (401, 400, 403),
    "POST /api/labels/<row:batch>/void": (401, 400, 403),
    "GET /api/records/key": PAIRED,
    "POST /api/records/makers": (401, 404, 404),
    "POST /api/records/kept": (401, 403, 400),
    "GET /api/records/kept/<digest>": (401, 403, 404),
    "GET /api/records/<name>": (401, 404, 404),
    "POST /api/records/check": PAIRED,
    "GET /api/returns": COUNTER_ALONE,
    "GET /api/returns/waiting": COUNTER_ALONE,
    "GET /api/returns.csv": COUNTER_ALONE,
    "GET /api/search": COUNTER_ALONE,
    "GET /api/lessons": PAIRED,
    "GET /api/lessons/offer": PAIRED,
    "GET /api/lessons.json": PAIRED,
    "GET /api/lessons.csv": PAIRED,
    "GET /api/lessons/yards/own": (401, 400, 403),
    "POST /api/lessons/yards": (401, 400, 403),
    "POST /api/lessons/yards/out": (401, 400, 403),
    "GET /api/register": COUNTER_ALONE,
    "POST /api/register/ask": COUNTER_ALONE,
    "POST /api/register/claim": COUNTER_ALONE,
    "POST /api/register/release": COUNTER_ALONE,
    "GET /api/slips": COUNTER_ALONE,
    "POST /api/slips": (401, 403, 404),
    "POST /api/slips/aside": (401, 403, 404),
}
PHOTO = jpeg()
DIGEST = hashlib.sha256(PHOTO).hexdigest()
NAMED = {
    "<row:phone>": "99",
    "<row:batch>": "99",
    "<job>": JOB,
    "<code>": "JRMMA",
    "<path:rest>": JOB,
    "<path:name>": "main.js",
    "<device>": "d00000000000000ee",
}
ASKED = {
    "GET /api/returns": "?from=0&to=1",
    "GET /api/returns.csv": "?from=0&to=1",
    "GET /api/search": "?text=a",
}
SENT = {
    "POST /api/brought/<device>/accept": {"json": {"by": 0}},
    "POST /api/brought/<device>/set-aside": {"json": {"by": 0}},
    "POST /api/brought/set-aside": {"json": {"by": 0}},
    "POST /api/brought/take-back": {"json": {"by": 0, "at": 0}},
    "POST /api/pair": {"json": {"token": "t" * 32, "device": "d00000000000000ee", "name": "Sam"}},
    "POST /api/news": {"json": {"v": 1, "window": "00000001", "at": None, "cursor": 0, "stamp": ""}},
    "POST /api/labels": {"json": {"count": 1}},
    "POST /api/register/ask": {"json": {"keys": ["serial S1"], "part": ""}},
    "POST /api/register/claim": {"json": {"keys": ["serial S1"], "part": "", "unit": "u000000000001"}},
    "POST /api/register/release": {"json": {"unit": "u000000000001"}},
    "POST /api/records/kept": {"data": b"no record", "content_type": "application/zip"},
    "POST /api/slips": {"json": {"unit": "u000000000001"}},
    "POST /api/slips/aside": {"json": {"print": False}},
    "POST /api/records/makers": {"json": {"fingerprint": "0000", "name": "North", "how": "met"}},
    "POST /api/records/check": {"data": b"no record", "content_type": "application/zip"},
}


def address_of(endpoint):
    """Returns the method of a route, and its address with all that it names filled in."""
    method, _, path = endpoint.partition(" ")
    digest = DIGEST if method == "PUT" else SHA
    for name, value in {**NAMED, "<digest>": digest, "<name>": "JRMMA"}.items():
        path = path.replace(name, value)
    return method, path + ASKED.get(endpoint, "")


def head_of(phone, endpoint):
    """Asks a route for the head of its answer."""
    return phone.head(address_of(endpoint)[1])


def answer_to(phone, endpoint):
    """Asks a route as the app does: with a body that it takes."""
    method, path = address_of(endpoint)
    sent = SENT.get(endpoint, {"json": {}} if method == "POST" else {})
    if method == "PUT":
        sent = {"data": PHOTO, "content_type": "image/jpeg"}
    if endpoint == "POST /api/sync":
        return phone.sync([])
    return phone.write(method, path, **sent)


def walked(phone, column):
    """Returns the routes that answer otherwise than that column of the table says."""
    found = {endpoint: answer_to(phone, endpoint) for endpoint in ROUTES}
    for endpoint, answer in found.items():
        if answer.status_code in (401, 403) and endpoint != "POST /api/pair":
            assert_refused(answer, answer.status_code, "session" if answer.status_code == 401 else "role")
    return {
        endpoint: answer.status_code
        for endpoint, answer in found.items()
        if answer.status_code != ROUTES[endpoint][column]
    }


def test_the_table_names_every_route(app):
    found = {
        f"{method} {rule.rule}"
        for rule in app.url_map.iter_rules()
        for method in rule.methods - {"HEAD", "OPTIONS"}
    }
    assert found == set(ROUTES)


def test_a_stranger_gets_in_nowhere(stranger):
    assert walked(stranger, 0) == {}


@pytest.mark.parametrize("role", ["", *BOTH])
def test_to_ask_for_the_head_of_an_answer_alone_is_no_way_around(stranger, new_phone, role):
    phone = new_phone(role=role) if role else stranger
    column = ["", *BOTH].index(role)
    read = {endpoint: row[column] for endpoint, row in ROUTES.items() if endpoint.startswith("GET ")}

    assert {endpoint: head_of(phone, endpoint).status_code for endpoint in read} == read


@pytest.mark.parametrize(("column", "role"), [(1, "bench"), (2, "counter")])
def test_a_route_answers_the_roles_of_the_table_and_refuses_the_other(new_phone, role, column):
    phone = new_phone(role=role)
    of_a_picture = {**PICTURE, "sha256": DIGEST, "bytes": len(PHOTO)}
    phone.record("photo_taken", of_a_picture)
    phone.synced()
    assert walked(phone, column) == {}


@pytest.mark.parametrize("sort", [Phone, SignedPhone], ids=["without a key", "whose key ended with it"])
@pytest.mark.parametrize("role", BOTH)
def test_a_phone_that_was_put_out_is_a_stranger_at_every_route(app, let_in, phone, role, sort):
    lost = let_in(sort(app, "d00000000000000cc"), "Jo", role)
    [jo] = [each for each in phone.get("/api/phones").get_json()["phones"] if each["name"] == "Jo"]
    assert phone.post(f"/api/phones/{jo['id']}/revoke").status_code == 200

    assert walked(lost, 0) == {}


@pytest.mark.parametrize("role", BOTH)
def test_a_session_that_nobody_used_for_a_year_is_over_at_every_route(new_phone, db, role):
    phone = new_phone(role=role)
    db.conn.execute("UPDATE sessions SET created_at = created_at - ?", [(UNUSED_DAYS + 1) * 86_400_000])
    db.conn.execute("UPDATE devices SET last_seen = last_seen - ?", [(UNUSED_DAYS + 1) * 86_400_000])
    db.conn.commit()

    assert walked(phone, 0) == {}


def test_the_links_that_a_phone_made_end_with_it(app, new_phone, phone):
    """Whoever found a phone and made a link of it must not come in again by that, once it was put out."""
    lost = new_phone("d00000000000000cc", "Jo")
    link = lost.post("/api/pairings").get_json()["link"]
    kept = phone.post("/api/pairings").get_json()["link"]
    [jo] = [each for each in phone.get("/api/phones").get_json()["phones"] if each["name"] == "Jo"]
    phone.post(f"/api/phones/{jo['id']}/revoke")

    assert_refused(Phone(app, "d00000000000000ee").pair_by(link), 403, "token")
    assert Phone(app, "d00000000000000ef").pair_by(kept).status_code == 200


def test_the_link_carries_the_role(app, db):
    link = make_link(db, BASE, now_ms(), role="counter")
    phone = Phone(app)

    assert "#counter." in link
    assert phone.pair_by(link).get_json()["role"] == "counter"
    assert phone.ask_session()["role"] == "counter"


def test_a_link_whose_role_was_changed_by_hand_is_no_link(app, db):
    link = make_link(db, BASE, now_ms(), role="counter").replace("#counter.", "#")

    assert_refused(Phone(app).pair_by(link), 403, "token")


@pytest.mark.parametrize(
    ("asker", "wanted", "given"),
    [
        ("bench", {}, "bench"),
        ("bench", {"role": "counter"}, "counter"),
        ("counter", {}, "counter"),
        ("counter", {"role": "counter"}, "counter"),
        ("counter", {"role": "bench"}, None),
    ],
)
def test_a_phone_lets_in_what_is_its_to_let_in(app, new_phone, asker, wanted, given):
    phone = new_phone(role=asker)

    answer = phone.post("/api/pairings", wanted)

    if given is None:
        assert_refused(answer, 403, "role")
    else:
        next_phone = Phone(app, "d00000000000000ee")
        assert next_phone.pair_by(answer.get_json()["link"]).get_json()["role"] == given


def test_a_role_that_is_none_is_refused(phone):
    assert_refused(phone.post("/api/pairings", {"role": "owner"}), 400, "role")


def test_what_a_phone_says_of_its_storage_is_listed_with_it(phone):
    def listed():
        [mara] = [each for each in every() if each["name"] == "Mara"]
        return mara["promised"], mara["installed"]

    def every():
        return phone.get("/api/phones").get_json()["phones"]

    assert phone.sync([]).status_code == 200  # as an older app, which says nothing
    assert listed() == (None, None)

    assert phone.sync([], storage={"promised": False, "installed": True}).status_code == 200
    assert listed() == (False, True)
    assert phone.sync([]).status_code == 200
    assert listed() == (False, True)
    assert phone.sync([], storage={"promised": True, "installed": None}).status_code == 200
    assert listed() == (True, None)


def test_the_phones_are_listed_with_role_and_time(phone, counter):
    phone.synced()

    listed = phone.get("/api/phones").get_json()["phones"]

    assert sorted((each["name"], each["role"], each["this"]) for each in listed) == [
        ("Jo", "counter", False),
        ("Mara", "bench", True),
    ]
    assert all(each["seen_at"] >= each["paired_at"] > 0 for each in listed)
    assert [each["name"] for each in counter.get("/api/phones").get_json()["phones"]] == ["Jo"]


def test_a_phone_that_was_put_out_is_out_at_once_and_comes_back_with_its_work(phone, counter, new_phone):
    counter.synced()
    unsent = counter.record(
        "unit_moved", {"unit": "u000000000001", "place": "stock", "how": "typed", "note": ""}, None
    )
    [jo] = [each for each in phone.get("/api/phones").get_json()["phones"] if each["name"] == "Jo"]

    assert phone.post(f"/api/phones/{jo['id']}/revoke").get_json() == {"revoked": True}

    assert_refused(counter.sync([]), 401, "session")
    assert [each["name"] for each in phone.get("/api/phones").get_json()["phones"]] == ["Mara"]
    assert_refused(phone.post(f"/api/phones/{jo['id']}/revoke"), 404, "phone")
    again = new_phone(counter.device, "Jo", "counter")
    again.entries = [unsent]
    assert again.synced()["refused"] == []


def test_no_phone_puts_itself_out_and_the_counter_none_of_the_bench(phone, counter):
    mine = {each["name"]: each["id"] for each in phone.get("/api/phones").get_json()["phones"]}

    assert_refused(phone.post(f"/api/phones/{mine['Mara']}/revoke"), 403, "phone")
    assert_refused(counter.post(f"/api/phones/{mine['Mara']}/revoke"), 403, "role")


def test_the_counter_sends_pictures(counter):
    data = jpeg()
    sha256 = hashlib.sha256(data).hexdigest()
    counter.record("photo_taken", {**PICTURE, "sha256": sha256, "bytes": len(data)})
    assert counter.synced()["photos_wanted"] == [sha256]
    assert counter.put(f"/api/photos/{sha256}", data, content_type="image/jpeg").status_code == 200


def test_the_roles_are_those_of_the_core():
    assert set(BOTH) == set(roles.ROLES)
