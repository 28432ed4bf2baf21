"""Who made a record: the keys that were met here before.

A key proves nothing by itself. Whoever knows its owner compares the fingerprint once; from then on
the same key is known again.
"""

from sqlite_utils import Database

from server.phones.signing import Signer
from server.phones.signing import fingerprint
from server.storage import writing


def meet(db: Database, key: str, own: Signer, now: int) -> dict:
    """Returns what is known of the maker of a record, and keeps that it was met.

    {"fingerprint", "own", "known_since"}: `known_since` is None for one not met before.
    """
    known = {"fingerprint": fingerprint(key), "own": key == own.key, "known_since": None}
    if known["own"]:
        return known
    with writing(db):
        row = db.conn.execute("SELECT first_met_at FROM record_makers WHERE key = ?", [key]).fetchone()
        if row:
            known["known_since"] = row[0]
        else:
            db.conn.execute("INSERT INTO record_makers (key, first_met_at) VALUES (?, ?)", [key, now])
    return known
