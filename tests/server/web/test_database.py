"""A request's connection: it waits for the next request, unless it may not be as it should."""

import shutil
import sqlite3
from contextlib import closing

import pytest

from server.storage import DataFolder
from server.web.database import MOST_WAITING
from server.web.database import Connections
from tests.server.phone import BASE


@pytest.fixture
def connections(fresh):
    with closing(Connections(fresh)) as connections:
        yield connections


def is_open(db):
    try:
        return db.conn.execute("SELECT 1").fetchone() == (1,)
    except sqlite3.ProgrammingError:
        return False


def test_one_that_was_given_back_is_taken_again(connections):
    lent = connections.take()
    connections.give_back(lent)
    assert connections.take().db is lent.db
    connections.give_back(lent)


def test_two_at_a_time_are_two(connections):
    one, other = connections.take(), connections.take()
    assert one.db is not other.db
    connections.give_back(one)
    connections.give_back(other)


def test_one_that_a_last_request_gives_back_after_the_end_is_closed(connections):
    lent = connections.take()
    connections.close()
    connections.give_back(lent)
    assert not is_open(lent.db)


def test_one_with_an_open_transaction_is_closed_and_what_it_wrote_undone(connections):
    lent = connections.take()
    lent.db.conn.execute("BEGIN IMMEDIATE")
    lent.db.conn.execute("INSERT INTO settings VALUES ('half', 'done')")
    connections.give_back(lent)
    assert not is_open(lent.db)
    again = connections.take()
    assert again.db.conn.execute("SELECT value FROM settings WHERE name = 'half'").fetchone() is None
    connections.give_back(again)


def test_no_more_wait_than_have_room(connections):
    lent = [connections.take() for _ in range(MOST_WAITING + 1)]
    for each in lent:
        connections.give_back(each)
    assert [is_open(each.db) for each in lent] == [True] * MOST_WAITING + [False]


def test_a_file_that_was_put_in_place_of_the_database_is_opened(fresh, connections, tmp_path):
    lent = connections.take()
    connections.give_back(lent)
    other = DataFolder(tmp_path / "other")
    other.prepare()
    shutil.move(other.database, fresh.database)
    after = connections.take()
    assert not is_open(lent.db)
    wanted = "SELECT value FROM settings WHERE name = 'installation'"
    with closing(fresh.open()) as db:
        assert after.db.conn.execute(wanted).fetchone() == db.conn.execute(wanted).fetchone()
    connections.give_back(after)


def test_a_right_to_write_that_was_taken_away_is_asked_for_again(fresh, connections):
    lent = connections.take()
    connections.give_back(lent)
    fresh.database.chmod(0o400)
    after = connections.take()
    assert not is_open(lent.db)
    after.db.close()


def test_requests_share_a_connection_until_one_is_refused(app, monkeypatch):
    client, opened = app.test_client(), []
    really = DataFolder.open

    def noted(folder):
        opened.append(folder)
        return really(folder)

    monkeypatch.setattr(DataFolder, "open", noted)
    for _ in range(3):
        assert client.get("/api/session", base_url=BASE).status_code == 200
    assert len(opened) == 1
    assert client.get("/api/brought", base_url=BASE).status_code == 401
    assert client.get("/api/session", base_url=BASE).status_code == 200
    assert len(opened) == 2
