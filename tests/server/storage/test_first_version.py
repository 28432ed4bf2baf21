"""A database of the first version opens in this one with nothing lost, and work goes on from there.

`version_1.sql` is a dump of what that version wrote: a job with an exchange, an entry taken back, an
unknown kind, an entry kept apart, labels, an answer in a cache. `version_1_sync.json` is how that version
sent the same entries, in two requests. Neither is ever made again.
"""

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.host import Host
from server.core.log import canon
from server.keeping.verify.data_folder import FOLDER
from server.log import events
from server.phones.pairing import make_link
from server.storage import DataFolder
from server.storage import migrations
from tests.said import english
from tests.server.phone import BASE
from tests.server.phone import Phone

DUMP = (Path(__file__).parent / "version_1.sql").read_text("utf-8")
SENT = json.loads((Path(__file__).parent / "version_1_sync.json").read_text("utf-8"))
# What that version wants of an answer, and of each refusal in it; more it lets pass.
READ_BY_IT = {"installation", "cursor", "more", "events", "heads", "refused", "photos_wanted", "build"}
JOB = "j000000000001"
KEPT = ("events", "devices", "sessions", "settings", "quarantine", "labels", "event_units", "event_photos")


def rows_of(connection, columns):
    """Return the rows of each table, in these columns of it."""
    return {table: connection.execute(f"SELECT {columns[table]} FROM {table}").fetchall() for table in KEPT}


def columns_of(connection):
    found = {table: connection.execute(f"PRAGMA table_info({table})").fetchall() for table in KEPT}
    return {table: ", ".join(row[1] for row in rows) for table, rows in found.items()}


@pytest.fixture
def old(tmp_path):
    """A data folder as the first version left it, its rows and their columns."""
    folder = DataFolder(tmp_path / "old")
    folder.photos.mkdir(parents=True)
    with closing(sqlite3.connect(folder.database)) as connection:
        connection.executescript(DUMP)
        columns = columns_of(connection)
        before = rows_of(connection, columns)
    return folder, before, columns


def test_every_row_is_there_and_the_tables_are_those_of_a_new_folder(old, tmp_path):
    folder, before, columns = old
    new = DataFolder(tmp_path / "new")
    new.prepare()

    folder.prepare()

    with closing(folder.open()) as db, closing(new.open()) as fresh:
        assert rows_of(db.conn, columns) == before
        assert not migrations.pending(db)
        found, wanted = (
            set(each.conn.execute("SELECT type, name, sql FROM sqlite_master").fetchall())
            for each in (db, fresh)
        )
        assert found == wanted
    assert FOLDER.first_fault(folder.root) is None


def test_the_answers_are_those_of_its_whole_log_and_work_goes_on(old, small_static):
    folder, before, _ = old
    app = create_app(Config(folder.root, BASE, small_static))
    device = "d00000000000000bb"
    with closing(folder.open()) as db:
        phone = Phone(app, device)
        phone.pair_by(make_link(db, BASE, now_ms()))
        phone.ask_session()
        feed = phone.synced([])["events"]
        assert [each["n"] for each in feed] == [row[0] for row in before["events"]]
        phone.record("cleaned", {"position": "rear-left-outer", "note": ""}, JOB)
        assert phone.synced()["heads"][device]["seq"] == 1
        log = events.after(db, 0, 99, 10**9)

    host = Host()
    host.call(canon.dumps({"op": "reset", "events": [{"event": each["event"]} for each in log]}))
    for path, question in (("/api/jobs", {"op": "jobs"}), (f"/api/jobs/{JOB}", {"op": "job", "job": JOB})):
        handed_out = json.loads(host.call(canon.dumps(question)))["value"]
        assert phone.get(path).get_json() == english(handed_out)


def test_the_photos_that_were_missing_are_asked_for(old):
    folder, before, _ = old
    folder.prepare()
    with closing(folder.open()) as db:
        wanted = db.conn.execute("SELECT sha256, n FROM photos_wanted ORDER BY n").fetchall()

    assert wanted == sorted(before["event_photos"], key=lambda row: row[1])
    assert wanted


def test_what_the_first_version_sent_is_taken_as_it_was(old, tmp_path, small_static):
    _, before, columns = old
    app = create_app(Config(tmp_path / "new", BASE, small_static))
    phone = Phone(app, SENT[0]["device"])
    with closing(DataFolder(tmp_path / "new").open()) as db:
        phone.pair_by(make_link(db, BASE, now_ms()))
        phone.ask_session()
        for request in [*SENT, SENT[0]]:  # a reply was lost: it sends once more
            answer = phone.post("/api/sync", request).get_json()
            assert set(answer) >= READ_BY_IT
            assert answer["refused"] == []
        stored = db.conn.execute("SELECT device, seq, hash, body FROM events ORDER BY n").fetchall()

    names = columns["events"].split(", ")
    at = [names.index(name) for name in ("device", "seq", "hash", "body")]
    assert stored == [tuple(row[index] for index in at) for row in before["events"]]
    assert answer["heads"][phone.device] == {"seq": len(stored), "hash": stored[-1][2]}
    feed = answer["events"]
    assert [each["hash"] for each in feed] == [row[2] for row in stored]
