"""Photos on record whose bytes are gone or are not what they were: set aside, listed, and asked for again.

A lost photo is on record no more, so the phone that took it is asked for it as for one that never came; and
because it may be on another phone, all are asked. It stays listed until one has sent it, or its bytes turn up
whole.
"""

import errno
import os
import sqlite3
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from sqlite_utils import Database

from server.photos.store import keep
from server.photos.store import path_of
from server.photos.store import whole
from server.storage import writing
from server.storage.private import make_private_folder
from server.web.errors import Refusal

MISSING, CHANGED = "missing", "changed"
ASIDE = "aside"


class Lost(NamedTuple):
    """A lost photo, what was found in its place, and the first entry that names it, its job and position."""

    sha256: str
    what: str
    device: str
    seq: int
    job: str
    position: str


def look(db: Database, folder: Path, digest: str, now: int) -> bool:
    """Looks at a photo; one that is on record and not whole is noted as lost. Returns whether it is whole."""
    if _is_whole(folder, digest):
        return True
    if not _is_on_record(db, digest):
        return False
    with writing(db):
        # Again, now that nobody else writes: a phone may just have sent it.
        if _is_whole(folder, digest):
            return True
        if _is_on_record(db, digest):
            note(db.conn, digest, CHANGED if _set_aside(folder, digest, now) else MISSING, now)
    return False


def note(connection: sqlite3.Connection, digest: str, what: str, now: int) -> None:
    """Notes a photo as lost, in the transaction that is open."""
    connection.execute("DELETE FROM photos WHERE sha256 = ?", [digest])
    connection.execute(
        "INSERT OR REPLACE INTO photos_lost (sha256, what, found_at) SELECT ?1, ?2, ?3 "
        "WHERE EXISTS (SELECT 1 FROM event_photos WHERE sha256 = ?1)",
        [digest, what, now],
    )
    connection.execute(
        "INSERT OR IGNORE INTO photos_wanted (device, n, sha256) "
        "SELECT device, n, sha256 FROM event_photos JOIN events USING (n) WHERE sha256 = ?",
        [digest],
    )


def adopt(db: Database, folder: Path, now: int) -> None:
    """Puts on record what is wanted and lies in its place whole: the database came back, or its folder."""
    rows = db.conn.execute("SELECT sha256 FROM photos_wanted UNION SELECT sha256 FROM photos_lost").fetchall()
    for (digest,) in rows:
        data = whole(folder, digest)
        if data is not None:
            with suppress(Refusal):
                keep(db, folder, digest, data, now)


def listed(connection: sqlite3.Connection, most: int) -> list[Lost]:
    """Returns the lost photos in the order in which entries name them first."""
    rows = connection.execute(
        "SELECT photos_lost.sha256, what, device, seq, coalesce(job, ''), "
        "coalesce(json_extract(body, '$.data.position'), '') FROM photos_lost JOIN events ON n = "
        "(SELECT min(n) FROM event_photos WHERE event_photos.sha256 = photos_lost.sha256) ORDER BY n LIMIT ?",
        [most],
    )
    return [Lost(*row) for row in rows]


def count(db: Database) -> int:
    """Returns how many photos are lost."""
    lost: int = db.conn.execute("SELECT count(*) FROM photos_lost").fetchone()[0]
    return lost


def _is_on_record(db: Database, digest: str) -> bool:
    return db.conn.execute("SELECT 1 FROM photos WHERE sha256 = ?", [digest]).fetchone() is not None


def _is_whole(folder: Path, digest: str) -> bool:
    try:
        return whole(folder, digest) is not None
    except OSError as error:
        if error.errno == errno.EIO:  # the disk cannot read it any more
            return False
        raise


def _set_aside(folder: Path, digest: str, now: int) -> bool:
    """Moves whatever lies in a photo's place out of the way; returns whether there was anything."""
    make_private_folder(folder / ASIDE)
    try:
        os.replace(path_of(folder, digest), folder / ASIDE / f"{digest}-{now}.jpg")
    except (FileNotFoundError, NotADirectoryError):
        return False
    return True
