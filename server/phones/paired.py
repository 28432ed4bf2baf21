"""The paired phones: who they are, when they were last seen, and how one is put out."""

from flask import Blueprint
from flask import Response
from flask import request

from server.clock import now_ms
from server.core.messages import message
from server.news.board import board
from server.phones import certificates
from server.phones import pairing_log
from server.phones import roles
from server.phones.sessions import require_session
from server.storage import writing
from server.web.answers import json_answer
from server.web.bodies import json_object
from server.web.database import database
from server.web.errors import NotAllowed
from server.web.errors import NotFound

blueprint = Blueprint("phones", __name__)

MOST_BYTES = 4096


@blueprint.get("/api/phones")
def phones() -> Response:
    """Lists the phones that are let in, the one seen last first, and who came and went; at the counter,
    those at the counter.
    """
    asker = require_session()
    rows = database().conn.execute(
        "SELECT sessions.id, name, role, created_at, max(coalesce(last_seen, created_at)) AS seen, "
        "promised, installed "
        "FROM sessions LEFT JOIN devices ON devices.session = sessions.id WHERE revoked_at IS NULL "
        "GROUP BY sessions.id ORDER BY seen DESC, sessions.id"
    )
    return json_answer(
        {
            "phones": [
                {
                    "id": identity,
                    "name": name,
                    "role": role,
                    "paired_at": paired_at,
                    "seen_at": seen_at,
                    "this": identity == asker.id,
                    # Of its device seen last; null where it has not said.
                    "promised": None if promised is None else bool(promised),
                    "installed": None if installed is None else bool(installed),
                }
                for identity, name, role, paired_at, seen_at, promised, installed in rows
                if asker.role != roles.COUNTER or role == roles.COUNTER
            ],
            "log": pairing_log.last(database(), asker.role),
        }
    )


@blueprint.post("/api/phones/<row:phone>/revoke")
def revoke(phone: int) -> Response:
    """Puts a phone out at once, and with it its links and its device id, where a key speaks for that.

    For nobody comes in by a link that a lost phone made.

    What it has not sent stays on it, and goes under a new id once it is paired again.
    """
    asker = require_session()
    json_object(MOST_BYTES)
    if phone == asker.id:
        raise NotAllowed(
            "phone",
            "the phone that asks",
            "another phone",
            message("server-own-phone"),
        )
    db = database()
    with writing(db):
        row = db.conn.execute(
            "SELECT role, name, (SELECT device FROM devices WHERE session = sessions.id "
            "ORDER BY last_seen DESC LIMIT 1) FROM sessions WHERE id = ? AND revoked_at IS NULL",
            [phone],
        ).fetchone()
        if row is None:
            raise NotFound("phone", str(phone), "a phone that is paired", message("server-phone-gone"))
        role, name, device = row
        roles.check_may_grant(asker.role, role)
        now = now_ms()
        db.conn.execute("UPDATE sessions SET revoked_at = ? WHERE id = ?", [now, phone])
        db.conn.execute("DELETE FROM pairings WHERE made_by = ?", [phone])
        certificates.end(db, phone, now)
        pairing_log.note(
            db,
            pairing_log.PUT_OUT,
            now,
            name=name,
            role=role,
            address=request.remote_addr or "",
            device=device or "",
            by=asker.name,
        )
    board().leave(phone)
    return json_answer({"revoked": True})
