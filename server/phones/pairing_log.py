"""Who was let in, who was not, and who was put out: kept for whoever answers for the phones."""

from sqlite_utils import Database

from server.phones import roles

PAIRED, FAILED, PUT_OUT = "paired", "failed", "put_out"

# The newest of each are kept: strangers who knock cannot push out who was let in.
_KEPT = {PAIRED: 500, FAILED: 200, PUT_OUT: 500}
_SHOWN = 50  # of each too


def note(
    db: Database,
    what: str,
    now: int,
    *,
    name: str,
    role: str = "",
    address: str = "",
    device: str = "",
    by: str = "",
) -> None:
    """Adds a line; called inside a transaction.

    Of one who failed, `name` and `device` are what it said of itself, and it has no role. `by` is the
    phone that put this one out.
    """
    db.conn.execute(
        "INSERT INTO pairing_log (at, what, name, role, address, device, by) VALUES (?, ?, ?, ?, ?, ?, ?)",
        [now, what, name, role, address, device, by],
    )
    db.conn.execute(
        "DELETE FROM pairing_log WHERE what = ?1 AND id NOT IN "
        "(SELECT id FROM pairing_log WHERE what = ?1 ORDER BY id DESC LIMIT ?2)",
        [what, _KEPT[what]],
    )


def last(db: Database, role: str) -> list[dict]:
    """Returns the newest lines of each sort that a phone of `role` may see, the newest first.

    At the counter those are the phones at the counter; who failed was of no role yet.
    """
    rows = db.conn.execute(
        "SELECT at, what, name, role, address, device, by FROM (SELECT *, row_number() OVER "
        "(PARTITION BY what ORDER BY id DESC) AS place FROM pairing_log WHERE ?1 OR role = ?2) "
        "WHERE place <= ?3 ORDER BY id DESC",
        [role != roles.COUNTER, roles.COUNTER, _SHOWN],
    )
    fields = ("at", "what", "name", "role", "address", "device", "by")
    return [dict(zip(fields, row, strict=True)) for row in rows]
