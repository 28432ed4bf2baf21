"""The event log in the database: taking in, reading on from a cursor, heads, quarantine."""

import json
import logging
import sqlite3
from typing import NamedTuple

from sqlite_utils import Database

from server import folded
from server.core.facts.corrections import KINDS_OF_CORRECTION
from server.core.facts.kinds import KINDS
from server.log import intake
from server.log import named
from server.log import unproven
from server.log.proof import Proofs
from server.log.senders import Senders
from server.log.senders import incoming
from server.phones import certificates
from server.phones.devices import used_by
from server.storage import writing
from server.words.spoken import text

log = logging.getLogger(__name__)

# A phone that works sends few at a time, and the state follows in the same transaction. A backlog
# comes in large batches; its state is made when it is asked for, so that the phone waits less.
_FOLDED_AT_ONCE = 50
_MOST_FOLDED = 4096
_NO_PROOFS = Proofs()


class Receipt(NamedTuple):
    """How many events were new, and {"device", "seq", "reason", "code"} of each not taken.

    One that is refused for a bound of the server says {"field", "found", "wanted"} as well.
    """

    stored: int
    refused: list[dict]


def receive(db: Database, entries: list, session: int | None, now: int, role: str = "") -> Receipt:
    """Takes a batch of {"event", "hash"} in, in one transaction; returns after the commit.

    `session` is whose phone sends it, `role` what that phone is for; without them it is the server
    itself, filling a fresh data folder.
    """
    with writing(db):
        return take_in(db, entries, session, now, role)


def take_in(
    db: Database,
    entries: list,
    session: int | None,
    now: int,
    role: str = "",
    proofs: Proofs = _NO_PROOFS,
    *,
    only_prove: bool = False,
    accepted: bool = False,
) -> Receipt:
    """Does the work of `receive` inside a transaction that is open already.

    An entry with "relayed" is passed on for another phone: it counts in the name and role that `proofs` show,
    and is kept apart where they show none (`unproven`). With `only_prove` such entries are only laid by, so
    that a chain longer than one batch is whole when its entries are sent in their order. `accepted` says that
    a person whose phone has `role` answers for those without proof.
    """
    refused = []
    batch = [incoming(entry) for entry in entries]
    senders = Senders(db, batch, session, now, None if accepted else proofs)
    heads: dict[str, intake.Head] = {}
    new = _New(db, now)
    apart = unproven.Apart(db, session, now)
    for each in batch:
        event, digest = each.event, each.digest
        if each.problem is not None:
            refused.append(_refusal(event, intake.Handling("refuse", "malformed", each.problem)))
            continue
        device, seq = event["device"], event["seq"]
        if device not in heads:
            heads[device] = head(db, device)
        kept = None
        if seq <= heads[device].seq:
            kept = new.hashes.get((device, seq)) or kept_hash(db, device, seq)
        handling = intake.judge(event, digest, each.claimed, heads[device], kept)
        handling, judged_as = senders.judge(each, handling, role)
        if only_prove and each.is_relayed and (handling.action == "store" or handling.code == "gap"):
            handling = intake.UNPROVEN
        if handling.action == "store":
            handling = intake.judge_bounds(event) or handling
        if handling.action == "store" and judged_as:
            target = _target(db, new, event, None if each.is_relayed else session)
            handling = intake.judge_role(judged_as, event, target) or handling
        if handling.action == "store":
            senders.note(device)
            new.add(event, each.body, digest)
            heads[device] = intake.Head(seq, digest)
        else:
            handling = apart.keep(handling, event, each.body, digest, senders.signed_upto(device))
        if handling.code and not only_prove:
            refused.append(_refusal(event, handling))
    new.write()
    unproven.drop(db, new.hashes)
    senders.keep_heads()
    if 0 < len(new.hashes) <= _FOLDED_AT_ONCE:
        _move_state_on(db)
    return Receipt(len(new.hashes), refused)


class _New:
    """The rows of a batch, written together at its end: one by one they would take much longer."""

    def __init__(self, db: Database, now: int):
        self.hashes: dict[tuple[str, int], str] = {}
        self.kinds: dict[tuple[str, int], str] = {}
        self._db = db
        self._now = now
        self._events: list[tuple] = []
        self._units: list[tuple] = []
        self._photos: list[tuple] = []
        row = db.conn.execute("SELECT seq FROM sqlite_sequence WHERE name = 'events'").fetchone()
        self._last = row[0] if row else 0

    def add(self, event: dict, body: str, digest: str) -> None:
        self._last += 1
        device, seq = event["device"], event["seq"]
        self.hashes[device, seq] = digest
        self.kinds[device, seq] = event["kind"]
        row = (self._last, device, seq, digest, event["prev"], event["kind"], event["job"], body, self._now)
        self._events.append(row)
        self._units += [(unit, self._last) for unit in named.units(event, body)]
        photo = named.photo(event)
        if photo is not None:
            self._photos.append((photo, self._last))

    def write(self) -> None:
        insert = self._db.conn.executemany
        insert(
            "INSERT INTO events (n, device, seq, hash, prev, kind, job, body, received_at) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            self._events,
        )
        insert("INSERT INTO event_units (unit, n) VALUES (?, ?)", self._units)
        insert("INSERT INTO event_photos (sha256, n) VALUES (?, ?)", self._photos)
        insert(
            "INSERT INTO photos_wanted (device, n, sha256) SELECT device, ?2, ?1 FROM events "
            "WHERE n = ?2 AND ?1 NOT IN (SELECT sha256 FROM photos)",
            self._photos,
        )


def _target(db: Database, new: _New, event: dict, session: int | None) -> dict | None:
    """Returns what a well-formed correction names, as `roles.against` takes it; None for other events.

    A phone that had to take a new device id still recorded what stands under its earlier one. `session` is
    whose phone sends the correction, None where it is passed on for the phone that recorded it.
    """
    data = event["data"]
    if event["kind"] not in KINDS_OF_CORRECTION or KINDS[event["kind"]].problem(data):
        return None
    device, seq = data["device"], data["seq"]
    row = db.conn.execute("SELECT kind FROM events WHERE device = ? AND seq = ?", [device, seq]).fetchone()
    kind = row[0] if row else new.kinds.get((device, seq), "")
    owner, role = used_by(db, device)
    if not role and (known := certificates.of(db, device)):
        role = known[0].role
    if session is None:
        session, _ = used_by(db, event["device"])
    own = device == event["device"] or (owner is not None and owner == session)
    return {"kind": kind, "own": own, "role": role}


def head(db: Database, device: str) -> intake.Head:
    """Returns the number and hash of the last event kept of a device."""
    row = db.conn.execute(
        "SELECT seq, hash FROM events WHERE device = ? ORDER BY seq DESC LIMIT 1", [device]
    ).fetchone()
    return intake.Head(*row) if row else intake.NO_HEAD


def kept_hash(db: Database, device: str, seq: int) -> str | None:
    """Returns the hash of the event kept under an identity, or None."""
    row = db.conn.execute("SELECT hash FROM events WHERE device = ? AND seq = ?", [device, seq]).fetchone()
    return row[0] if row else None


def last_n(db: Database) -> int:
    """Returns the number of the event received last, 0 for an empty log."""
    last: int = db.conn.execute("SELECT coalesce(max(n), 0) FROM events").fetchone()[0]
    return last


def after(db: Database, cursor: int, most: int, most_bytes: int) -> list[dict]:
    """Returns the next events behind `cursor` in order of receipt, at least one if there is any."""
    feed = feed_after(db, cursor, most, most_bytes)
    entries: list[dict] = json.loads(feed.text)
    return entries


class Feed(NamedTuple):
    """Events as the text of a JSON list of {"n", "received_at", "hash", "event"}; the last one's `n`.

    `devices` are those that recorded them.
    """

    text: str
    last: int
    devices: set[str]


def feed_after(db: Database, cursor: int, most: int, most_bytes: int) -> Feed:
    """Returns what `after` does as JSON text: what is kept is JSON already."""
    entries: list[str] = []
    devices: set[str] = set()
    size = 0
    rows = db.conn.execute(
        "SELECT n, received_at, hash, body, device FROM events WHERE n > ? ORDER BY n LIMIT ?",
        [cursor, most],
    )
    for n, received_at, digest, body, device in rows:
        size += len(body)
        if entries and size > most_bytes:
            break
        entries.append(f'{{"n":{n},"received_at":{received_at},"hash":"{digest}","event":{body}}}')
        devices.add(device)
        cursor = n
    rows.close()
    return Feed(f"[{','.join(entries)}]", cursor, devices)


def of_unit(db: Database, unit: str) -> list[dict]:
    """Returns every event that names a unit, in order of receipt."""
    rows = db.conn.execute(
        "SELECT body FROM event_units JOIN events USING (n) WHERE unit = ? ORDER BY n", [unit]
    )
    return [json.loads(body) for (body,) in rows]


def _move_state_on(db: Database) -> None:
    """Folds what came in; a fold that fails must not keep a fact out, so it alone is taken back."""
    db.conn.execute("SAVEPOINT state")
    try:
        folded.advance(db, _MOST_FOLDED)
    except sqlite3.Error:
        raise
    except Exception:
        log.exception("the state could not be folded")
        db.conn.execute("ROLLBACK TO state")
    db.conn.execute("RELEASE state")


def _refusal(event: dict, handling: intake.Handling) -> dict:
    device, seq = event.get("device"), event.get("seq")
    refusal = {
        "device": device if isinstance(device, str) else None,
        "seq": seq if isinstance(seq, int) and not isinstance(seq, bool) else None,
        "reason": text(handling.reason),
        "code": handling.code,
    }
    if handling.wanted:
        refusal |= {"field": "events", "found": handling.found, "wanted": handling.wanted}
    return refusal
