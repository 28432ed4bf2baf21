"""Whose a seal is: nobody knows until a person has compared its fingerprint, and every check says so."""

import pytest

from server.keeping.record.makers import HOWS
from server.phones.signing import fingerprint
from server.phones.signing import signer
from tests.server.keeping.record_yard import BAD_CODE
from tests.server.keeping.record_yard import filled
from tests.server.phone import assert_refused


@pytest.fixture
def record(tmp_path, said):
    """A record of another yard, as a file, and its fingerprint."""
    folder = filled(tmp_path / "other").stored().folder
    file = tmp_path / "record.zip"
    assert said("record", BAD_CODE, "--out", file, "--data", folder.root)[0] == 0
    return file, fingerprint(signer(folder).key)


def checked(phone, record):
    return phone.write("POST", "/api/records/check", data=record[0].read_bytes()).get_json()["maker"]


def test_every_check_says_that_nobody_confirmed_it_until_somebody_did(counter, record, folder, said):
    assert [checked(counter, record)["confirmed"] for _ in range(3)] == [None] * 3
    assert "cannot say" in said("verify", record[0], "--data", folder.root)[1]
    given = {"fingerprint": record[1], "name": " North yard ", "how": "called"}
    kept = counter.post("/api/records/makers", given).get_json()
    assert {**kept, "at": 0} == {"name": "North yard", "how": "called", "by": "Jo", "at": 0}
    assert checked(counter, record)["confirmed"] == kept
    out = said("verify", record[0], "--data", folder.root)[1]
    assert "the seal of North yard; Jo compared the fingerprint by telephone" in out
    assert "cannot say" in said("verify", record[0])[1]


def test_a_folder_that_is_mistyped_is_refused_before_anything_is_said_of_the_file(record, tmp_path, said):
    status, text = said("verify", record[0], "--data", tmp_path / "typo")
    assert (status, "Intact" in text) == (2, False)
    assert f"{tmp_path / 'typo'} holds no data" in text


@pytest.mark.parametrize(
    ("field", "value"),
    [("name", "  "), ("name", "x" * 81), ("how", "guessed"), ("how", 1), ("fingerprint", "")],
)
def test_what_confirms_nothing_is_refused(counter, record, field, value):
    checked(counter, record)
    given = {"fingerprint": record[1], "name": "North", "how": HOWS[0], field: value}
    assert_refused(counter.post("/api/records/makers", given), 400, field)


def test_a_fingerprint_that_was_never_met_is_refused(counter):
    given = {"fingerprint": "0000 1111", "name": "North", "how": "met"}
    assert_refused(counter.post("/api/records/makers", given), 404, "fingerprint")


def kept(phone, record):
    return phone.write("POST", "/api/records/kept", data=record[0].read_bytes())


def test_a_record_is_kept_with_its_seal_once_that_is_confirmed(counter, record, db):
    checked(counter, record)
    refused = assert_refused(kept(counter, record), 400, "maker")
    assert refused["message"].startswith("Nobody has confirmed whose seal this is")
    assert db.conn.execute("SELECT count(*) FROM records_kept").fetchone() == (0,)
    counter.post("/api/records/makers", {"fingerprint": record[1], "name": "North", "how": "met"})
    file = kept(counter, record).get_json()["file"]
    assert kept(counter, record).get_json()["file"] == file
    assert counter.get(f"/api/records/kept/{file}").data == record[0].read_bytes()
    assert counter.get(f"/api/records/kept/{'0' * 64}").status_code == 404


def test_an_altered_record_is_not_kept(counter, record):
    checked(counter, record)
    counter.post("/api/records/makers", {"fingerprint": record[1], "name": "North", "how": "met"})
    data = record[0].read_bytes()
    at = data.index(b"rear-left", data.index(b"unit_pulled"))
    record[0].write_bytes(data[:at] + b"n" + data[at + 1 :])
    refused = assert_refused(kept(counter, record), 400, "record")
    assert ", entry " in refused["message"]
