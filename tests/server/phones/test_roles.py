"""What each role may ask and record, and how phones are listed and put out."""

import hashlib

import pytest

from server.clock import now_ms
from server.core.facts import kinds
from server.core.facts import roles
from server.phones.pairing import make_link
from tests.server.phone import BASE
from tests.server.phone import JOB
from tests.server.phone import Phone
from tests.server.phone import assert_refused
from tests.server.phone import job_opened
from tests.server.phone import jpeg

BOTH, BENCH, COUNTER = ("bench", "counter"), ("bench",), ("counter",)
SHA = "ab" * 32
PICTURE = {
    "mime": "image/jpeg",
    "width": 64,
    "height": 48,
    "shows": "unit",
    "position": "",
    "unit": "u000000000001",
}

# Every route of the app under /api/, with who is answered by it; a new route wants its row here.
ENDPOINTS = {
    "GET /api/ping": BOTH,
    "GET /api/session": BOTH,
    "POST /api/pair": BOTH,
    "POST /api/pairings": BOTH,
    "GET /api/phones": BOTH,
    "POST /api/phones/<row:phone>/revoke": BOTH,
    "POST /api/sync": BOTH,
    "POST /api/news": BOTH,
    "GET /api/jobs": BOTH,
    "GET /api/jobs/<job>": BOTH,
    "GET /api/units/<name>": BOTH,
    "GET /api/photos/<digest>": BOTH,
    "GET /api/photos/<digest>/small": BOTH,
    "PUT /api/photos/<digest>": BOTH,
    "GET /api/labels": BENCH,
    "GET /api/labels/<row:batch>": BENCH,
    "GET /api/labels/plan": BENCH,
    "GET /api/labels/preview.svg": BENCH,
    "POST /api/labels": BENCH,
    "POST /api/labels/<row:batch>/again": BENCH,
    "POST /api/labels/<row:batch>/void": BENCH,
    "GET /api/records/key": BOTH,
    "GET /api/records/<name>": BOTH,
    "POST /api/records/check": BOTH,
    "GET /api/returns": COUNTER,
    "GET /api/returns/waiting": COUNTER,
    "GET /api/returns.csv": COUNTER,
    "GET /api/search": COUNTER,
}


def test_the_table_names_every_route(app):
    found = {
        f"{method} {rule.rule}"
        for rule in app.url_map.iter_rules()
        for method in rule.methods - {"HEAD", "OPTIONS"}
        if rule.rule.startswith("/api/")
    }
    assert found == set(ENDPOINTS)


@pytest.mark.parametrize("role", BOTH)
@pytest.mark.parametrize("endpoint", ENDPOINTS)
def test_a_route_answers_the_roles_of_the_table_and_refuses_the_other(new_phone, role, endpoint):
    phone = new_phone(role=role)
    method, _, path = endpoint.partition(" ")
    for name, value in (
        ("<row:phone>", "99"),
        ("<row:batch>", "99"),
        ("<job>", JOB),
        ("<name>", "JRMMA"),
        ("<digest>", SHA),
    ):
        path = path.replace(name, value)

    answer = phone.write(method, path)

    if role in ENDPOINTS[endpoint]:
        refused = answer.status_code == 403 and answer.get_json()["error"]["field"] == "role"
        assert not refused, answer.get_json()
    else:
        error = assert_refused(answer, 403, "role")
        assert "This is for phones at the" in error["message"]


# Who may record which kind. The bench does jobs, the counter decides returns.
COUNTER_KINDS = {"return_received", "return_decided", "unit_moved", "unit_seen", "photo_taken"}
COUNTER_ALONE = {"return_received", "return_decided"}


@pytest.mark.parametrize("role", BOTH)
@pytest.mark.parametrize("kind", [*sorted(set(kinds.KINDS) - {"corrected", "put_right"}), "not_known_here"])
def test_a_kind_is_taken_from_the_roles_of_the_table_alone(new_phone, role, kind):
    phone = new_phone(role=role)
    phone.record(kind, {"unit": "u000000000001"})

    refused = phone.synced()["refused"]

    allowed = kind in COUNTER_KINDS if role == "counter" else kind not in COUNTER_ALONE
    assert [each["code"] for each in refused] == ([] if allowed else ["not_allowed"])
    if not allowed:
        assert "this phone is at the" in refused[0]["reason"]


def test_what_was_refused_is_not_in_the_log_and_what_follows_waits(phone):
    phone.record("job_opened", job_opened())
    phone.record("return_decided", {"unit": "u000000000001"})
    phone.record("walk_checked")

    answer = phone.synced()

    assert answer["heads"][phone.device]["seq"] == 1
    assert [each["code"] for each in answer["refused"]] == ["not_allowed", "gap"]


def decided(counter):
    """The counter receives and refuses a unit; returns the number of the refusal."""
    counter.record(
        "return_received",
        {"unit": "u000000000001", "how": "scanned", "code": "JRMMA", "part": "", "serial": "",
         "compared": "", "note": ""}, None,
    )  # fmt: skip
    counter.record(
        "return_decided",
        {"unit": "u000000000001", "decision": "refuse", "proposed": "refuse", "reasons": [],
         "overrule": "", "signed": "Jo"}, None,
    )  # fmt: skip
    assert counter.synced()["refused"] == []
    return 2


def correction(phone, device, seq, entry=None):
    data = {"device": device, "seq": seq, "reason": "slip"}
    if entry:
        data["entry"] = entry
    phone.record("put_right" if entry else "corrected", data, None)
    return [each["code"] for each in phone.synced()["refused"]]


# What the counter may say of a decision, and the bench of a position.
DECISION = {
    "unit": "u000000000001",
    "decision": "accept",
    "proposed": "accept",
    "reasons": [],
    "overrule": "",
    "signed": "Jo",
}
ENTRIES = [
    None,
    {"kind": "return_decided", "data": DECISION},
    {"kind": "cleaned", "data": {"position": "a", "note": ""}},
]


@pytest.mark.parametrize("entry", ENTRIES, ids=["taken back", "a decision", "work"])
def test_a_correction_counts_as_what_it_names(phone, counter, entry):
    phone.record("job_opened", job_opened())
    phone.synced()
    seq = decided(counter)

    assert correction(phone, counter.device, seq, entry) == ["not_allowed"]
    assert correction(counter, phone.device, 1, entry) == ["not_allowed"]
    counter.entries.pop()
    assert correction(counter, counter.device, seq, entry) == []


def test_the_bench_takes_nothing_back_that_the_counter_has_not_sent_yet(phone, counter):
    counter.synced()

    assert correction(phone, counter.device, 7) == ["not_allowed"]


def test_a_correction_in_the_same_batch_is_judged_by_its_target(counter):
    seq = decided(counter)
    counter.record(
        "unit_moved", {"unit": "u000000000001", "place": "customer", "how": "scanned", "note": ""}, None
    )
    assert correction(counter, counter.device, seq + 1) == []


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
