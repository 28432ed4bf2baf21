"""Holds photos against the hashes by which the log names them."""

import sqlite3
from collections.abc import Callable
from collections.abc import Iterator

from server.core.messages import message
from server.log.fault import Fault
from server.photos import lost

# In the order in which the log first names them; those that no entry names come last.
_STORED = """SELECT sha256, device, seq FROM photos
    LEFT JOIN (SELECT sha256, min(n) AS n FROM event_photos GROUP BY sha256) USING (sha256)
    LEFT JOIN events USING (n) ORDER BY n IS NULL, n, sha256"""


_WHAT = {lost.MISSING: "keeping-photo-missing", lost.CHANGED: "keeping-photo-changed"}
_ALL = 1 << 40


def faults(connection: sqlite3.Connection, hash_of: Callable[[str], str | None]) -> Iterator[Fault]:
    """Yields the photos that are not what they were; `hash_of` gives the hash of one's bytes, or None.

    A photo that an entry names and that never arrived is no fault: the phone still has it.
    """
    for digest, device, seq in connection.execute(_STORED):
        now = hash_of(digest)
        if now != digest:
            yield _fault(lost.MISSING if now is None else lost.CHANGED, digest, device, seq)


def known(connection: sqlite3.Connection) -> list[Fault]:
    """Returns the photos that are known to be lost, and that nobody has sent again yet."""
    # A folder that no newer version has served has no such table.
    if not connection.execute("SELECT 1 FROM sqlite_master WHERE name = 'photos_lost'").fetchone():
        return []
    photos = lost.listed(connection, _ALL)
    return [_fault(photo.what, photo.sha256, photo.device, photo.seq) for photo in photos]


def _fault(what: str, digest: str, device: str | None, seq: int | None) -> Fault:
    return Fault(device or "", seq or 0, message(_WHAT[what], photo=digest))
