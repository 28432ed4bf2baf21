"""Opens the SQLite file the way the event log needs it: durable, enforced, one writer at a time."""

import sqlite3
import threading
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from weakref import WeakValueDictionary

from sqlite_utils import Database

BUSY_SECONDS = 15
STATEMENTS = 512  # more than the server has, so that none is prepared twice on one connection

_turns: WeakValueDictionary[str, threading.Lock] = WeakValueDictionary()


class _Connection(sqlite3.Connection):
    """A connection that waits in line with the others of this process to write to its file.

    SQLite has nobody wait in line: who finds the file taken sleeps, up to a tenth of a second, and looks
    again, while the file is free and others go before.
    """

    turn: threading.Lock
    ask: Callable[[Database], None] | None = None


def open_database(path: Path) -> Database:
    """Returns a connection with WAL, foreign keys and a full sync at every commit.

    An acknowledged event must survive a power cut, and WAL's default (NORMAL) may lose the last
    commits, see sqlite.org/pragma.html#pragma_synchronous.
    """
    # A connection is used by one thread at a time, by one after the other (`server.web.database`).
    connection = sqlite3.connect(
        path,
        timeout=BUSY_SECONDS,
        cached_statements=STATEMENTS,
        check_same_thread=False,
        factory=_Connection,
    )
    connection.turn = _turns.setdefault(str(path.absolute()), threading.Lock())
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    return Database(connection, execute_plugins=False)


def ask_when_writing(db: Database, ask: Callable[[Database], None] | None) -> None:
    """Has `ask` called once the lock is held, each time this connection writes; what it raises ends that.

    What a request was let in by may have ended while it waited in line. None asks nothing any more.
    """
    assert isinstance(db.conn, _Connection)
    db.conn.ask = ask


@contextmanager
def writing(db: Database) -> Iterator[None]:
    """Holds the write lock from the first read on, and commits everything or nothing.

    A plain BEGIN takes the lock only at the first write, when another request may already have
    moved the head that was read.
    """
    with _in_turn(db.conn):
        db.conn.execute("BEGIN IMMEDIATE")
        try:
            if isinstance(db.conn, _Connection) and db.conn.ask:
                db.conn.ask(db)
            yield
        except BaseException:
            db.conn.rollback()
            raise
        db.conn.commit()


@contextmanager
def _in_turn(connection: sqlite3.Connection) -> Iterator[None]:
    """Waits until nobody else in this process writes; after BUSY_SECONDS it is left to SQLite to refuse."""
    turn = connection.turn if isinstance(connection, _Connection) else threading.Lock()
    has_turn = turn.acquire(timeout=BUSY_SECONDS)
    try:
        yield
    finally:
        if has_turn:
            turn.release()


@contextmanager
def writing_cache(db: Database) -> Iterator[None]:
    """Writes what can be made again: without waiting for the disk, for its loss would cost nothing."""
    db.conn.execute("PRAGMA synchronous = NORMAL")
    try:
        with writing(db):
            yield
    finally:
        db.conn.execute("PRAGMA synchronous = FULL")


@contextmanager
def at_one_moment(db: Database) -> Iterator[None]:
    """Lets everything read inside come from one moment of the database."""
    db.conn.execute("BEGIN")
    try:
        yield
    finally:
        db.conn.rollback()
