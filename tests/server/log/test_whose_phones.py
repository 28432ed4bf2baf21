"""What the server knows of phones: in whose name and role each records, who shares it, and from when on."""

import json

import pytest

from server.core.host import Host
from server.keeping.rebuild import rebuild
from server.keeping.record.check import check
from server.keeping.record.make import make
from server.keeping.verify.data_folder import FOLDER
from server.keeping.verify.record_file import RECORD
from server.log import events
from server.phones.signing import signer
from server.storage.migrations import migrations
from tests.server.phone import JOB
from tests.server.phone import NOW
from tests.server.phone import assert_refused
from tests.server.phone import job_opened
from tests.server.signed_phone import SignedPhone

MARA, JO = "d00000000000000aa", "d00000000000000cc"
CLEANED = {"position": "rear-left", "note": ""}


@pytest.fixture
def mara(app, let_in):
    return let_in(SignedPhone(app, MARA), "Mara", "bench")


@pytest.fixture
def jo(app, let_in):
    return let_in(SignedPhone(app, JO), "Jo", "counter")


def said(device, name, role="bench", first=1, people=()):
    return {"device": device, "from": first, "role": role, "name": name, "people": list(people)}


def history(phone):
    return phone.get(f"/api/jobs/{JOB}").get_json()["history"]


def slipped_in(db, phone, kind="cleaned", data=None):
    """Puts an entry into the log that no server takes: judged by no role, as before roles were judged."""
    entry = phone.record(kind, CLEANED if data is None else data)
    events.receive(db, [entry], None, NOW)


def test_a_phone_hears_of_each_phone_once_and_an_older_app_of_none(mara, jo):
    mara.record("job_opened", job_opened())

    first = mara.sync(phones=0).get_json()
    again = mara.sync(phones=first["phones_upto"]).get_json()

    assert first["phones"] == [said(MARA, "Mara"), said(JO, "Jo", "counter")]
    assert (again["phones"], again["phones_upto"]) == ([], first["phones_upto"])
    assert "phones" not in mara.synced()


@pytest.mark.parametrize("phones", [-1, "1", 1.5, True, [], 2**53])
def test_what_is_no_place_among_the_phones_is_refused(mara, phones):
    assert_refused(mara.sync(phones=phones), 400, "phones")


def test_what_a_phone_of_the_counter_records_at_the_bench_is_flagged_wherever_it_is_read(
    mara, jo, db, app, tmp_path
):
    mara.record("job_opened", job_opened())
    mara.synced()
    slipped_in(db, jo)
    mara.record("cleaned", CLEANED)
    mara.synced()

    assert [len(entry.get("flags", [])) for entry in history(mara)] == [0, 1, 0]
    assert rebuild(db) == []
    assert [len(entry.get("flags", [])) for entry in history(mara)] == [0, 1, 0]
    folder = app.extensions["data_folder"]
    made = make(db, folder.photos, JOB, signer(folder), NOW)
    assert check(made.data).phones == [said(MARA, "Mara"), said(JO, "Jo", "counter")]
    answer = mara.write("POST", "/api/records/check", data=made.data).get_json()
    assert answer["phones"] == check(made.data).phones
    file = tmp_path / "record.zip"
    file.write_bytes(made.data)
    assert RECORD.told(file, None).agrees
    alone, sound = Host(), check(made.data)
    entries = [{"event": event} for event in sound.events]
    alone.call(json.dumps({"op": "reset", "events": entries, "phones": sound.phones}))
    assert [each["event"] for each in alone.fold.state.conflicts] == [f"{JO}:1"]


def test_what_was_recorded_before_the_certificate_stays_as_it_is(app, db, mara, new_phone):
    mara.record("job_opened", job_opened())
    mara.synced()
    older = new_phone(JO, "Jo", "counter")  # an app from before phones had keys
    slipped_in(db, older)
    updated = SignedPhone(app, JO)
    updated.client, updated.csrf, updated.entries = older.client, older.csrf, older.entries
    assert updated.synced()["refused"] == []

    assert mara.sync(phones=0).get_json()["phones"][-1] == said(JO, "Jo", "counter", first=2)
    assert [entry for entry in history(mara) if "flags" in entry] == []
    slipped_in(db, updated)
    assert len([entry for entry in history(mara) if "flags" in entry]) == 1


def test_who_shares_a_phone_is_said_on_it_and_counts_from_then_on(mara, db):
    mara.record("job_opened", job_opened())
    mara.actor = "Bo"
    mara.record("cleaned", CLEANED)
    mara.synced()
    mara.record("cleaned", CLEANED)
    for _ in range(2):
        answer = mara.sync(phones=0, people=["Mara", "Bo"]).get_json()

    assert answer["phones"] == [said(MARA, "Mara"), said(MARA, "Mara", first=3, people=["Bo"])]
    shown = history(mara)
    assert ["flags" in entry for entry in shown] == [False, True, False]
    assert [entry["who"] for entry in shown[:2]] == [
        "Bo, on the phone of Mara",
        "said by Bo on the phone of Mara",
    ]


def test_a_phone_that_changes_its_mind_leaves_one_row_and_all_hear_of_the_last(mara, jo, db):
    known = jo.sync(phones=0).get_json()
    for turn in range(50):
        mara.sync(people=[f"Bo {turn}"])

    assert db.conn.execute("SELECT count(*) FROM phones WHERE device = ?", [MARA]).fetchone() == (1,)
    answer = jo.sync(phones=known["phones_upto"]).get_json()
    assert answer["phones"] == [said(MARA, "Mara", people=["Bo 49"])]


@pytest.mark.parametrize("people", ["Bo", [""], ["B" * 81], [1], ["Bo"] * 21, {"Bo": 1}])
def test_what_is_no_list_of_people_is_refused(mara, people):
    assert_refused(mara.sync(people=people), 400, "people")


def test_half_a_character_in_a_name_is_refused_and_no_fault_of_the_server(mara):
    body = json.dumps({"app": "b", "v": 1, "device": MARA, "cursor": 0, "events": [], "people": ["\ud800"]})

    answer = mara.write("POST", "/api/sync", data=body.encode())

    assert answer.status_code == 400


def test_a_phone_without_a_certificate_is_said_nothing_of(phone, db):
    assert phone.sync(phones=0, people=["Bo"]).get_json()["phones"] == []


def test_a_database_from_before_says_of_its_phones_from_their_next_entry_on(mara, db):
    mara.record("job_opened", job_opened())
    mara.actor = "Bo"
    mara.record("cleaned", CLEANED)
    mara.synced()
    db.conn.execute("UPDATE certificates SET since = since + 60000")
    db.conn.execute("DROP TABLE phones")
    db.conn.execute("DELETE FROM _sqlite_migrations WHERE name = 'note_phones'")
    db.conn.commit()

    migrations.apply(db)

    assert mara.sync(phones=0).get_json()["phones"] == [said(MARA, "Mara", first=3, people=["Bo"])]


def test_verify_finds_a_phone_that_was_given_another_role(mara, db, folder):
    mara.record("job_opened", job_opened())
    mara.synced()
    assert FOLDER.first_fault(folder.root) is None

    db.conn.execute("UPDATE phones SET role = 'counter'")
    db.conn.commit()

    assert FOLDER.first_fault(folder.root).device == MARA
