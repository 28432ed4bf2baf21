"""Records from elsewhere that are evidence here: kept whole with their seals, by the digest of the file."""

import hashlib

from sqlite_utils import Database

from server.storage import writing


def keep(db: Database, data: bytes, key: str, now: int) -> str:
    """Keeps a record that was checked, sealed with `key`; returns its digest."""
    digest = hashlib.sha256(data).hexdigest()
    with writing(db):
        db.conn.execute("INSERT OR IGNORE INTO records_kept VALUES (?, ?, ?, ?)", [digest, key, now, data])
    return digest


def kept(db: Database, digest: str) -> bytes | None:
    """Returns a record that is kept, or None."""
    row = db.conn.execute("SELECT body FROM records_kept WHERE sha256 = ?", [digest]).fetchone()
    return row[0] if row else None
