"""Which session a device id belongs to: the one that used it first, until it is paired again."""

import re
from typing import NamedTuple

from sqlite_utils import Database

from server.core.errors import shorten
from server.core.facts import roles
from server.core.facts.corrections import KINDS_OF_CORRECTION
from server.phones import certificates
from server.web.errors import BadRequest

_ID = re.compile(r"d[0-9a-f]{16}")


def is_id(text: str) -> bool:
    """Tells whether `text` has the form of a device id."""
    return _ID.fullmatch(text) is not None


def checked_id(body: dict) -> str:
    """Returns the device id in a request's body."""
    device = body.get("device")
    if not isinstance(device, str) or not is_id(device):
        raise BadRequest("device", shorten(device), '"d" and 16 hex digits')
    return device


SEEN_EVERY_MS = 60_000  # a phone that only asks for news must not cost a disk write each time


def claim(db: Database, device: str, session: int | None, now: int) -> bool:
    """Binds a device id that is nobody's to `session`; returns whether the id is this session's to use.

    One that a key speaks for is nobody's but that phone's, which shows its key when it is paired; and one
    whose phone was put out is used no more. Nor does a phone use the id of one with another task.
    """
    row = db.conn.execute("SELECT session FROM devices WHERE device = ?", [device]).fetchone()
    # Asked only where the id is in nobody's use: who uses it was paired under it.
    if (row is None or row[0] is None) and certificates.are_known(db, device):
        return False
    if row is None:
        db.conn.execute(
            "INSERT INTO devices (device, session, first_seen, last_seen) VALUES (?, ?, ?, ?)",
            [device, session, now, now],
        )
        return True
    if row[0] is None:
        # Its entries came through another phone, or from a file, before it showed up itself.
        role = db.conn.execute("SELECT role FROM sessions WHERE id = ?", [session]).fetchone()
        if role and not recorded_as(db, device, role[0]):
            return False
        db.conn.execute("UPDATE devices SET session = ? WHERE device = ?", [session, device])
    elif row[0] != session:
        return False
    db.conn.execute(
        "UPDATE devices SET last_seen = ? WHERE device = ? AND last_seen < ?",
        [now, device, now - SEEN_EVERY_MS],
    )
    return True


def recorded_as(db: Database, device: str, role: str) -> bool:
    """Tells whether all that is on record of a device id can have been recorded by a phone of a role.

    That is all there is to go by where its entries came from a file, and nobody was paired under it.
    """
    kinds = db.conn.execute("SELECT DISTINCT kind FROM events WHERE device = ?", [device]).fetchall()
    # Without data only the kind is judged. Both roles correct, each what is its own.
    return all(
        kind in KINDS_OF_CORRECTION or roles.against(role, {"kind": kind, "data": {}, "actor": ""}) is None
        for (kind,) in kinds
    )


def note(db: Database, device: str, now: int) -> None:
    """Makes a device id known without binding it: somebody else brings its entries."""
    db.conn.execute(
        "INSERT OR IGNORE INTO devices (device, first_seen, last_seen) VALUES (?, ?, ?)", [device, now, now]
    )


def take_over(db: Database, device: str, session: int, now: int) -> None:
    """Gives a device id to a session that was just paired; `pairing` has asked whether it may have it.

    The phone of that id lost its cookie, so the session that held it ends, unless it has others.
    """
    row = db.conn.execute("SELECT session FROM devices WHERE device = ?", [device]).fetchone()
    note(db, device, now)
    db.conn.execute("UPDATE devices SET session = ?, last_seen = ? WHERE device = ?", [session, now, device])
    if row is None:
        return
    db.conn.execute(
        "UPDATE sessions SET revoked_at = ? WHERE id = ? AND revoked_at IS NULL "
        "AND NOT EXISTS (SELECT 1 FROM devices WHERE session = sessions.id)",
        [now, row[0]],
    )


def used_by(db: Database, device: str) -> tuple[int | None, str]:
    """Returns the session of the phone that used a device id last and its role, (None, "") where none did."""
    row = db.conn.execute(
        "SELECT session, role FROM devices JOIN sessions ON sessions.id = session WHERE device = ?", [device]
    ).fetchone()
    return row or (None, "")


def note_app(db: Database, device: str, app: str) -> None:
    """Notes which build of the app a device runs."""
    db.conn.execute("UPDATE devices SET app = ? WHERE device = ? AND app <> ?", [app, device, app])


class Keeping(NamedTuple):
    """What a phone says of its storage; None is not known."""

    promised: bool | None
    installed: bool | None


def checked_keeping(body: dict) -> Keeping | None:
    """Returns what a request's body says of the phone's storage; older apps say nothing."""
    promise = body.get("storage")
    if promise is None:
        return None
    if not isinstance(promise, dict):
        raise BadRequest("storage", shorten(promise), '{"promised", "installed"}')
    for name in Keeping._fields:
        if not isinstance(promise.get(name), bool | None):
            raise BadRequest(f"storage.{name}", shorten(promise[name]), "true, false or null")
    return Keeping(promise.get("promised"), promise.get("installed"))


def note_keeping(db: Database, device: str, keeping: Keeping) -> None:
    """Notes what a device says of its storage; written only when it changed."""
    db.conn.execute(
        "UPDATE devices SET promised = ?1, installed = ?2 "
        "WHERE device = ?3 AND (promised IS NOT ?1 OR installed IS NOT ?2)",
        [*keeping, device],
    )
