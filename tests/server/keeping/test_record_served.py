"""Records over HTTP: taken along from one server, looked at on another, kept by neither."""

from contextlib import closing

import pytest

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.commands.cli import main
from server.keeping.record.check import check
from server.log import events
from server.phones.pairing import make_link
from server.phones.signing import fingerprint
from server.phones.signing import signer
from server.storage import DataFolder
from server.web.bodies import larger_bodies
from tests.server.keeping.record_yard import BAD
from tests.server.keeping.record_yard import BAD_CODE
from tests.server.keeping.record_yard import JOB
from tests.server.keeping.record_yard import filled
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import assert_refused
from tests.server.phone import jpeg


@pytest.fixture
def yard(app, folder):
    """The yard's log on the server of `phone`."""
    return filled(folder.root).stored()


@pytest.fixture
def counter(tmp_path, small_static):
    """A paired phone of another server, which knows nothing."""
    app = create_app(Config(tmp_path / "counter", BASE, small_static))
    phone = Phone(app, "d00000000000000ee")
    with closing(DataFolder(tmp_path / "counter").open()) as db:
        phone.pair_by(make_link(db, BASE, now_ms()))
    phone.ask_session()
    return phone


@pytest.fixture
def taken(yard, phone):
    """A record as the phone of the yard takes it along."""
    answer = phone.get(f"/api/records/{BAD_CODE}")
    assert answer.status_code == 200
    return answer.data


def look(phone, data, **options):
    return phone.write("POST", "/api/records/check", data=data, **options)


@pytest.mark.parametrize("name", [BAD_CODE, f"{BAD_CODE[:3]}-{BAD_CODE[3:]}".lower(), BAD, JOB])
def test_a_paired_phone_takes_a_record_along_by_any_of_its_names(yard, phone, name):
    answer = phone.get(f"/api/records/{name}")
    assert (answer.status_code, answer.mimetype) == (200, "application/zip")
    file_name = f"swaptrail-record-{JOB if name == JOB else BAD_CODE}.zip"
    assert answer.headers["Content-Disposition"] == f'attachment; filename="{file_name}"'
    assert check(answer.data).record["jobs"] == [JOB]


def test_nobody_else_does(yard, stranger):
    assert_refused(stranger.get(f"/api/records/{BAD_CODE}"), 401, "session")
    assert_refused(look(stranger, b"x"), 401, "session")


def test_a_name_that_means_nothing_is_refused_in_words(yard, phone):
    assert (
        "is not on record" in assert_refused(phone.get("/api/records/u000000000099"), 404, "name")["message"]
    )
    assert_refused(phone.get("/api/records/6JF4D"), 404, "name")
    assert "check character" in assert_refused(phone.get("/api/records/6JF4A"), 400, "name")["message"]
    assert_refused(phone.get("/api/records/what%20is%20this"), 400, "name")


def test_another_server_verifies_it_and_keeps_nothing_but_whose_key_it_met(taken, counter, folder):
    own = signer(folder).key
    first = look(counter, taken)
    assert first.status_code == 200, first.get_data(as_text=True)
    found = first.get_json()
    assert (found["unit"], found["jobs"], found["code"]) == (BAD, [JOB], BAD_CODE)
    assert found["maker"] == {
        "kind": "installation",
        "fingerprint": fingerprint(own),
        "own": False,
        "known_since": None,
        "confirmed": None,
    }
    assert found["same_core"] is True
    assert look(counter, taken).get_json()["maker"]["known_since"] is not None
    there = counter.client.application.extensions["data_folder"]
    with closing(there.open()) as db:
        assert events.last_n(db) == 0
        assert db.conn.execute("SELECT key FROM record_makers").fetchall() == [(own,)]
        assert db.conn.execute("SELECT count(*) FROM photos").fetchone() == (0,)
    assert list(there.photos.iterdir()) == []


def test_the_maker_knows_its_own_again(taken, phone):
    assert look(phone, taken).get_json()["maker"]["own"] is True
    assert phone.get("/api/records/key").get_json() == {
        "fingerprint": look(phone, taken).get_json()["maker"]["fingerprint"]
    }


def test_the_photos_lie_where_the_answer_says(taken, counter):
    for digest, (offset, length) in look(counter, taken).get_json()["photos"].items():
        assert taken[offset : offset + length].startswith(b"\xff\xd8\xff"), digest


def test_an_altered_one_is_not_shown_and_the_place_is_named(taken, counter):
    at = taken.index(b"rear-left", taken.index(b"unit_pulled"))
    answer = look(counter, taken[:at] + b"n" + taken[at + 1 :])
    assert answer.status_code == 200
    said = answer.get_json()
    assert (sorted(said), said["outcome"]) == (["outcome", "sentence"], "altered")
    assert said["sentence"].startswith("First place: device d00000000000000aa, entry ")


def test_one_cut_short_is_called_incomplete_not_altered(taken, counter):
    for rest in (len(taken) - 1, len(taken) // 2, taken.index(b"entries.jsonl")):
        said = look(counter, taken[:rest]).get_json()
        assert said["outcome"] == "cut"
        assert said["sentence"].startswith("It is cut short ")


def test_what_is_no_record_is_refused_as_that(counter):
    for data in (b"", b"PK", jpeg(), b"x" * 1000):
        assert look(counter, data).get_json() == {
            "outcome": "none",
            "sentence": "This file is no record of a sensor or a job.",
        }


def test_a_form_on_another_page_cannot_send_one(taken, counter):
    answer = counter.client.post("/api/records/check", base_url=BASE, data=taken)
    assert_refused(answer, 400, "X-CSRFToken")
    assert_refused(look(counter, taken, headers={"Origin": "http://evil.example"}), 403, "Origin")


def test_one_that_is_too_large_is_refused(counter):
    larger_bodies(counter.client.application)["POST", "/api/records/check"] = 1000
    assert_refused(look(counter, bytes(1001)), 413, "body")


def test_a_record_may_be_larger_than_a_photo_may_and_nothing_else(counter):
    data = bytes(5 * 1024 * 1024)
    assert look(counter, data).get_json()["outcome"] == "none"
    assert_refused(counter.write("POST", "/api/sync", data=data), 413, "body")


# --- the command


def test_the_command_writes_a_file_that_verifies(yard, tmp_path, capsys):
    out = tmp_path / "r.zip"
    arguments = ["record", BAD_CODE, "--out", str(out), "--data", str(yard.folder.root)]
    assert main(arguments) == 0
    said = capsys.readouterr().out
    short = f"{BAD_CODE[:3]}-{BAD_CODE[3:]}"
    assert f"the record of sensor {short}, 15 entries, 2 photos." in said
    assert fingerprint(signer(yard.folder).key) in said
    assert main(["verify", str(out)]) == 0
    assert main(arguments) == 2
    assert "nothing is overwritten" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("name", "said"),
    [("6JF4D", "No sensor on record has the label 6JF-4D."), ("j0000000000ff", "is not on record here."),
     ("../x", "is no name of anything."), ("6JF4A", "check character")],
)  # fmt: skip
def test_the_command_says_why_it_makes_none(yard, tmp_path, capsys, name, said):
    assert main(["record", name, "--out", str(tmp_path / "r.zip"), "--data", str(yard.folder.root)]) == 2
    assert said in capsys.readouterr().err
    assert list(tmp_path.glob("r.zip*")) == []


def test_a_folder_without_data_is_refused_and_not_made(tmp_path, capsys):
    assert main(["record", "6JF4D", "--out", str(tmp_path / "r.zip"), "--data", str(tmp_path / "none")]) == 2
    assert "holds no data" in capsys.readouterr().err
    assert not (tmp_path / "none").exists()


def test_a_name_that_lies_about_what_is_written_is_refused(yard, tmp_path, capsys):
    out, data = tmp_path / "r.html", str(yard.folder.root)
    assert main(["record", BAD_CODE, "--out", str(out), "--data", data]) == 2
    assert f"what is written is a zip file. Name it {tmp_path / 'r.zip'}." in capsys.readouterr().err
    assert not out.exists()
    assert main(["record", BAD_CODE, "--out", str(tmp_path / "r"), "--data", data]) == 0
