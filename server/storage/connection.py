"""Opens the SQLite file the way the event log needs it: durable, enforced, one writer at a time."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlite_utils import Database

BUSY_SECONDS = 15


def open_database(path: Path) -> Database:
    """Returns a connection with WAL, foreign keys and a full sync at every commit.

    An acknowledged event must survive a power cut, and WAL's default (NORMAL) may lose the last
    commits, see sqlite.org/pragma.html#pragma_synchronous.
    """
    connection = sqlite3.connect(path, timeout=BUSY_SECONDS)
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    return Database(connection, execute_plugins=False)


@contextmanager
def writing(db: Database) -> Iterator[None]:
    """Holds the write lock from the first read on, and commits everything or nothing.

    A plain BEGIN takes the lock only at the first write, when another request may already have
    moved the head that was read.
    """
    db.conn.execute("BEGIN IMMEDIATE")
    try:
        yield
    except BaseException:
        db.conn.rollback()
        raise
    db.conn.commit()


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
