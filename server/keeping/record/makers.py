"""Who made a record: the keys that were met here before, and whose a person has confirmed them to be.

A key proves nothing by itself, however often it is met. Whoever knows its owner compares the fingerprint once
and says how; from then on the same key is trusted.
"""

from sqlite_utils import Database

from server.phones.signing import Signer
from server.phones.signing import fingerprint
from server.storage import writing

# How a fingerprint can be confirmed: its owner was called, stood here, or wrote it in something signed.
HOWS = ("called", "met", "written")
_CONFIRMED = "name, how, confirmed_at, confirmed_by"


def meet(db: Database, key: str, own: Signer, now: int) -> dict:
    """Returns what is known of the maker of a record, and keeps that it was met.

    {"fingerprint", "own", "known_since", "confirmed"}: `known_since` is None for one not met before,
    `confirmed` {"name", "how", "at", "by"} or None.
    """
    known = {"fingerprint": fingerprint(key), "own": key == own.key, "known_since": None, "confirmed": None}
    if known["own"]:
        return known
    with writing(db):
        row = db.conn.execute("SELECT first_met_at FROM record_makers WHERE key = ?", [key]).fetchone()
        if row:
            known["known_since"] = row[0]
        else:
            db.conn.execute("INSERT INTO record_makers (key, first_met_at) VALUES (?, ?)", [key, now])
    known["confirmed"] = confirmed(db, key)
    return known


def confirmed(db: Database, key: str) -> dict | None:
    """Returns whose a key is and how that was confirmed, {"name", "how", "at", "by"}, or None."""
    row = db.conn.execute(f"SELECT {_CONFIRMED} FROM record_makers WHERE key = ?", [key]).fetchone()
    if row is None or not row[0]:
        return None
    return dict(zip(("name", "how", "at", "by"), row, strict=True))


def names(db: Database) -> dict[str, str]:
    """Returns fingerprint -> name of all whose seal somebody has confirmed."""
    rows = db.conn.execute("SELECT key, name FROM record_makers WHERE name <> ''").fetchall()
    return {fingerprint(key): name for key, name in rows}


def confirm(db: Database, shown: str, *, name: str, how: str, by: str, now: int) -> dict | None:
    """Keeps whose the key with this fingerprint is; returns that, or None where none was met."""
    with writing(db):
        for (key,) in db.conn.execute("SELECT key FROM record_makers").fetchall():
            if fingerprint(key) == shown:
                db.conn.execute(
                    f"UPDATE record_makers SET ({_CONFIRMED}) = (?, ?, ?, ?) WHERE key = ?",
                    [name, how, now, by, key],
                )
                return confirmed(db, key)
    return None
