"""Looks at every photo again and again while the folder is served, a few a second, so that none rots unseen.

When each was looked at is on record: after a restart the round goes on where it was.
"""

import logging
import sqlite3
import threading
from contextlib import AbstractContextManager
from contextlib import closing
from pathlib import Path

from sqlite_utils import Database

from server.beside import beside
from server.clock import now_ms
from server.core.words.words import DAY_MS
from server.photos import lost
from server.storage import DataFolder
from server.storage import writing_cache

log = logging.getLogger(__name__)

ROUND_DAYS = 7
PAUSE_SECONDS = 0.5  # between two photos
IDLE_SECONDS = 60.0  # where none is due
_AT_ONCE = 20


def going(folder: DataFolder) -> AbstractContextManager[None]:
    """Goes round the photos of a folder until the end."""
    return beside("looks at photos", lambda ended: _go(folder, ended))


def due(db: Database, now: int, most: int) -> list[str]:
    """Returns photos that nobody has looked at for a round, those that waited longest first."""
    rows = db.conn.execute(
        # After now: the clock was wrong.
        "SELECT sha256 FROM photos WHERE checked_at NOT BETWEEN ? AND ? ORDER BY checked_at, sha256 LIMIT ?",
        [now - ROUND_DAYS * DAY_MS, now, most],
    )
    return [digest for (digest,) in rows]


def note_looked_at(db: Database, digests: list[str], now: int) -> None:
    """Notes that photos were just looked at."""
    with writing_cache(db):
        db.conn.executemany(
            "UPDATE photos SET checked_at = ? WHERE sha256 = ?", [(now, each) for each in digests]
        )


def all_anew(connection: sqlite3.Connection) -> None:
    """Has every photo looked at soon, in the transaction that is open."""
    connection.execute("UPDATE photos SET checked_at = 0")


def _go(folder: DataFolder, ended: threading.Event) -> None:
    with closing(folder.open()) as db:
        while not ended.is_set():
            try:
                lost.adopt(db, folder.photos, now_ms())
                while _look_at_some(db, folder.photos, ended):
                    pass
            except (OSError, sqlite3.Error):
                log.warning("photos could not be looked at", exc_info=True)
            ended.wait(IDLE_SECONDS)


def _look_at_some(db: Database, photos: Path, ended: threading.Event) -> bool:
    """Looks at the photos that are due; returns whether there was any."""
    looked_at: list[str] = []
    for digest in due(db, now_ms(), _AT_ONCE):
        if ended.wait(PAUSE_SECONDS):
            break
        try:
            if not lost.look(db, photos, digest, now_ms()):
                log.warning("photo %s is missing or damaged; phones are asked for it", digest)
        except OSError:  # one that may not be read holds up none of the others
            log.warning("photo %s could not be looked at", digest, exc_info=True)
        looked_at.append(digest)
    if looked_at:
        note_looked_at(db, looked_at, now_ms())
    return bool(looked_at)
