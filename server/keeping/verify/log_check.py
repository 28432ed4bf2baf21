"""Goes through an event log and names the first entry that is not as it was recorded.

What gives a change away: the hash over an entry's bytes, the hash of the entry before in each
entry, the numbers without a gap, of each device and of receipt. Whoever changes the last entry of a
device and its hash with it leaves no trace in the log itself; what its phone signed, the heads that a backup
names, and the phones, still tell.
"""

import json
import sqlite3

from server.core.errors import BadInput
from server.core.log import envelope
from server.core.messages import message
from server.keeping.verify import signature_check
from server.log.fault import Fault
from server.log.intake import hash_of

_ROWS = "SELECT n, device, seq, hash, prev, kind, job, body FROM events ORDER BY n"
_AFTER_A_GAP = """SELECT device, seq - 1 FROM events AS later WHERE seq > 1 AND NOT EXISTS (
    SELECT 1 FROM events AS before WHERE before.device = later.device AND before.seq = later.seq - 1
) ORDER BY n LIMIT 1"""

Heads = dict[str, dict]


def first_fault(connection: sqlite3.Connection, heads: Heads | None = None) -> Fault | None:
    """Returns the first fault of a log; `heads` is where each device stood, if that is on record."""
    try:
        return (
            _fault_in_entries(connection, heads or {})
            or _fault_at_the_end(connection, heads)
            or _fault_in_quarantine(connection)
            or signature_check.first_fault(connection)
            or _fault_in_file(connection)
        )
    except sqlite3.DatabaseError as error:
        return Fault("", 0, message("keeping-unread", error=str(error)))


def _fault_in_entries(connection: sqlite3.Connection, heads: Heads) -> Fault | None:
    ends: dict[str, tuple[int, str]] = {}
    expected = 1
    for n, device, seq, digest, prev, kind, job, body in connection.execute(_ROWS):
        if n != expected:
            return _missing(
                connection, heads, message("keeping-missing-between", before=str(expected - 1), after=str(n))
            )
        expected += 1
        if hash_of(body) != digest:
            return Fault(device, seq, message("keeping-bytes"))
        try:
            event = json.loads(body)
            envelope.check(event)
        except (ValueError, BadInput):
            return Fault(device, seq, message("keeping-no-entry"))
        fields = [event[name] for name in ("device", "seq", "prev", "kind", "job")]
        if fields != [device, seq, prev, kind, job]:
            return Fault(device, seq, message("keeping-filed"))
        last, last_hash = ends.get(device, (0, ""))
        if seq != last + 1:
            return Fault(
                device,
                last + 1,
                message("keeping-missing") if seq > last else message("keeping-twice", seq=str(seq)),
            )
        if prev != last_hash:
            return Fault(device, seq, message("keeping-not-next"))
        ends[device] = (seq, digest)
    return None


def _fault_at_the_end(connection: sqlite3.Connection, heads: Heads | None) -> Fault | None:
    """Looks for entries that are missing at the end, where no later one gives them away."""
    if heads is not None:
        rows = connection.execute("SELECT device, max(seq), hash FROM events GROUP BY device")
        kept = {device: (seq, digest) for device, seq, digest in rows}
        for device in sorted({*heads, *kept}):
            named = heads.get(device, {"seq": 0, "hash": ""})
            seq, digest = kept.get(device, (0, ""))
            if seq != named["seq"]:
                what = message("keeping-missing" if seq < named["seq"] else "keeping-added")
                return Fault(device, min(seq, named["seq"]) + 1, what)
            if digest != named["hash"]:
                return Fault(device, seq, message("keeping-head"))
    row = connection.execute("SELECT seq FROM sqlite_sequence WHERE name = 'events'").fetchone()
    last = connection.execute("SELECT coalesce(max(n), 0) FROM events").fetchone()[0]
    if row and row[0] > last:
        return _missing(connection, heads or {}, message("keeping-missing-after", last=str(last)))
    return None


def _missing(connection: sqlite3.Connection, heads: Heads, where: dict) -> Fault:
    """Names the first entry that is missing, as well as what is left tells; else `where` it was."""
    row = connection.execute(_AFTER_A_GAP).fetchone()
    if row:
        return Fault(row[0], row[1], message("keeping-missing"))
    for device in sorted(heads):
        last = connection.execute("SELECT max(seq) FROM events WHERE device = ?", [device]).fetchone()[0]
        if (last or 0) < heads[device]["seq"]:
            return Fault(device, (last or 0) + 1, message("keeping-missing"))
    return Fault("", 0, where)


def _fault_in_quarantine(connection: sqlite3.Connection) -> Fault | None:
    for device, seq, digest, body in connection.execute("SELECT device, seq, hash, body FROM quarantine"):
        if hash_of(body) != digest:
            return Fault(device, seq, message("keeping-apart"))
    return None


def _fault_in_file(connection: sqlite3.Connection) -> Fault | None:
    answer = connection.execute("PRAGMA integrity_check(1)").fetchone()[0]
    if answer != "ok":
        return Fault("", 0, message("keeping-damaged", error=" ".join(answer.split())))
    row = connection.execute("PRAGMA foreign_key_check").fetchone()
    return Fault("", 0, message("keeping-dangling", table=row[0])) if row else None
