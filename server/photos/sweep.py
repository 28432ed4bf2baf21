"""Takes away photos that no entry names and that nobody will name any more.

A photo may arrive before the entry that names it, so each is kept for a long time first. One that
an entry names stays for good, also where the entry was taken back or kept apart.
"""

from pathlib import Path

from sqlite_utils import Database

from server.core.words.words import DAY_MS
from server.photos.store import path_of
from server.storage import writing

KEPT_DAYS = 90

_UNNAMED = "SELECT sha256 FROM photos WHERE stored_at < ? AND sha256 NOT IN (SELECT sha256 FROM event_photos)"


def sweep(db: Database, folder: Path, now: int) -> list[str]:
    """Takes away the photos that no entry has named in all that time; returns which."""
    with writing(db):
        old = [digest for (digest,) in db.conn.execute(_UNNAMED, [now - KEPT_DAYS * DAY_MS])]
        if not old:
            return []
        apart = _named_apart(db)
        swept = [digest for digest in old if digest not in apart]
        for digest in swept:
            path_of(folder, digest).unlink(missing_ok=True)
        db.conn.executemany("DELETE FROM photos WHERE sha256 = ?", [(digest,) for digest in swept])
    return swept


def sweep_files(db: Database, folder: Path, now: int) -> int:
    """Takes away what a crash left in the photo folder: parts, and whole photos on no record."""
    cut_off, unnamed = [], []
    with writing(db):
        for file in sorted(folder.glob("??/*")):
            days = (now - file.stat().st_mtime * 1000) / DAY_MS
            if file.suffix == ".part" and days > 1:
                cut_off.append(file)
            elif days > KEPT_DAYS and not _is_known(db, file.stem):
                unnamed.append(file)
        apart = _named_apart(db) if unnamed else set()
        gone = [*cut_off, *(file for file in unnamed if file.stem not in apart)]
        for file in gone:
            file.unlink(missing_ok=True)
    return len(gone)


def _is_known(db: Database, digest: str) -> bool:
    row = db.conn.execute(
        "SELECT 1 FROM photos WHERE sha256 = ? UNION SELECT 1 FROM event_photos WHERE sha256 = ?",
        [digest, digest],
    ).fetchone()
    return row is not None


def _named_apart(db: Database) -> set[str]:
    """Returns the photos named by entries that are kept apart; what lacks proof may be accepted one day."""
    # Only few of what can be a hundred thousand entries are read as JSON: the write lock is held meanwhile.
    rows = db.conn.execute(
        "SELECT json_extract(body, '$.data.sha256') FROM "
        "(SELECT body FROM quarantine UNION ALL SELECT body FROM unproven) "
        'WHERE instr(body, \'"kind":"photo_taken"\')'
    )
    return {str(digest) for (digest,) in rows}
