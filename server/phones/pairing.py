"""Lets phones in: one-time links, made in the terminal or by a phone that is in already."""

import secrets
from typing import NoReturn

import qrcode
from flask import Blueprint
from flask import Response
from flask import current_app
from flask import request
from sqlite_utils import Database

from server.clock import now_ms
from server.core.errors import shorten
from server.core.messages import message
from server.phones import certificates
from server.phones import devices
from server.phones import pairing_log
from server.phones import roles
from server.phones import sessions
from server.phones.certificates import Certificate
from server.phones.installation import installation_signer
from server.phones.try_limit import TryLimit
from server.serving.connections.peer import network_of
from server.storage import writing
from server.web.answers import json_answer
from server.web.bodies import json_object
from server.web.bodies import text_field
from server.web.database import database
from server.web.errors import BadRequest
from server.web.errors import NotAllowed

blueprint = Blueprint("pairing", __name__)

MOST_BYTES = 4096
LINK_MINUTES = 15
# A phone that first has to be led through its settings takes longer than one that opens a link.
TRUST_MINUTES = 60


@blueprint.post("/api/pair")
def pair() -> Response:
    """Turns a one-time token into a session for this phone."""
    body = json_object(MOST_BYTES)
    token = text_field(body, "token", 200)
    device = devices.checked_id(body)
    name = text_field(body, "name", 80).strip()
    key, signature = _signed(body, device, token)
    db, now = database(), now_ms()
    address = request.remote_addr or ""
    # Looked at before the database is locked: a wrong guess must not cost a write.
    wanted = _role_of(db, token, now)
    if wanted is None:
        _refuse_stranger(db, now, name, address, device)
    with writing(db):
        _check_device(db, device, wanted, token, signature)
        role = _use_up(db, token, now)
        if role is None:  # another phone was faster
            raise _used_or_expired()
        session = sessions.begin_session(db, name, role, now)
        devices.take_over(db, device, session.id, now)
        if key:
            certificates.issue(
                db, installation_signer(), Certificate(device, role, name, key, now, issuer="")
            )
        pairing_log.note(db, pairing_log.PAIRED, now, name=name, role=role, address=address, device=device)
    return json_answer({"paired": True, "name": session.name, "role": session.role})


def _signed(body: dict, device: str, token: str) -> tuple[str, str]:
    """Returns the phone's key and its signature over this pairing; apps from before keys bring none."""
    if body.get("key") is None:
        return "", ""
    key, signature = text_field(body, "key", 130), text_field(body, "signature", 128)
    if not certificates.signs_pairing(device, token, signature, key):
        raise NotAllowed("key", shorten(key), "the key of this phone", message("server-bad-signature"))
    return key, signature


def _check_device(db: Database, device: str, role: str, token: str, signature: str) -> None:
    """Refuses a device id that is another phone's, as key or role tells, or whose phone was put out."""
    if certificates.has_ended(db, device):
        reason = message("server-device-ended")
    elif any(
        not certificates.signs_pairing(device, token, signature, each.key)
        for each in certificates.of(db, device)
    ):
        reason = message("server-device-bound")
    elif _has_another_task(db, device, role):
        reason = message("server-device-role", role=role)
    else:
        return
    raise NotAllowed("device", device, "a device id of its own", reason)


def _has_another_task(db: Database, device: str, role: str) -> bool:
    known = devices.used_by(db, device)[1]
    return known != role if known else not devices.recorded_as(db, device, role)


def _refuse_stranger(db: Database, now: int, name: str, address: str, device: str) -> NoReturn:
    """Refuses a token that is not good; slower, once there are many from one address.

    Only wrong tokens ever meet the limit: a good one is 192 random bits, which nobody comes upon by
    trying, and whoever has it must not wait for those who share an address with somebody who tries.
    """
    limit: TryLimit = current_app.extensions["pairing_tries"]
    limit.check(network_of(address))
    limit.count(network_of(address))
    noted: TryLimit = current_app.extensions["pairing_failures_noted"]
    if not noted.is_used_up(""):
        noted.count("")
        with writing(db):
            pairing_log.note(db, pairing_log.FAILED, now, name=name, address=address, device=device)
    raise _used_or_expired()


def _used_or_expired() -> NotAllowed:
    return NotAllowed(
        "token",
        message("server-link-used"),
        message("server-link-fresh"),
        message("server-link"),
    )


@blueprint.post("/api/pairings")
def invite() -> Response:
    """Makes a link for the next phone, with the QR symbol to show it as rows of 0 and 1.

    `role` says what that phone is for; left out, the same as the one that asks. Where phones have to trust
    this server first, the link is that of the trust page, which leads on to pairing.
    """
    session = sessions.require_session()
    role = json_object(MOST_BYTES).get("role", session.role)
    if role not in roles.ROLES:
        raise BadRequest("role", shorten(role), " or ".join(roles.ROLES))
    roles.check_may_grant(session.role, role)
    now = now_ms()
    trust_page = current_app.config.get("TRUST_PAGE", "")
    base = current_app.config["BASE_ADDRESS"]
    minutes = TRUST_MINUTES if trust_page else LINK_MINUTES
    link = make_link(database(), base, now, role=role, made_by=session.id, minutes=minutes)
    if trust_page:
        link = f"{trust_page}#{token_of(link)}"
    return json_answer(
        {
            "link": link,
            "role": role,
            "expires_at": now + minutes * 60_000,
            "qr": _rows(qr_matrix(link)),
        }
    )


def make_link(
    db: Database,
    base: str,
    now: int,
    *,
    role: str = roles.BENCH,
    made_by: int | None = None,
    minutes: int = LINK_MINUTES,
    uses: int = 1,
) -> str:
    """Returns a new pairing link; its token stands behind # and so never in a request line.

    The token names the role for whoever reads it; what counts is the role kept with its hash.
    """
    token = secrets.token_urlsafe(24)
    if role != roles.BENCH:
        token = f"{role}.{token}"
    with writing(db):
        db.conn.execute("DELETE FROM pairings WHERE expires_at <= ? OR uses_left = 0", [now])
        db.conn.execute(
            "INSERT INTO pairings (token_hash, role, made_by, made_at, expires_at, uses_left) "
            "VALUES (?, ?, ?, ?, ?, ?)",
            [sessions.token_hash(token), role, made_by, now, now + minutes * 60_000, uses],
        )
    return f"{base}/pair#{token}"


def token_of(link: str) -> str:
    """Returns the token of a pairing link."""
    return link.partition("#")[2]


def qr_matrix(link: str) -> list[list[bool]]:
    """Returns the QR symbol of a link without its margin."""
    symbol = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_M, border=0)
    symbol.add_data(link)
    symbol.make(fit=True)
    matrix: list[list[bool]] = symbol.get_matrix()
    return matrix


def _rows(matrix: list[list[bool]]) -> list[str]:
    return ["".join("1" if dark else "0" for dark in row) for row in matrix]


def _role_of(db: Database, token: str, now: int) -> str | None:
    """Returns as what a token would let a phone in; None where it is not good."""
    row = db.conn.execute(
        "SELECT role FROM pairings WHERE token_hash = ? AND expires_at > ? AND uses_left > 0",
        [sessions.token_hash(token), now],
    ).fetchone()
    return row[0] if row else None


def _use_up(db: Database, token: str, now: int) -> str | None:
    """Takes one use off a token that is still good and returns its role; inside a transaction."""
    row = db.conn.execute(
        "UPDATE pairings SET uses_left = uses_left - 1 "
        "WHERE token_hash = ? AND expires_at > ? AND uses_left > 0 RETURNING role",
        [sessions.token_hash(token), now],
    ).fetchone()
    return row[0] if row else None
