"""Who is asking: one cookie a phone, whose token is kept only as a hash and can be revoked."""

import hashlib
import secrets
from functools import partial
from typing import NamedTuple

from flask import Flask
from flask import g
from flask import request
from flask import session as cookie
from sqlite_utils import Database

from server.clock import now_ms
from server.core.messages import message
from server.core.words.words import DAY_MS
from server.phones import roles
from server.storage import ask_when_writing
from server.web.database import database
from server.web.errors import NotPaired

# A phone that did not come by for so long is let in again only by pairing.
UNUSED_DAYS = 365

# What answers before a phone is paired.
OPEN_PATHS = {"/api/ping", "/api/session", "/api/pair"}


class Session(NamedTuple):
    """A paired phone."""

    id: int
    name: str
    role: str


def init_app(app: Flask) -> None:
    """Keeps everything under /api/ but the open paths to paired phones.

    Whoever is put out while something of theirs waits in line to be written is refused then: a link for the
    next phone, or a new certificate, would let them in again.
    """

    @app.before_request
    def _paired_only() -> None:
        if request.path.startswith("/api/") and request.path not in OPEN_PATHS:
            session = require_session()
            roles.check(session.role, request.path)
            ask_when_writing(database(), partial(_require_still, session=session.id))


def current_session() -> Session | None:
    """Returns the session of this request, or None."""
    if "session" not in g:
        g.session = _look_up(database(), cookie.get("token"))
    current: Session | None = g.session
    return current


def require_session() -> Session:
    """Returns the session of this request; refuses when there is none."""
    current = current_session()
    if current is None:
        raise _not_paired()
    return current


def _require_still(db: Database, session: int) -> None:
    row = db.conn.execute("SELECT 1 FROM sessions WHERE id = ? AND revoked_at IS NULL", [session]).fetchone()
    if row is None:
        raise _not_paired()


def _not_paired() -> NotPaired:
    return NotPaired("session", "nothing", "a paired phone", message("server-not-paired"))


def begin_session(db: Database, name: str, role: str, now: int) -> Session:
    """Makes a session and sets its cookie; called inside a transaction."""
    token = secrets.token_urlsafe(32)
    identity: int = db.conn.execute(
        "INSERT INTO sessions (token_hash, name, role, created_at) VALUES (?, ?, ?, ?) RETURNING id",
        [token_hash(token), name, role, now],
    ).fetchone()[0]
    cookie["token"] = token
    cookie.permanent = True
    g.session = begun = Session(identity, name, role)
    return begun


def any_paired(db: Database) -> bool:
    """Tells whether at least one phone can get in."""
    row = db.conn.execute("SELECT 1 FROM sessions WHERE revoked_at IS NULL LIMIT 1").fetchone()
    return row is not None


def token_hash(token: str) -> str:
    """Returns the form in which a token is kept; tokens are random, so no salt is needed."""
    return hashlib.sha256(token.encode()).hexdigest()


def _look_up(db: Database, token: object) -> Session | None:
    if not isinstance(token, str):
        return None
    row = db.conn.execute(
        "SELECT id, name, role FROM sessions WHERE token_hash = ? AND revoked_at IS NULL AND "
        "max(created_at, (SELECT coalesce(max(last_seen), 0) FROM devices WHERE session = sessions.id)) > ?",
        [token_hash(token), now_ms() - UNUSED_DAYS * DAY_MS],
    ).fetchone()
    return Session(*row) if row else None
