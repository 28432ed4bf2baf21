"""Whose an entry is: certificates and signed chains, and what becomes of entries that nothing proves."""

import json
from contextlib import closing

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.log import canon
from server.core.record.file import PHONE_APP
from server.core.record.file import PHONE_SEAL_APP
from server.keeping import backup
from server.keeping import restore
from server.keeping.record import container
from server.keeping.record import seal
from server.keeping.record.check import Altered
from server.keeping.record.check import check
from server.keeping.verify.data_folder import FOLDER
from server.phones import certificates
from server.phones.pairing import make_link
from server.phones.signing import Signer
from server.phones.signing import signer
from server.storage.migrations import end_earlier_tasks
from server.words.spoken import text
from tests.server.phone import BASE
from tests.server.phone import JOB
from tests.server.phone import Phone
from tests.server.phone import assert_refused
from tests.server.phone import entry_after
from tests.server.phone import job_opened
from tests.server.signed_phone import Key
from tests.server.signed_phone import SignedPhone
from tests.server.signed_phone import relayed

MARA, NORA, JO = "d00000000000000aa", "d00000000000000bb", "d00000000000000cc"
UNIT = "u000000000001"
RECEIVED = {
    "unit": UNIT,
    "how": "scanned",
    "code": "JRMMA",
    "part": "",
    "serial": "",
    "compared": "",
    "note": "",
}


@pytest.fixture
def new_signed(app, let_in):
    """Makes paired phones with keys of their own."""

    def make(device=MARA, name="Mara", role="bench", key=None, on=app):
        return let_in(SignedPhone(on, device, key), name, role)

    return make


@pytest.fixture
def mara(new_signed):
    return new_signed()


@pytest.fixture
def nora(new_signed):
    return new_signed(NORA, "Nora")


@pytest.fixture
def jo(new_signed):
    return new_signed(JO, "Jo", "counter")


def kept(db):
    return db.conn.execute("SELECT device, seq FROM events ORDER BY n").fetchall()


def codes(answer):
    return [each["code"] for each in answer["refused"]]


def apart(db):
    return db.conn.execute("SELECT device, seq, proven FROM unproven ORDER BY id").fetchall()


def test_a_paired_phone_gets_a_certificate_signed_by_the_installation(mara, app):
    mara.record("job_opened", job_opened())

    answer = mara.synced()

    [given] = answer["certificates"]
    certificate = certificates.read(given)
    assert (certificate.device, certificate.role, certificate.name) == (MARA, "bench", "Mara")
    assert certificate.key == mara.key.public
    assert certificate.is_from(signer(app.extensions["data_folder"]).key)
    [head] = answer["signed_heads"]
    assert (head["device"], head["seq"], head["hash"]) == (MARA, 1, mara.entries[0]["hash"])


def test_nobody_closes_a_job_in_another_phones_name(mara, nora, db):
    mara.record("job_opened", job_opened())
    mara.synced()
    closed = entry_after(mara.entries, MARA, "job_closed", {"note": "done"})

    assert codes(nora.synced(relayed([closed]))) == ["unproven"]
    assert kept(db) == [(MARA, 1)]

    mara.record()
    assert mara.synced()["refused"] == []
    assert kept(db) == [(MARA, 1), (MARA, 2)]
    assert [row[0] for row in db.conn.execute("SELECT kind FROM events ORDER BY n")] == [
        "job_opened",
        "walk_checked",
    ]


def test_what_comes_from_a_phone_before_keys_is_not_proven_by_another_phone(phone, nora, db):
    phone.record("job_opened", job_opened())

    assert codes(nora.synced(relayed(phone.entries))) == ["unproven"]
    assert kept(db) == []
    assert phone.synced()["refused"] == []
    assert kept(db) == [(MARA, 1)]
    assert apart(db) == []  # what the phone itself sent needs nobody's acceptance


def test_what_is_passed_on_counts_in_the_name_and_role_that_it_is_signed_in(mara, jo, db):
    jo.record("return_received", RECEIVED, None)
    jo.synced()
    jo.record("return_received", {**RECEIVED, "note": "again"}, None)
    mara.synced([])
    mara.heads[JO] = jo.signed_head()

    assert mara.synced(relayed(jo.entries))["refused"] == []
    assert kept(db) == [(JO, 1), (JO, 2)]


def test_a_role_is_not_widened_by_passing_on(mara, jo, db):
    jo.synced([])
    jo.record("job_opened", job_opened())
    mara.certificates[JO] = jo.certificates[JO]
    mara.heads[JO] = jo.signed_head()

    assert codes(mara.synced(relayed(jo.entries))) == ["not_allowed"]
    assert kept(db) == []


def test_a_phone_that_was_paired_for_another_task_does_not_go_on_in_its_old_one(mara, nora, new_signed, db):
    """It keeps its key, by which its earlier device id is proven, whoever brings what it signs with that."""
    mara.record("job_opened", job_opened())
    mara.synced()
    link = mara.post("/api/pairings", {}).get_json()["link"]
    at_the_counter = new_signed(JO, "Mara", "counter", key=mara.key)
    mara.record()
    brought = {"certificates": [mara.certificates[MARA]], "signed_heads": [mara.signed_head()]}

    for phone in (at_the_counter, nora):
        answer = phone.sync(relayed(mara.entries), **brought).get_json()
        assert codes(answer) == ["unproven"]
    assert codes(at_the_counter.sync(mara.entries[1:], **brought).get_json()) == ["not_yours"]
    assert_refused(mara.sync(), 401, "session")
    assert_refused(new_signed(NORA, "Nora", key=nora.key).pair_by(link), 403, "token")
    assert_refused(mara.pair_by(make_link(db, BASE, now_ms()), "Mara"), 403, "device")
    assert kept(db) == [(MARA, 1)]


def test_what_a_phone_recorded_before_another_task_a_person_of_that_task_accepts(mara, nora, new_signed, db):
    mara.record("job_opened", job_opened())
    mara.synced()
    at_the_counter = new_signed(JO, "Mara", "counter", key=mara.key)
    mara.record()
    brought = {"certificates": [mara.certificates[MARA]], "signed_heads": [mara.signed_head()]}
    nora.sync(relayed(mara.entries), **brought)

    assert at_the_counter.get("/api/brought").get_json()["brought"] == []
    [waiting] = nora.get("/api/brought").get_json()["brought"]
    accept = f"/api/brought/{MARA}/accept"
    assert_refused(at_the_counter.post(accept, {"by": waiting["by"]}), 403, "role")
    assert nora.post(accept, {"by": waiting["by"]}).get_json() == {"accepted": 1, "refused": []}
    assert kept(db) == [(MARA, 1), (MARA, 2)]


def test_the_later_task_counts_where_the_clock_was_set_back_between(mara, new_signed, monkeypatch):
    monkeypatch.setattr("server.phones.pairing.now_ms", lambda: now_ms() - 3_600_000)
    at_the_counter = new_signed(JO, "Mara", "counter", key=mara.key)
    monkeypatch.undo()
    at_the_counter.record("return_received", RECEIVED, None)

    assert at_the_counter.synced()["refused"] == []
    assert_refused(mara.sync([]), 401, "session")


def test_phones_that_were_paired_for_another_task_before_this_version_end_in_the_earlier_one(mara, jo, db):
    db.conn.execute(
        "UPDATE certificates SET key = ?, since = since + 1 WHERE device = ?", [mara.key.public, JO]
    )
    db.conn.commit()
    assert mara.synced([])["refused"] == []

    with db.conn:
        end_earlier_tasks(db)

    assert_refused(mara.sync([]), 401, "session")
    assert jo.get("/api/phones").status_code == 200
    ended = db.conn.execute("SELECT device FROM certificates WHERE ended_at IS NOT NULL").fetchall()
    assert ended == [(MARA,)]


def test_a_task_that_the_backup_does_not_know_ends_the_earlier_one_once_its_certificate_is_brought(
    tmp_path, small_static, mara, nora, new_signed
):
    mara.synced([])
    backup.run(tmp_path / "data", tmp_path / "yard.zip")
    at_the_counter = new_signed(JO, "Mara", "counter", key=mara.key)
    at_the_counter.record("return_received", RECEIVED, None)
    at_the_counter.synced()
    restore.run(tmp_path / "again", tmp_path / "yard.zip")
    after = create_app(Config(tmp_path / "again", BASE, small_static))
    for phone in (mara, nora):
        phone.client = _moved(phone.client, after)
        phone.ask_session()
    assert mara.synced([])["refused"] == []  # nobody there knows better

    nora.certificates.update(at_the_counter.certificates)
    nora.heads[JO] = at_the_counter.signed_head()
    assert nora.synced(relayed(at_the_counter.entries))["refused"] == []
    assert_refused(mara.sync([]), 401, "session")


def test_one_key_under_two_device_ids_proves_each_chain_as_what_it_is(mara, nora, new_signed, db):
    """What is signed names its device: the end of one chain is none of the other's."""
    twin = new_signed("d00000000000000ab", "Kim", key=mara.key)
    twin.record("job_opened", job_opened())
    head = {**twin.signed_head(), "device": MARA}
    for phone in (mara, twin):
        phone.synced([])
    forged = entry_after([], MARA, "job_opened", job_opened())
    end = {**twin.key.head(twin.device, 1, forged["hash"]), "device": MARA}

    for heads in ([head], [end]):
        certificate = mara.certificates[MARA]
        answer = nora.sync(relayed([forged]), certificates=[certificate], signed_heads=heads).get_json()
        assert codes(answer) == ["unproven"]
    assert kept(db) == []


def test_a_certificate_of_another_installation_counts_for_nothing_here(
    tmp_path, small_static, jo, new_signed, db
):
    """The same phone, by the same key and device id, is at the bench there and at the counter here."""
    other = create_app(Config(tmp_path / "other", BASE, small_static))
    there = SignedPhone(other, NORA)
    with closing(other.extensions["data_folder"].open()) as other_db:
        assert there.pair_by(make_link(other_db, BASE, now_ms()), "Nora").status_code == 200
    there.ask_session()
    there.record("job_opened", job_opened())
    there.synced()
    brought = {"certificates": list(there.certificates.values()), "signed_heads": [there.signed_head()]}
    assert codes(jo.sync(relayed(there.entries), **brought).get_json()) == ["unproven"]

    here = new_signed(NORA, "Nora", "counter", key=there.key)

    assert codes(here.sync(there.entries, **brought).get_json()) == ["not_allowed"]
    assert codes(jo.sync(relayed(there.entries), **brought).get_json()) == ["not_allowed"]
    assert kept(db) == []
    assert db.conn.execute("SELECT role FROM certificates WHERE device = ?", [NORA]).fetchall() == [
        ("counter",)
    ]


def test_what_a_phone_had_signed_before_it_was_put_out_is_not_played_again(mara, nora, new_signed, db):
    nora.record("job_opened", job_opened())
    nora.synced()
    nora.record()
    batch, proofs = list(nora.entries), {"signed_heads": [nora.signed_head()]}
    certificate = nora.certificates[NORA]
    [listed] = [each for each in mara.get("/api/phones").get_json()["phones"] if each["name"] == "Nora"]
    assert mara.post(f"/api/phones/{listed['id']}/revoke").status_code == 200
    again = new_signed("d00000000000000b1", "Nora", key=nora.key)

    for phone in (again, mara):
        assert codes(phone.sync(batch, **proofs).get_json()) == ["not_yours"]
        answer = phone.sync(relayed(batch), certificates=[certificate], **proofs).get_json()
        assert codes(answer) == ["unproven"]
        assert_refused(phone.sync(batch, device=NORA, **proofs), 403, "device")
    assert kept(db) == [(NORA, 1)]


@pytest.mark.parametrize("forged", ["self-signed", "other issuer", "changed role", "other device"])
def test_a_forged_certificate_proves_nothing(mara, jo, db, forged):
    jo.synced([])
    key = Key()
    certificate = {**jo.certificates[JO], "key": key.public}
    if forged == "changed role":
        certificate = {**jo.certificates[JO], "role": "bench"}
    elif forged == "other issuer":
        certificate["issuer"] = "ab" * 32
    device = "d00000000000000dd" if forged == "other device" else JO
    certificate["device"] = device
    entry = entry_after([], device, "return_received", RECEIVED, None)
    head = key.head(device, 1, entry["hash"])

    answer = mara.sync(relayed([entry]), certificates=[certificate], signed_heads=[head]).get_json()

    assert codes(answer) == ["unproven"]
    assert kept(db) == []


def test_an_entry_beside_the_signed_chain_is_not_covered(mara, jo, db):
    jo.synced([])
    jo.record("return_received", RECEIVED, None)
    twin = entry_after([], JO, "return_received", {**RECEIVED, "note": "forged"}, None)
    mara.synced([])
    mara.certificates[JO], mara.heads[JO] = jo.certificates[JO], jo.signed_head()

    assert codes(mara.synced(relayed([twin, *jo.entries]))) == ["unproven"]
    assert [json.loads(body)["data"]["note"] for (body,) in db.conn.execute("SELECT body FROM events")] == [
        ""
    ]


def test_a_phone_with_a_key_signs_or_is_refused(mara, db):
    mara.record("job_opened", job_opened())

    unsigned = mara.sync(signed_heads=[]).get_json()
    assert codes(unsigned) == ["unsigned"]
    stolen = mara.sync(signed_heads=[Key().head(MARA, 1, mara.entries[0]["hash"])]).get_json()
    assert codes(stolen) == ["unsigned"]
    other_end = mara.sync(signed_heads=[mara.key.head(MARA, 1, "ab" * 32)]).get_json()
    assert codes(other_end) == ["bad_signature"]
    assert kept(db) == []
    assert mara.synced()["refused"] == []


def test_a_device_id_is_not_taken_over_without_its_key(app, db, mara):
    mara.record("job_opened", job_opened())
    mara.synced()
    for number, (role, phone_of) in enumerate(
        [("counter", SignedPhone), ("bench", SignedPhone), ("bench", Phone)]
    ):
        link = make_link(db, BASE, now_ms(), role=role)
        thief = phone_of(app, MARA)
        error = assert_refused(thief.pair_by(link, "Jo"), 403, "device")
        assert "put it out" in error["message"]
        # The link is still good, for a device id of its own.
        thief.device = f"d00000000000000f{number}"
        assert thief.pair_by(link, "Jo").status_code == 200
    mara.record()
    assert mara.synced()["refused"] == []


def test_a_device_id_before_keys_is_not_taken_over_in_another_role(app, db, phone):
    phone.record("job_opened", job_opened())
    phone.synced()

    thief = Phone(app, MARA)
    assert_refused(thief.pair_by(make_link(db, BASE, now_ms(), role="counter"), "Jo"), 403, "device")
    assert phone.synced()["refused"] == []


def test_a_phone_that_lost_its_cookie_comes_back_by_its_key(mara, new_signed):
    mara.record("job_opened", job_opened())
    mara.synced()

    again = new_signed(MARA, "Mara", key=mara.key)
    again.entries = mara.entries
    again.record()

    assert again.synced()["refused"] == []
    assert_refused(mara.sync([]), 401, "session")


def test_a_device_id_keeps_its_role(app, db, mara):
    again = SignedPhone(app, MARA, mara.key)

    error = assert_refused(
        again.pair_by(make_link(db, BASE, now_ms(), role="counter"), "Mara"), 403, "device"
    )

    assert "A phone at the parts counter needs an id of its own." in error["message"]


def test_putting_a_phone_out_ends_its_device_id(app, db, mara, jo):
    jo.record("return_received", RECEIVED, None)
    jo.synced()
    mara.synced([])
    [listed] = [each for each in mara.get("/api/phones").get_json()["phones"] if each["name"] == "Jo"]
    assert mara.post(f"/api/phones/{listed['id']}/revoke").status_code == 200

    again = SignedPhone(app, JO, jo.key)
    link = make_link(db, BASE, now_ms(), role="counter")
    assert "put out" in assert_refused(again.pair_by(link, "Jo"), 403, "device")["message"]
    assert_refused(mara.sync([], device=JO), 403, "device")
    # What it signs from now on proves nothing any more.
    jo.record("return_received", {**RECEIVED, "note": "later"}, None)
    mara.heads[JO] = jo.signed_head()
    assert codes(mara.synced(relayed(jo.entries))) == ["unproven"]
    again.device = "d00000000000000fa"
    assert again.pair_by(link, "Jo").status_code == 200


def test_a_phone_before_keys_gets_one_at_its_next_sync(phone, app, db):
    phone.record("job_opened", job_opened())
    phone.synced()
    updated = SignedPhone(app, phone.device)
    updated.client, updated.csrf, updated.entries = phone.client, phone.csrf, phone.entries

    answer = updated.synced([])  # it has nothing to send
    assert [each["name"] for each in answer["certificates"]] == ["Mara"]

    updated.record()
    assert updated.synced()["refused"] == []
    assert codes(phone.sync([entry_after(updated.entries, MARA)]).get_json()) == ["unsigned"]


def test_a_phone_without_a_key_goes_on_as_before(phone, db):
    phone.record("job_opened", job_opened())

    answer = phone.synced()

    assert answer["refused"] == []
    assert (answer["certificates"], answer["signed_heads"]) == ([], [])


def test_what_a_lost_counter_phone_recorded_comes_back_in_its_name(tmp_path, small_static, mara, jo):
    jo.synced([])
    backup.run(tmp_path / "data", tmp_path / "yard.zip")
    jo.record("return_received", RECEIVED, None)
    jo.record("unit_moved", {"unit": UNIT, "place": "stock", "how": "typed", "note": ""}, None)
    jo.synced()
    mara.record("job_opened", job_opened())
    feed = mara.synced()["events"]
    restore.run(tmp_path / "again", tmp_path / "yard.zip")
    after = create_app(Config(tmp_path / "again", BASE, small_static))

    mara.client = _moved(mara.client, after)
    mara.ask_session()
    everything = [
        entry if entry["event"]["device"] == MARA else {**entry, "relayed": True}
        for entry in ({"event": each["event"], "hash": each["hash"]} for each in feed)
    ]
    answer = mara.synced(everything)

    assert answer["refused"] == []
    assert [(each["event"]["device"], each["event"]["seq"]) for each in answer["events"]] == [
        (JO, 1),
        (JO, 2),
        (MARA, 1),
    ]


def test_a_certificate_that_the_backup_does_not_know_is_known_again_by_its_signature(
    tmp_path, small_static, mara, new_signed
):
    backup.run(tmp_path / "data", tmp_path / "yard.zip")
    jo = new_signed(JO, "Jo", "counter")
    jo.record("return_received", RECEIVED, None)
    jo.synced()
    mara.synced([])
    restore.run(tmp_path / "again", tmp_path / "yard.zip")
    after = create_app(Config(tmp_path / "again", BASE, small_static))
    mara.client = _moved(mara.client, after)
    mara.ask_session()

    assert mara.synced(relayed(jo.entries))["refused"] == []
    assert codes(mara.synced([entry_after(jo.entries, JO)])) == ["not_yours"]


def test_a_chain_longer_than_a_batch_is_proven_once_it_is_whole(mara, jo, db):
    jo.synced([])
    for n in range(7):
        jo.record("return_received", {**RECEIVED, "note": str(n)}, None)
    mara.certificates[JO], mara.heads[JO] = jo.certificates[JO], jo.signed_head()
    mara.record("job_opened", job_opened())
    chain = relayed(jo.entries)

    for start in (0, 3, 6):
        answer = mara.sync(chain[start : start + 3], only_prove=True).get_json()
        assert (answer["refused"], answer["events"]) == ([], [])
    assert kept(db) == []
    order = [*chain[:2], mara.entries[0], *chain[2:]]
    for start in (0, 3, 6):
        assert mara.synced(order[start : start + 3])["refused"] == []

    assert kept(db) == [(each["event"]["device"], each["event"]["seq"]) for each in order]
    assert apart(db) == []


@pytest.mark.parametrize("later", [(0, 2), (2, 0), (0, 2, 4)])
def test_a_chain_is_proven_once_it_is_whole_in_whatever_order_its_pieces_came(
    mara, jo, new_signed, db, later
):
    """Whoever brings the signed end of a lost phone's chain first does not shut out what is before it."""
    jo.synced([])
    for n in range(7):
        jo.record("return_received", {**RECEIVED, "note": str(n)}, None)
    chain = relayed(jo.entries)
    kim = new_signed("d00000000000000bb", "Kim")
    for bringing in (kim, mara):
        bringing.certificates[JO], bringing.heads[JO] = jo.certificates[JO], jo.signed_head()
    for start in (6, 4):
        kim.sync(chain[start : start + 2], only_prove=True)
    assert codes(kim.sync(chain[4:6]).get_json()) == ["gap", "gap"]

    for start in later:
        mara.sync(chain[start : start + 2], only_prove=True)
    for start in (0, 2, 4, 6):
        assert mara.synced(chain[start : start + 2])["refused"] == []

    assert kept(db) == [(JO, n) for n in range(1, 8)]
    assert apart(db) == []


def test_what_is_brought_is_listed_and_accepted_by_whose_work_it_is(app, db, mara, jo):
    stranger = "d00000000000000ee"
    chain = [entry_after([], stranger, "return_received", RECEIVED, None)]
    chain.append(entry_after(chain, stranger, "unit_moved",
                             {"unit": UNIT, "place": "stock", "how": "typed", "note": ""}, None))  # fmt: skip
    assert codes(mara.synced(relayed(chain))) == ["unproven", "unproven"]

    assert mara.get("/api/brought").get_json()["brought"] == []
    [line] = jo.get("/api/brought").get_json()["brought"]
    assert (line["device"], line["brought_by"], line["entries"]) == (stranger, "Mara", 2)
    refusal = mara.post(f"/api/brought/{stranger}/accept", {"by": line["by"]})
    assert_refused(refusal, 403, "role")
    assert kept(db) == []

    answer = jo.post(f"/api/brought/{stranger}/accept", {"by": line["by"]}).get_json()

    assert answer == {"accepted": 2, "refused": []}
    assert kept(db) == [(stranger, 1), (stranger, 2)]
    assert jo.get("/api/brought").get_json()["brought"] == []


def test_what_is_set_aside_is_out_of_the_list_and_stays_so(mara, nora, db):
    chain = [entry_after([], "d00000000000000ee", "job_opened", job_opened())]
    mara.synced(relayed(chain))
    [line] = nora.get("/api/brought").get_json()["brought"]

    assert nora.post("/api/brought/d00000000000000ee/set-aside", {"by": line["by"]}).status_code == 200

    assert codes(mara.synced(relayed(chain))) == ["unproven"]
    assert nora.get("/api/brought").get_json()["brought"] == []
    assert apart(db) == [("d00000000000000ee", 1, 0)]


def test_nobody_accepts_what_a_phone_with_a_key_can_prove(mara, nora, db):
    nora.synced([])
    forged = entry_after([], NORA, "job_opened", job_opened())
    mara.synced(relayed([forged]))
    [line] = mara.get("/api/brought").get_json()["brought"]

    error = assert_refused(mara.post(f"/api/brought/{NORA}/accept", {"by": line["by"]}), 403, "device")

    assert "put it out" in error["message"]
    assert kept(db) == []


def _moved(client, app):
    """Return the client of another app with the cookies of this one."""
    moved = app.test_client()
    moved._cookies = client._cookies  # the client has no public way
    return moved


@pytest.mark.parametrize(
    ("statement", "told"),
    [
        (
            "UPDATE heads SET signature = substr(signature, 1, 127) || "
            "CASE substr(signature, 128) WHEN '0' THEN '1' ELSE '0' END WHERE seq = 2",
            "signature of its phone",
        ),
        (
            "UPDATE heads SET hash = replace(hash, 'a', 'b') WHERE seq = 1",
            "signed another entry in its place",
        ),
        ("UPDATE certificates SET role = 'counter'", "certificate was not signed by the installation"),
    ],
)
def test_verify_names_what_does_not_fit_what_phones_signed(mara, db, folder, statement, told):
    for _ in range(2):
        mara.record("job_opened", job_opened())
        mara.synced()
    assert FOLDER.first_fault(folder.root) is None

    db.conn.execute(statement)
    db.conn.commit()

    fault = FOLDER.first_fault(folder.root)
    assert (fault.device, told in text(fault.told())) == (MARA, True)


def members(data):
    return {name: bytes(content) for name, content in container.unpack(data)}


def test_a_record_carries_what_its_phones_signed_and_a_signature_that_does_not_fit_is_named(mara, folder, db):
    mara.record("job_opened", job_opened())
    mara.synced()
    mara.record()
    mara.synced()
    made = mara.get(f"/api/records/{JOB}").get_data()
    assert check(made).record["job"] == JOB
    parts = members(made)
    hashes = json.loads(parts["hashes.json"])
    assert hashes["certificates"] == [mara.certificates[MARA]]
    assert [(head["device"], head["seq"]) for head in hashes["signed_heads"]] == [(MARA, 2)]

    # Whoever seals it anew with another installation's key cannot sign for the phone.
    signs = Signer(Ed25519PrivateKey.generate())
    for change, told in (
        (
            {"signed_heads": [Key().head(MARA, 2, mara.entries[1]["hash"])]},
            "signature of its phone does not fit",
        ),
        ({"signed_heads": [mara.key.head(MARA, 2, "ab" * 32)]}, "signed another entry in its place"),
        (
            {"certificates": [{**mara.certificates[MARA], "name": "Jo"}]},
            "certificate of its phone does not fit",
        ),
    ):
        record = {**json.loads(parts["record.json"]), "key": signs.key}
        others = {name: data for name, data in parts.items() if name not in ("record.json", "seal.json")}
        others["hashes.json"] = canon.dumps({**hashes, **change}).encode()
        sealed = seal.sealed(seal.digests(record, others), signs).encode()
        order = {"record.json": canon.dumps(record).encode(), "entries.jsonl": others.pop("entries.jsonl"),
                 "hashes.json": others.pop("hashes.json"), "seal.json": sealed, **others}  # fmt: skip
        with pytest.raises(Altered) as altered:
            check(b"".join(bytes(piece) for _, piece in container.pieces(order.items())))
        assert told in text(altered.value.fault.told())


def test_a_record_of_a_phone_that_was_put_out_stays_whole(mara, nora, folder):
    mara.record("job_opened", job_opened())
    mara.synced()
    [listed] = [each for each in nora.get("/api/phones").get_json()["phones"] if each["name"] == "Mara"]
    assert nora.post(f"/api/phones/{listed['id']}/revoke").status_code == 200

    made = nora.get(f"/api/records/{JOB}").get_data()

    assert check(made).record["job"] == JOB
    hashes = json.loads(members(made)["hashes.json"])
    assert [each["device"] for each in hashes["certificates"]] == [MARA]
    # Some were made without it: what is signed then proves nothing, and nothing of it is altered.
    del hashes["certificates"]
    parts = {**members(made), "hashes.json": canon.dumps(hashes).encode()}
    del parts["seal.json"]
    record = json.loads(parts["record.json"])
    others = {name: data for name, data in parts.items() if name != "record.json"}
    parts["seal.json"] = seal.sealed(seal.digests(record, others), signer(folder)).encode()
    earlier = b"".join(bytes(piece) for _, piece in container.pieces(parts.items()))
    assert check(earlier).record["job"] == JOB


def sealed_by_a_phone(parts, key, hashes):
    """Returns a record with these hashes, sealed with a phone's own key, as the app does it."""
    record = {**json.loads(parts["record.json"]), "app": PHONE_APP, "key": key.public, "installation": MARA}
    others = {name: data for name, data in parts.items() if name not in ("record.json", "seal.json")}
    others["hashes.json"] = canon.dumps(hashes).encode()
    body = {"app": PHONE_SEAL_APP, "v": 1, "key": key.public, "digests": seal.digests(record, others)}
    sealed = canon.dumps({**body, "signature": key.sign(body)}).encode()
    order = {"record.json": canon.dumps(record).encode(), "entries.jsonl": others.pop("entries.jsonl"),
             "hashes.json": others.pop("hashes.json"), "seal.json": sealed, **others}  # fmt: skip
    return b"".join(bytes(piece) for _, piece in container.pieces(order.items()))


def test_a_record_that_a_phone_sealed_tells_of_phones_what_certificates_in_it_bear_out(mara):
    mara.record("job_opened", job_opened())
    mara.synced()
    parts = members(mara.get(f"/api/records/{JOB}").get_data())
    hashes = json.loads(parts["hashes.json"])
    [row] = hashes["phones"]
    assert (row["device"], row["name"]) == (MARA, "Mara")

    made_up = [{**row, "name": "Jo"}, {**row, "role": "counter"}, {**row, "device": NORA}]
    made = sealed_by_a_phone(parts, mara.key, {**hashes, "phones": [*made_up, row]})

    assert check(made).phones == [row]
    assert mara.write("POST", "/api/records/check", data=made).get_json()["phones"] == [row]
    bare = sealed_by_a_phone(parts, mara.key, {**hashes, "certificates": [], "signed_heads": []})
    assert check(bare).phones == []
    forged = {**hashes, "certificates": [{**hashes["certificates"][0], "name": "Jo"}], "phones": made_up[:1]}
    with pytest.raises(Altered, match=r"."):
        check(sealed_by_a_phone(parts, mara.key, forged))
