"""What was brought without proof of whose it is: kept apart, until a person with the right role accepts it.

It counts for nothing, and never stands in the way of what the phone itself sends, or of what is brought with
proof. For entries that nothing can prove, each phone that brings them has a bounded room; so has what is kept
apart because its chain left the kept one (`quarantine`). A full room takes no more, and the phone keeps it.
"""

import json

from sqlite_utils import Database

from server.log.intake import Handling
from server.log.proof import Link
from server.log.proof import SignedHead
from server.log.proof import covered
from server.words.spoken import text

# Per phone that brings them. Accepting what waits makes room again; setting it aside does not, or a phone
# could make its own.
MOST_ENTRIES = 20_000
MOST_BYTES = 32 * 1024 * 1024

_TAKEN = """SELECT count(*), coalesce(sum(size), 0) FROM (
    SELECT length(CAST(body AS BLOB)) AS size FROM unproven
    WHERE brought_by = ?1 AND proven = 0 AND laid_by = 0
    UNION ALL SELECT length(CAST(body AS BLOB)) FROM quarantine WHERE brought_by = ?1)"""


class Apart:
    """Keeps entries apart for one batch; `session` is whose phone brought it, None for the command line."""

    def __init__(self, db: Database, session: int | None, now: int):
        self._db = db
        self._session = session
        self._now = now
        self._taken: tuple[int, int] | None = None

    def has_kept(self, handling: Handling, event: dict, body: str, digest: str, signed_upto: int) -> bool:
        """Keeps an entry as its handling says, if it is to be kept apart; False where it has no room.

        Up to the entry `signed_upto` its phone has signed its chain, so there are no more true ones than
        that: one in each place is laid by until the chain is whole, and takes no room.
        """
        if handling.action == "hold":
            return self._hold(event, body, digest, signed_upto)
        if handling.action == "quarantine":
            return self._set_apart(event, body, digest, text(handling.reason))
        return True

    def _hold(self, event: dict, body: str, digest: str, signed_upto: int) -> bool:
        device, seq = event["device"], event["seq"]
        if self._is_kept("unproven", device, seq, digest):
            return True
        laid_by = seq <= signed_upto and not self._has_brought(device, seq)
        if not laid_by and not self._takes_room(body):
            return False
        self._db.conn.execute(
            "INSERT INTO unproven (device, seq, hash, body, brought_by, at, laid_by) "
            "VALUES (?, ?, ?, ?, ?, ?, ?)",
            [device, seq, digest, body, self._session, self._now, laid_by],
        )
        return True

    def _set_apart(self, event: dict, body: str, digest: str, reason: str) -> bool:
        device, seq = event["device"], event["seq"]
        if self._is_kept("quarantine", device, seq, digest):
            return True
        if not self._takes_room(body):
            return False
        self._db.conn.execute(
            "INSERT INTO quarantine (device, seq, hash, body, reason, received_at, brought_by) "
            "VALUES (?, ?, ?, ?, ?, ?, ?)",
            [device, seq, digest, body, reason, self._now, self._session],
        )
        return True

    def _is_kept(self, table: str, device: str, seq: int, digest: str) -> bool:
        row = self._db.conn.execute(
            f"SELECT 1 FROM {table} WHERE device = ? AND seq = ? AND hash = ?", [device, seq, digest]
        ).fetchone()
        return row is not None

    def _has_brought(self, device: str, seq: int) -> bool:
        row = self._db.conn.execute(
            "SELECT 1 FROM unproven WHERE device = ? AND seq = ? AND brought_by IS ?",
            [device, seq, self._session],
        ).fetchone()
        return row is not None

    def _takes_room(self, body: str) -> bool:
        """Tells whether there is room for an entry, and counts it in."""
        if self._session is None:
            return True
        entries, size = self._taken or self._db.conn.execute(_TAKEN, [self._session]).fetchone()
        self._taken = entries, size
        more = entries + 1, size + len(body.encode())
        if more[0] > MOST_ENTRIES or more[1] > MOST_BYTES:
            return False
        self._taken = more
        return True


def is_proven(db: Database, device: str, digest: str, heads: list[SignedHead]) -> bool:
    """Tells whether an entry that was laid by is covered by a head that its phone signed.

    `heads` are signed heads that hold. A chain that is whole is gone through once, and marked.
    """
    row = db.conn.execute(
        "SELECT proven FROM unproven WHERE device = ? AND hash = ?", [device, digest]
    ).fetchone()
    if row is None or row[0]:
        return row is not None
    ends = [head for head in heads if _lies_here(db, head)]
    if not ends:
        return False
    rows = db.conn.execute("SELECT seq, hash, body FROM unproven WHERE device = ?", [device])
    chain = [Link(seq, each, json.loads(body)["prev"]) for seq, each, body in rows]
    proven = covered(ends, chain)
    db.conn.executemany(
        "UPDATE unproven SET proven = 1 WHERE device = ? AND hash = ?", [(device, each) for each in proven]
    )
    return digest in proven


def drop(db: Database, stored: dict[tuple[str, int], str]) -> None:
    """Lets go of entries that are in the log by now: (device, seq) -> hash."""
    if db.conn.execute("SELECT 1 FROM unproven LIMIT 1").fetchone() is None:
        return
    db.conn.executemany(
        "DELETE FROM unproven WHERE device = ? AND seq = ? AND hash = ?",
        [(*identity, digest) for identity, digest in stored.items()],
    )


def _lies_here(db: Database, head: SignedHead) -> bool:
    """Tells whether the entry that a head signs is laid by, and was not gone back from."""
    row = db.conn.execute(
        "SELECT 1 FROM unproven WHERE device = ? AND seq = ? AND hash = ? AND proven = 0",
        [head.device, head.seq, head.hash],
    ).fetchone()
    return row is not None
