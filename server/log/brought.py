"""What phones brought without proof: the list of it, and the ways to accept it or to set it aside.

Whoever accepts answers for it, so only phones of the role that records such entries may. What a phone with a
key of its own recorded is not accepted by anybody: that phone can prove it, or is to be put out first.
"""

import json
from collections import Counter
from typing import NamedTuple

from flask import Blueprint
from flask import Response
from sqlite_utils import Database

from server.clock import now_ms
from server.core.facts import roles
from server.core.messages import message
from server.log import events
from server.news.board import board
from server.phones import certificates
from server.phones import devices
from server.phones.sessions import Session
from server.phones.sessions import require_session
from server.storage import writing
from server.web.answers import json_answer
from server.web.bodies import json_object
from server.web.bodies import whole_field
from server.web.database import database
from server.web.errors import NotAllowed

blueprint = Blueprint("brought", __name__)

MOST_BYTES = 4096
MOST_LINES = 50  # of one bringer; those behind come once these are decided
_OF_ONE = "device = ? AND coalesce(brought_by, 0) = ? AND set_aside_at IS NULL"


class _Chain(NamedTuple):
    """What one phone, `name`, brought of one device: its first entry, and how many."""

    device: str
    by: int
    name: str
    at: int
    first: dict
    entries: int


@blueprint.get("/api/brought")
def brought() -> Response:
    """Lists what a phone of the asker's role may accept: one line a device and bringer."""
    asker = require_session()
    db = database()
    return json_answer({"brought": [_line(db, chain) for chain in _chains(db, asker.role)]})


@blueprint.post("/api/brought/<device>/accept")
def accept(device: str) -> Response:
    """Takes what was brought of a device into the log, as far as the asker's role records such entries."""
    asker = require_session()
    by = whole_field(json_object(MOST_BYTES), "by")
    db, now = database(), now_ms()
    with writing(db):
        if certificates.of(db, device):
            raise NotAllowed("device", device, "a phone without a key", message("server-brought-bound"))
        entries = _entries(db, device, by, asker)
        receipt = events.take_in(db, entries, asker.id, now, asker.role, accepted=True)
    if receipt.stored:
        jobs = {entry["event"]["job"] for entry in entries}
        board().entries_came({job for job in jobs if isinstance(job, str)}, asker.id)
    return json_answer({"accepted": receipt.stored, "refused": receipt.refused})


@blueprint.post("/api/brought/<device>/set-aside")
def set_aside(device: str) -> Response:
    """Puts what was brought of a device out of the list; it stays on record."""
    asker = require_session()
    by = whole_field(json_object(MOST_BYTES), "by")
    db = database()
    with writing(db):
        if _entries(db, device, by, asker):
            db.conn.execute(f"UPDATE unproven SET set_aside_at = ? WHERE {_OF_ONE}", [now_ms(), device, by])
    return json_answer({"set_aside": True})


def _chains(db: Database, role: str) -> list[_Chain]:
    """Returns the chains that a phone of a role may accept: of each bringer few enough to hide no other's."""
    rows = db.conn.execute(
        "SELECT device, coalesce(brought_by, 0), coalesce(name, ''), at, body, entries FROM ("
        "SELECT *, row_number() OVER chain AS place, "
        "count(*) OVER (PARTITION BY device, brought_by) AS entries FROM unproven WHERE set_aside_at IS NULL "
        "WINDOW chain AS (PARTITION BY device, brought_by ORDER BY seq, unproven.id)) AS waiting "
        "LEFT JOIN sessions ON sessions.id = brought_by WHERE place = 1 ORDER BY device, brought_by"
    )
    chains: list[_Chain] = []
    shown: Counter[int] = Counter()
    for device, by, name, at, body, entries in rows:
        first = json.loads(body)
        if shown[by] < MOST_LINES and roles.against(role, first) is None:
            shown[by] += 1
            chains.append(_Chain(device, by, name, at, first, entries))
    return chains


def _line(db: Database, chain: _Chain) -> dict:
    (last,) = db.conn.execute(
        f"SELECT body FROM unproven WHERE {_OF_ONE} ORDER BY seq DESC, id DESC LIMIT 1",
        [chain.device, chain.by],
    ).fetchone()
    return {
        "device": chain.device,
        "by": chain.by,
        "brought_by": chain.name,
        "brought_at": chain.at,
        "entries": chain.entries,
        "actor": chain.first["actor"],
        "first_at": chain.first["at"],
        "last_at": json.loads(last)["at"],
    }


def _entries(db: Database, device: str, by: int, asker: Session) -> list[dict]:
    """Returns the entries of a chain as /api/sync takes them; refuses one that is not for the asker."""
    if not devices.is_id(device):
        return []
    rows = db.conn.execute(
        f"SELECT hash, body FROM unproven WHERE {_OF_ONE} ORDER BY seq, id", [device, by]
    ).fetchall()
    entries = [{"event": json.loads(body), "hash": digest, "relayed": True} for digest, body in rows]
    if entries and (why := roles.against(asker.role, entries[0]["event"])):
        raise NotAllowed("role", asker.role, "the other role", why)
    return entries
