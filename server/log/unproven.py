"""What was brought without proof of whose it is: kept apart, until a person with the right role accepts it.

It counts for nothing, and never stands in the way of what the phone itself sends, or of what is brought with
proof. For entries that nothing can prove, each phone that brings them has a bounded room, and all phones
together have one; what is kept apart because its chain left the kept one (`quarantine`) takes of the same. A
full room takes no more, and the phone keeps it. Whoever runs the server makes room with `make-room`. What is
laid by until a signed chain is whole has a larger room, for a phone may sign that its chain is as long as it
likes.
"""

from typing import NamedTuple

from sqlite_utils import Database

from server.core.messages import message
from server.log.intake import NO_ROOM
from server.log.intake import Handling
from server.log.proof import SignedHead
from server.words.spoken import text

# Per phone that brings them. Accepting what waits makes room again; setting it aside does not, or a phone
# could make its own.
MOST_ENTRIES = 20_000
MOST_BYTES = 32 * 1024 * 1024
# Of all phones together: the rooms of five. A phone that is put out and paired again has a new room, and a
# yard with more than five phones that all were flooded needs a person in any case.
MOST_ENTRIES_OF_ALL = 100_000
MOST_BYTES_OF_ALL = 160 * 1024 * 1024
# Laid by of one phone that brings them: chains of phones that are lost, each of thousands of entries.
MOST_LAID_BY = 200_000
MOST_BYTES_LAID_BY = 256 * 1024 * 1024

_LAID_BY = """SELECT count(*), coalesce(sum(size), 0) FROM unproven
    WHERE brought_by IS ? AND proven = 0 AND laid_by = 1"""
_TAKEN = """SELECT count(*), coalesce(sum(size), 0),
    coalesce(sum(brought_by = ?1), 0), coalesce(sum(size * (brought_by = ?1)), 0) FROM (
    SELECT brought_by, size FROM unproven WHERE brought_by IS NOT NULL AND proven = 0 AND laid_by = 0
    UNION ALL SELECT brought_by, size FROM quarantine WHERE brought_by IS NOT NULL)"""


class _Taken(NamedTuple):
    """Entries and bytes that are kept apart: of all phones, and of the one that brings more."""

    entries: int
    size: int
    own_entries: int
    own_size: int

    def with_one(self, size: int) -> "_Taken":
        """Returns what is taken with one more of that size."""
        return _Taken(self.entries + 1, self.size + size, self.own_entries + 1, self.own_size + size)


class Apart:
    """Keeps entries apart for one batch; `session` is whose phone brought it, None for the command line."""

    def __init__(self, db: Database, session: int | None, now: int):
        self._db = db
        self._session = session
        self._now = now
        self._taken: _Taken | None = None
        self._laid_by: tuple[int, int] | None = None

    def keep(self, handling: Handling, event: dict, body: str, digest: str, signed_upto: int) -> Handling:
        """Keeps an entry as its handling says, if it is to be kept apart.

        Returns that handling, or the refusal where there is no room.

        Up to the entry `signed_upto` its phone has signed its chain, so there are no more true ones than
        that: one in each place is laid by until the chain is whole, and takes none of the room.
        """
        refusal = None
        if handling.action == "hold":
            refusal = self._hold(event, body, digest, signed_upto)
        elif handling.action == "quarantine":
            refusal = self._set_apart(event, body, digest, text(handling.reason))
        return refusal or handling

    def _hold(self, event: dict, body: str, digest: str, signed_upto: int) -> Handling | None:
        device, seq = event["device"], event["seq"]
        if not self._is_kept("unproven", device, seq, digest):
            refusal = self._keep_unproven(event, body, digest, signed_upto)
            if refusal:
                return refusal
        _prove_by_next(self._db, device, seq, digest)
        return None

    def _keep_unproven(self, event: dict, body: str, digest: str, signed_upto: int) -> Handling | None:
        device, seq, size = event["device"], event["seq"], len(body.encode())
        laid_by = seq <= signed_upto and not self._has_brought(device, seq) and self._lay_by(size)
        if not laid_by and (refusal := self._take_room(size)):
            return refusal
        self._db.conn.execute(
            "INSERT INTO unproven (device, seq, hash, body, brought_by, at, laid_by, size) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            [device, seq, digest, body, self._session, self._now, laid_by, size],
        )
        return None

    def _set_apart(self, event: dict, body: str, digest: str, reason: str) -> Handling | None:
        device, seq, size = event["device"], event["seq"], len(body.encode())
        if self._is_kept("quarantine", device, seq, digest):
            return None
        if refusal := self._take_room(size):
            return refusal
        self._db.conn.execute(
            "INSERT INTO quarantine (device, seq, hash, body, reason, received_at, brought_by, size) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            [device, seq, digest, body, reason, self._now, self._session, size],
        )
        return None

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

    def _lay_by(self, size: int) -> bool:
        """Counts an entry of that size in among those laid by; tells whether there is room for it."""
        if self._laid_by is None:
            self._laid_by = self._db.conn.execute(_LAID_BY, [self._session]).fetchone()
        entries, all_size = self._laid_by[0] + 1, self._laid_by[1] + size
        if self._session is not None and (entries > MOST_LAID_BY or all_size > MOST_BYTES_LAID_BY):
            return False
        self._laid_by = entries, all_size
        return True

    def _take_room(self, size: int) -> Handling | None:
        """Counts an entry of that size in; returns the refusal where there is no room for it."""
        if self._session is None:
            return None
        if self._taken is None:
            self._taken = _Taken(*self._db.conn.execute(_TAKEN, [self._session]).fetchone())
        more = self._taken.with_one(size)
        if more.own_entries > MOST_ENTRIES or more.own_size > MOST_BYTES:
            return _full(NO_ROOM, self._taken.own_entries, self._taken.own_size, MOST_ENTRIES, MOST_BYTES)
        if more.entries > MOST_ENTRIES_OF_ALL or more.size > MOST_BYTES_OF_ALL:
            return _none_for_any(self._taken)
        self._taken = more
        return None


def _none_for_any(taken: _Taken) -> Handling:
    """Returns the refusal where the room of all phones together is full."""
    told = message(
        "server-no-room-for-any",
        entries=taken.entries,
        kilobytes=-(-taken.size // 1024),
        most=MOST_ENTRIES_OF_ALL,
        most_kilobytes=MOST_BYTES_OF_ALL // 1024,
    )
    no_room = NO_ROOM._replace(reason=told)
    return _full(no_room, taken.entries, taken.size, MOST_ENTRIES_OF_ALL, MOST_BYTES_OF_ALL)


def _full(no_room: Handling, entries: int, size: int, most: int, most_size: int) -> Handling:
    """Returns the refusal with how much is kept apart of what may be."""
    return no_room._replace(
        found=f"{entries} entries, {size} bytes, that nothing proves",
        wanted=f"at most {most} entries, {most_size} bytes",
    )


def is_proven(db: Database, event: dict, digest: str, heads: list[SignedHead]) -> bool:
    """Tells whether an entry that was laid by is covered by a head that its phone signed.

    `heads` are signed heads that hold.
    """
    for head in heads:
        _prove(db, head.device, head.seq, head.hash)
    lying = _lying(db, event["device"], event["seq"], digest)
    return lying is not None and lying[0]


def _prove(db: Database, device: str, seq: int, digest: str) -> None:
    """Marks an entry that lies here as proven, and those before it, as far as they lie here.

    It ends at one that was marked earlier, so a chain is gone through once, in whatever order it came.
    """
    proven = []
    while lying := _lying(db, device, seq, digest):
        is_proven, previous = lying
        if is_proven:
            break
        proven.append((device, seq, digest))
        seq, digest = seq - 1, previous
    db.conn.executemany("UPDATE unproven SET proven = 1 WHERE device = ? AND seq = ? AND hash = ?", proven)


def _prove_by_next(db: Database, device: str, seq: int, digest: str) -> None:
    """Marks an entry as proven where the one after it, which was laid by earlier, is and follows on it."""
    follows = db.conn.execute(
        "SELECT 1 FROM unproven WHERE device = ? AND seq = ? AND proven = 1 "
        "AND json_extract(body, '$.prev') = ?",
        [device, seq + 1, digest],
    ).fetchone()
    if follows:
        _prove(db, device, seq, digest)


def _lying(db: Database, device: str, seq: int, digest: str) -> tuple[bool, str] | None:
    """Returns whether an entry is proven, and the hash of the one before it; None where it is not here."""
    row = db.conn.execute(
        "SELECT proven, json_extract(body, '$.prev') FROM unproven WHERE device = ? AND seq = ? AND hash = ?",
        [device, seq, digest],
    ).fetchone()
    return (bool(row[0]), row[1]) if row else None


def drop(db: Database, stored: dict[tuple[str, int], str]) -> None:
    """Lets go of entries that are in the log by now: (device, seq) -> hash."""
    if db.conn.execute("SELECT 1 FROM unproven LIMIT 1").fetchone() is None:
        return
    db.conn.executemany(
        "DELETE FROM unproven WHERE device = ? AND seq = ? AND hash = ?",
        [(*identity, digest) for identity, digest in stored.items()],
    )
