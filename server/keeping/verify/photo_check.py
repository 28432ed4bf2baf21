"""Holds photos against the hashes by which the log names them."""

import sqlite3
from collections.abc import Callable

from server.core.messages import message
from server.log.fault import Fault

# In the order in which the log first names them; those that no entry names come last.
_STORED = """SELECT sha256, device, seq FROM photos
    LEFT JOIN (SELECT sha256, min(n) AS n FROM event_photos GROUP BY sha256) USING (sha256)
    LEFT JOIN events USING (n) ORDER BY n IS NULL, n, sha256"""


def first_fault(connection: sqlite3.Connection, hash_of: Callable[[str], str | None]) -> Fault | None:
    """Returns the first photo that is not what it was; `hash_of` gives the hash of one's bytes, or None.

    A photo that an entry names and that never arrived is no fault: the phone still has it.
    """
    for digest, device, seq in connection.execute(_STORED):
        now = hash_of(digest)
        if now != digest:
            what = "keeping-photo-missing" if now is None else "keeping-photo-changed"
            return Fault(device or "", seq or 0, message(what, photo=digest))
    return None
