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
MOST_SET_ASIDE = 20  # what was set aside last
_OF_ONE = "device = ? AND coalesce(brought_by, 0) = ? AND set_aside_at IS ?"


class _Chain(NamedTuple):
    """What one phone, `name`, brought of one device: its first entry, how many, and since when set aside."""

    device: str
    by: int
    name: str
    at: int
    first: dict
    entries: int
    aside_at: int | None


@blueprint.get("/api/brought")
def brought() -> Response:
    """Lists what a phone of the asker's role may accept: one line a device and bringer, few of each bringer.

    Beside them how much waits of each bringer in all, and what was set aside, which can be taken back.
    """
    asker = require_session()
    db = database()
    waiting, shown, lines = _chains(db, asker.role), Counter[int](), []
    for chain in waiting:
        if shown[chain.by] < MOST_LINES:
            shown[chain.by] += 1
            lines.append(_line(db, chain))
    aside = sorted(_together(_chains(db, asker.role, is_aside=True)), key=lambda each: -each["at"])
    return json_answer(
        {"brought": lines, "bringers": _together(waiting), "set_aside": aside[:MOST_SET_ASIDE]}
    )


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
            _move(db, [(device, by)], None, now_ms())
    return json_answer({"set_aside": True})


@blueprint.post("/api/brought/set-aside")
def set_all_aside() -> Response:
    """Puts all that waits of a bringer out of the list, as far as the asker's role records such entries."""
    asker = require_session()
    by = whole_field(json_object(MOST_BYTES), "by")
    db = database()
    with writing(db):
        chains = [chain for chain in _chains(db, asker.role) if chain.by == by]
        _move(db, [(chain.device, by) for chain in chains], None, now_ms())
    return json_answer({"set_aside": sum(chain.entries for chain in chains)})


@blueprint.post("/api/brought/take-back")
def take_back() -> Response:
    """Puts what was set aside of a bringer at one time into the list again."""
    asker = require_session()
    body = json_object(MOST_BYTES)
    by, at = whole_field(body, "by"), whole_field(body, "at")
    db = database()
    with writing(db):
        aside = _chains(db, asker.role, is_aside=True)
        chains = [chain for chain in aside if (chain.by, chain.aside_at) == (by, at)]
        _move(db, [(chain.device, by) for chain in chains], at, None)
    return json_answer({"taken_back": sum(chain.entries for chain in chains)})


def _move(db: Database, chains: list[tuple[str, int]], from_at: int | None, to_at: int | None) -> None:
    """Sets chains aside, or back: from one time, None is not set aside, to another."""
    db.conn.executemany(
        f"UPDATE unproven SET set_aside_at = ? WHERE {_OF_ONE}",
        [(to_at, device, by, from_at) for device, by in chains],
    )


def _chains(db: Database, role: str, *, is_aside: bool = False) -> list[_Chain]:
    """Returns the chains that a phone of a role may accept, those that wait or those that were set aside."""
    rows = db.conn.execute(
        "WITH chains AS (SELECT id, count(*) OVER chain AS entries, row_number() OVER "
        "(PARTITION BY device, brought_by, set_aside_at ORDER BY seq, id) AS place "
        "FROM unproven WHERE (set_aside_at IS NOT NULL) = ? "
        "WINDOW chain AS (PARTITION BY device, brought_by, set_aside_at)) "
        "SELECT device, coalesce(brought_by, 0), coalesce(name, ''), at, body, entries, set_aside_at "
        "FROM chains JOIN unproven USING (id) LEFT JOIN sessions ON sessions.id = brought_by "
        "WHERE place = 1 ORDER BY device, brought_by, set_aside_at",
        [is_aside],
    )
    chains = (
        _Chain(device, by, name, at, json.loads(body), entries, aside_at)
        for device, by, name, at, body, entries, aside_at in rows
    )
    return [chain for chain in chains if roles.against(role, chain.first) is None]


def _together(chains: list[_Chain]) -> list[dict]:
    """Returns how many devices and entries chains hold, by bringer and by when they were set aside."""
    together: dict[tuple, list[_Chain]] = {}
    for chain in chains:
        together.setdefault((chain.by, chain.aside_at), []).append(chain)
    return [
        {
            "by": by,
            "brought_by": some[0].name,
            "at": at,
            "devices": len(some),
            "entries": sum(chain.entries for chain in some),
        }
        for (by, at), some in together.items()
    ]


def _line(db: Database, chain: _Chain) -> dict:
    (last,) = db.conn.execute(
        f"SELECT body FROM unproven WHERE {_OF_ONE} ORDER BY seq DESC, id DESC LIMIT 1",
        [chain.device, chain.by, None],
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
        f"SELECT hash, body FROM unproven WHERE {_OF_ONE} ORDER BY seq, id", [device, by, None]
    ).fetchall()
    entries = [{"event": json.loads(body), "hash": digest, "relayed": True} for digest, body in rows]
    if entries and (why := roles.against(asker.role, entries[0]["event"])):
        raise NotAllowed("role", asker.role, "the other role", why)
    return entries
