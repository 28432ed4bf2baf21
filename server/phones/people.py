"""Whose a phone is and who shares it, said from one of its entries on; what came before stays as it is.

The server's fold and every phone's go by these rows (`server/core/facts/whose.py`).
"""

import json

from sqlite_utils import Database

from server.core.errors import shorten
from server.folded.phones import of
from server.web.bodies import is_whole
from server.web.errors import BadRequest

MOST_PEOPLE = 20
LONGEST_NAME = 80

_NEXT = "1 + (SELECT coalesce(max(seq), 0) FROM events WHERE device = ?1)"


def checked_people(body: dict) -> list[str] | None:
    """Returns who shares the phone that sends a request; None where its app says nothing of it."""
    people = body.get("people")
    if people is None:
        return None
    if not isinstance(people, list) or len(people) > MOST_PEOPLE or not all(map(_is_name, people)):
        raise BadRequest("people", shorten(people), f"a list of at most {MOST_PEOPLE} names")
    return people


def note_owner(db: Database, device: str, role: str, name: str) -> None:
    """Notes in whose name and role a phone records from its next entry on; inside a transaction."""
    _note(db, device, role, name, [])


def note_people(db: Database, device: str, people: list[str]) -> None:
    """Notes who shares a phone with a certificate from its next entry on; inside a transaction."""
    known = of(db, device)
    if not known:
        return
    last = known[-1]
    others = [each for each in people if each != last["name"]]
    if last["people"] != others:
        _note(db, device, last["role"], last["name"], others)


def _note(db: Database, device: str, role: str, name: str, people: list[str]) -> None:
    # What was said since the last entry counts for none: so there are never more rows than entries.
    db.conn.execute(f"DELETE FROM phones WHERE device = ?1 AND from_seq = {_NEXT}", [device])
    db.conn.execute(
        f"INSERT INTO phones (device, role, name, people, from_seq) VALUES (?1, ?2, ?3, ?4, {_NEXT})",
        [device, role, name, json.dumps(people, ensure_ascii=False)],
    )


def _is_name(value: object) -> bool:
    return isinstance(value, str) and 0 < len(value) <= LONGEST_NAME and is_whole(value)
