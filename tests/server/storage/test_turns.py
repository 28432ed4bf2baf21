"""Whoever writes waits in line inside the process: SQLite itself has them sleep and look again."""

import sqlite3
import threading
from contextlib import closing

import pytest

from server.storage import DataFolder
from server.storage import connection
from server.storage import writing


def test_the_next_one_asks_for_the_file_only_once_it_is_free(fresh):
    with closing(fresh.open()) as one, closing(fresh.open()) as other:
        asked, came = [], threading.Event()
        other.conn.set_trace_callback(asked.append)

        def write():
            came.set()
            with writing(other):
                asked.append("writes")

        waiting = threading.Thread(target=write)
        with writing(one):
            waiting.start()
            assert came.wait(60)
            waiting.join(0.2)
            assert waiting.is_alive()
            assert asked == []
        waiting.join(60)
        assert asked == ["BEGIN IMMEDIATE", "writes", "COMMIT"]


def test_a_write_that_fails_hands_the_turn_on(fresh):
    with closing(fresh.open()) as one, closing(fresh.open()) as other:
        with pytest.raises(RuntimeError), writing(one):
            raise RuntimeError
        with writing(other):
            pass
        assert not other.conn.turn.locked()


def test_two_folders_do_not_wait_for_each_other(fresh, tmp_path):
    elsewhere = DataFolder(tmp_path / "elsewhere")
    elsewhere.prepare()
    with closing(fresh.open()) as one, closing(elsewhere.open()) as other, writing(one), writing(other):
        assert one.conn.turn is not other.conn.turn


def test_who_waited_too_long_is_told_that_the_file_is_busy(fresh, monkeypatch):
    monkeypatch.setattr(connection, "BUSY_SECONDS", 0.05)
    with closing(fresh.open()) as one, closing(fresh.open()) as other:
        with writing(one), pytest.raises(sqlite3.OperationalError, match="locked"), writing(other):
            pass
        with writing(other):
            pass
