"""The data folder: made once, migrated step by step, durable, and whole after a crash."""

import sqlite3
from contextlib import closing

import pytest

from server.commands.cli import main
from server.folded import CACHES
from server.refusals import CommandRefused
from server.storage import DataFolder
from server.storage import connection
from server.storage import migrations
from server.storage import open_database
from server.storage import writing
from server.storage import writing_cache
from server.storage.folder import keep_setting
from server.storage.folder import setting
from tests.server.phone import JOB
from tests.server.phone import job_opened


def test_preparing_again_changes_nothing(fresh):
    with closing(fresh.open()) as db:
        before = (db.schema, setting(db, "installation"))

    fresh.prepare()

    with closing(fresh.open()) as db:
        assert (db.schema, setting(db, "installation")) == before


def test_every_migration_is_on_record_in_order(fresh):
    with closing(fresh.open()) as db:
        applied = [migration.name for migration in migrations.applied(db)]

    assert applied == [
        "make_settings",
        "make_sessions",
        "make_events",
        "make_photos",
        "make_caches",
        "make_labels",
        "make_folded_state",
        "make_photos_wanted",
        "make_record_makers",
        "give_phones_roles",
        "make_search",
        "make_label_prints",
        "note_what_phones_promise",
        "make_pairing_log",
        "make_righted",
        "fold_again_in_part",
        "note_lost_photos",
        "make_certificates",
        "make_lessons",
        "confirm_record_makers",
        "keep_records",
        "list_search_terms",
        "tell_lessons_apart",
        "note_phones",
        "make_lessons_given",
        "bound_what_is_kept_apart",
        "note_the_size_of_what_is_kept_apart",
        "number_labels_out_of_use",
        "end_earlier_tasks",
    ]


@pytest.mark.parametrize("name", ["make_sessions", "make_events", "make_labels"])
def test_a_folder_left_at_an_older_step_is_brought_up_to_date(tmp_path, fresh, name):
    older = DataFolder(tmp_path / "older")
    older.root.mkdir()
    with closing(older.open()) as db:
        migrations.apply(db, stop_before=name)
        assert name in [migration.name for migration in migrations.pending(db)]

    older.prepare()

    with closing(older.open()) as db, closing(fresh.open()) as new:
        assert db.schema == new.schema


def test_a_folder_that_a_newer_version_has_changed_is_left_as_it_is(fresh, capsys):
    with closing(fresh.open()) as db, writing(db):
        db.conn.execute(
            "INSERT INTO _sqlite_migrations (migration_set, name) VALUES ('swaptrail', 'of_a_later_version')"
        )
    before = fresh.database.read_bytes()

    for command in (["labels", "--list"], ["rebuild"], ["rejoin"], ["serve"]):
        assert main([*command, "--data", str(fresh.root)]) == 2
        assert "A newer version" in capsys.readouterr().err

    assert fresh.database.read_bytes() == before


def test_a_migration_that_fails_leaves_no_trace(tmp_path, monkeypatch):
    folder = DataFolder(tmp_path / "broken")
    folder.root.mkdir()

    def fail_half_way(db):
        db.conn.execute("CREATE TABLE half (x)")
        raise RuntimeError("power cut")

    with closing(folder.open()) as db:
        migrations.apply(db, stop_before="make_labels")
        last = migrations.pending(db)[0]
        monkeypatch.setattr(last, "fn", fail_half_way)
        with pytest.raises(RuntimeError):
            migrations.apply(db)
        assert "half" not in db.table_names()
        assert migrations.pending(db)[0].name == "make_labels"


def test_a_connection_is_durable_and_enforces_references(fresh):
    with closing(fresh.open()) as db:
        pragmas = {
            name: db.conn.execute(f"PRAGMA {name}").fetchone()[0]
            for name in ("journal_mode", "synchronous", "foreign_keys")
        }

    assert pragmas == {"journal_mode": "wal", "synchronous": 2, "foreign_keys": 1}


def test_writing_a_cache_leaves_the_connection_durable(fresh):
    with closing(fresh.open()) as db:
        with pytest.raises(sqlite3.Error), writing_cache(db):
            db.conn.execute("INSERT INTO nowhere VALUES (1)")
        with writing_cache(db):
            db.conn.execute("DELETE FROM job_cache")

        assert db.conn.execute("PRAGMA synchronous").fetchone() == (2,)


def test_writing_takes_the_lock_before_the_first_read(tmp_path, monkeypatch):
    monkeypatch.setattr(connection, "BUSY_SECONDS", 0.1)
    path = tmp_path / "x.db"
    with closing(open_database(path)) as one, closing(open_database(path)) as two:
        one.conn.execute("CREATE TABLE t (x)")
        with writing(one), pytest.raises(Exception, match="locked"), writing(two):
            pytest.fail("two writers at once")


def test_writing_takes_everything_back_on_an_error(tmp_path):
    with closing(open_database(tmp_path / "x.db")) as db:
        db.conn.execute("CREATE TABLE t (x)")
        with pytest.raises(sqlite3.Error), writing(db):
            db.conn.executemany("INSERT INTO t VALUES (?)", [[1], [object()]])

        assert db.conn.execute("SELECT count(*) FROM t").fetchone() == (0,)


def test_a_setting_is_made_once(fresh):
    with closing(fresh.open()) as db:
        keep_setting(db, "base_address", "http://localhost:1")

        with pytest.raises(Exception, match="UNIQUE"):
            keep_setting(db, "base_address", "http://localhost:2")
        assert setting(db, "base_address") == "http://localhost:1"
        assert setting(db, "none") is None


def test_a_cache_can_be_dropped_and_is_made_again(phone, db):
    phone.record(kind="job_opened", data=job_opened())
    phone.synced()
    before = phone.get(f"/api/jobs/{JOB}").data
    assert db.table("job_cache").count == 1

    for table in CACHES:
        db.conn.execute(f"DELETE FROM {table}")
    db.conn.commit()

    assert phone.get(f"/api/jobs/{JOB}").data == before
    assert db.table("job_cache").count == 1


@pytest.mark.parametrize("left", [b"", b"short"])
def test_a_cookie_key_that_was_cut_short_signs_nothing(tmp_path, left):
    folder = DataFolder(tmp_path / "data")
    folder.prepare()
    folder.secret_key()
    (folder.keys / "cookie.key").write_bytes(left)

    with pytest.raises(CommandRefused, match=r"cookie\.key is damaged"):
        folder.secret_key()
