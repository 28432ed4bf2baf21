"""The epoch of the log: another one begins whenever the log may have gone back to an earlier state.

Cursors, numbers of receipt and confirmations hold for one epoch. A phone that meets another one sends again
all that it has, and fetches everything; repeats are harmless. An epoch is a random text, the setting
`installation` of the data folder: apps of every version start over where that changes, and labels come from
another share of the codes, for nothing on record tells of those that were printed meanwhile.

`serve` notices by the folder's mark (`mark`), a sync by what the phone has seen; `restore` and `rejoin` are
told. What a phone has seen begins another epoch only where this installation signed it: with each answer goes
its signature over the place that the phone's cursor stands at,

    {"app":"swaptrail-place","v":1,"epoch":…,"n":…,"hash":…,"received_at":…}        canonical

so a log of this epoch that is not like that has gone back. Where a phone only says so, as apps from before
this signature do, that phone alone starts over.
"""

import secrets
import sqlite3
from typing import NamedTuple

from sqlite_utils import Database

from server.core.codes.labels import share_of
from server.core.errors import shorten
from server.core.log import canon
from server.phones.installation import installation_id
from server.phones.signing import Signer
from server.phones.signing import is_signed
from server.web.bodies import text_field
from server.web.bodies import whole_field
from server.web.errors import BadRequest


class Seen(NamedTuple):
    """Where a phone stands: the epoch that its cursor belongs to, the entry there, and when that came.

    `signature` is what this installation once signed of it, "" where it did not; older apps know no
    `received_at`.
    """

    epoch: str
    hash: str
    received_at: int | None = None
    signature: str = ""


def checked_seen(body: dict) -> Seen | None:
    """Returns what a request's body says of the log that the phone knows; older apps say nothing."""
    seen = body.get("seen")
    if seen is None:
        return None
    if not isinstance(seen, dict):
        raise BadRequest("seen", shorten(seen), '{"epoch", "hash"}')
    received_at = None if seen.get("received_at") is None else whole_field(seen, "received_at")
    signature = "" if seen.get("signature") is None else text_field(seen, "signature", 128)
    return Seen(text_field(seen, "epoch", 80), text_field(seen, "hash", 80), received_at, signature)


def knows_another_log(db: Database, cursor: int, seen: Seen | None) -> bool:
    """Tells whether a phone says that it has seen a log of this very epoch that is not this one.

    Its cursor stands at an entry that is not here, or at another one than here, or at one that came at
    another time: two logs that went on apart may have the same entry in the same place.
    """
    if seen is None or not cursor or seen.epoch != installation_id(db):
        return False
    row = db.conn.execute("SELECT hash, received_at FROM events WHERE n = ?", [cursor]).fetchone()
    if row is None or (seen.hash and row[0] != seen.hash):
        return True
    return seen.received_at is not None and row[1] != seen.received_at


def is_proven(cursor: int, seen: Seen | None, key: str) -> bool:
    """Tells whether this installation, whose public key it is, signed what a phone says that it has seen."""
    if seen is None or seen.received_at is None:
        return False
    return is_signed(_text(seen.epoch, cursor, seen.hash, seen.received_at), seen.signature, key)


def signed_place(db: Database, cursor: int, signer: Signer) -> dict[str, str]:
    """Returns what an answer brings to prove later where the phone stood: nothing before the first entry."""
    row = db.conn.execute("SELECT hash, received_at FROM events WHERE n = ?", [cursor]).fetchone()
    return {"place_signature": signer.sign(_text(installation_id(db), cursor, *row))} if row else {}


def _text(epoch: str, n: int, digest: str, received_at: int) -> str:
    place = {"epoch": epoch, "n": n, "hash": digest, "received_at": received_at}
    return canon.dumps({"app": "swaptrail-place", "v": 1, **place})


def begin(connection: sqlite3.Connection) -> None:
    """Begins another epoch, in the transaction that is open."""
    before = connection.execute("SELECT value FROM settings WHERE name = 'installation'").fetchone()[0]
    while share_of(epoch := secrets.token_hex(8)) == share_of(before):
        pass
    connection.execute("UPDATE settings SET value = ? WHERE name = 'installation'", [epoch])
