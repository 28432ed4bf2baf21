"""The epoch of the log: another one begins whenever the log may have gone back to an earlier state.

Cursors, numbers of receipt and confirmations hold for one epoch. A phone that meets another one sends again
all that it has, and fetches everything; repeats are harmless. An epoch is a random text, the setting
`installation` of the data folder: apps of every version start over where that changes, and labels come from
another share of the codes, for nothing on record tells of those that were printed meanwhile.

`serve` notices by the folder's mark (`mark`), a sync by what the phone has seen; `restore` and `rejoin` are
told.
"""

import secrets
import sqlite3
from typing import NamedTuple

from sqlite_utils import Database

from server.core.codes.labels import share_of
from server.core.errors import shorten
from server.phones.installation import installation_id
from server.web.bodies import text_field
from server.web.errors import BadRequest


class Seen(NamedTuple):
    """Where a phone stands: the epoch that its cursor belongs to, and the hash of the entry there."""

    epoch: str
    hash: str


def checked_seen(body: dict) -> Seen | None:
    """Returns what a request's body says of the log that the phone knows; older apps say nothing."""
    seen = body.get("seen")
    if seen is None:
        return None
    if not isinstance(seen, dict):
        raise BadRequest("seen", shorten(seen), '{"epoch", "hash"}')
    return Seen(text_field(seen, "epoch", 80), text_field(seen, "hash", 80))


def has_gone_back(db: Database, cursor: int, seen: Seen | None) -> bool:
    """Tells whether a phone has seen a log of this very epoch that is not this one.

    Its cursor stands at an entry that is not here, or at another one than here.
    """
    if seen is None or not cursor or seen.epoch != installation_id(db):
        return False
    row = db.conn.execute("SELECT hash FROM events WHERE n = ?", [cursor]).fetchone()
    return row is None or bool(seen.hash and row[0] != seen.hash)


def begin(connection: sqlite3.Connection) -> None:
    """Begins another epoch, in the transaction that is open."""
    before = connection.execute("SELECT value FROM settings WHERE name = 'installation'").fetchone()[0]
    while share_of(epoch := secrets.token_hex(8)) == share_of(before):
        pass
    connection.execute("UPDATE settings SET value = ? WHERE name = 'installation'", [epoch])
