"""What was brought without proof of whose it is: kept apart, until a person with the right role accepts it.

It counts for nothing, and never stands in the way of what the phone itself sends, or of what is brought with
proof.
"""

import json

from sqlite_utils import Database

from server.log.proof import Link
from server.log.proof import SignedHead
from server.log.proof import covered


def hold(db: Database, event: dict, body: str, digest: str, session: int | None, now: int) -> None:
    """Keeps an entry apart; `session` is whose phone brought it, None for the command line."""
    db.conn.execute(
        "INSERT OR IGNORE INTO unproven (device, seq, hash, body, brought_by, at) VALUES (?, ?, ?, ?, ?, ?)",
        [event["device"], event["seq"], digest, body, session, now],
    )


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
