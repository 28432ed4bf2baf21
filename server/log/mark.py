"""How far the log had come, in a file beside the database: a database that is older than its mark came back.

The mark is written after the commits that it tells of, so a crash leaves it behind the database and never
ahead. It costs the commits nothing: while the folder is served, a thread looks once a second and overwrites
one line.
"""

import json
import logging
import os
import sqlite3
import threading
from contextlib import AbstractContextManager
from contextlib import closing
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from sqlite_utils import Database

from server.beside import beside
from server.log import epoch
from server.storage import DataFolder
from server.storage import writing
from server.storage.private import make_private_file

log = logging.getLogger(__name__)

SECONDS = 1.0
_WIDTH = 120  # always as long, so that it is overwritten and never cut


class Place(NamedTuple):
    """An entry of the log: its number of receipt and its hash."""

    n: int
    hash: str


def notice(db: Database, folder: DataFolder) -> int:
    """Begins another epoch where the database is older than its mark, or another one than that.

    Returns the number of the entry that the mark names and that is not there; 0 where all is well.
    """
    marked = read(folder.mark)
    if marked is None:
        return 0
    with writing(db):
        row = db.conn.execute("SELECT hash FROM events WHERE n = ?", [marked.n]).fetchone()
        if row and row[0] == marked.hash:
            return 0
        epoch.begin(db.conn)
    write(db, folder)
    return marked.n


def kept(folder: DataFolder) -> AbstractContextManager[None]:
    """Keeps the mark up to date until the end."""
    return beside("marks the log", lambda ended: _follow(folder, ended))


def read(file: Path) -> Place | None:
    """Returns the place that a mark names; None where there is none to go by."""
    try:
        value = json.loads(file.read_text("utf-8"))
        return Place(int(value["n"]), str(value["hash"]))
    except (OSError, ValueError, TypeError, KeyError):
        return None


def write(db: Database, folder: DataFolder, last: Place | None = None) -> Place | None:
    """Marks where the log ends, unless that is `last`; returns the place, None for an empty log."""
    row = db.conn.execute("SELECT n, hash FROM events ORDER BY n DESC LIMIT 1").fetchone()
    if row is None:
        folder.mark.unlink(missing_ok=True)
        return None
    place = Place(*row)
    if place != last:
        make_private_file(folder.mark)
        with folder.mark.open("r+b") as file:
            file.write(json.dumps(place._asdict()).ljust(_WIDTH).encode() + b"\n")
    return place


def _follow(folder: DataFolder, ended: threading.Event) -> None:
    last = None
    with closing(folder.open()) as db:
        while True:
            is_last = ended.wait(SECONDS)
            try:
                last = write(db, folder, last)
            except (OSError, sqlite3.Error):
                # A disk that is full or gone is told elsewhere. An old mark only notices less.
                log.debug("the log could not be marked", exc_info=True)
            if is_last:
                break
    with suppress(OSError), folder.mark.open("rb") as file:
        os.fsync(file.fileno())
