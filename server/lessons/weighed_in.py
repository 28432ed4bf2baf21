"""Figures of other yards that count here, each with the weight that somebody gave it, until it is taken out.

One file of each yard: a newer one replaces it. A seal is trusted as that of a record is, once a person has
compared its fingerprint with its owner (`keeping/record/makers`).
"""

import json
from typing import Any
from typing import NamedTuple

from sqlite_utils import Database

from server.core.messages import all_of
from server.core.messages import message
from server.core.messages import sentences
from server.keeping.record.makers import confirmed
from server.keeping.record.makers import meet
from server.lessons.given import Given
from server.lessons.said import Said
from server.phones.signing import Signer
from server.phones.signing import fingerprint
from server.refusals import CommandRefused
from server.storage import writing

NEW, REPLACED, WEIGHED_ANEW = "new", "replaced", "weighed_anew"
_HUNDRED = 100


class Unconfirmed(CommandRefused):
    """Nobody has confirmed whose seal a file has."""

    def __init__(self, key: str):
        """Names the seal."""
        self.fingerprint = fingerprint(key)
        super().__init__(message("lessons-seal-unconfirmed", key=self.fingerprint))


class Yard(NamedTuple):
    """A yard whose figures count here."""

    fingerprint: str
    name: str
    weight: int  # in hundredths
    jobs: int
    first: str
    last: str


def weight_of(typed: str) -> int:
    """Returns a weight in hundredths as it was typed, 0.01 to 1."""
    try:
        weight = float(typed.replace(",", "."))
    except ValueError:
        weight = 0.0
    if not typed.strip():
        raise CommandRefused(message("lessons-weight-missing"))
    if not 0.01 <= weight <= 1.0:  # which NaN is not either
        raise CommandRefused(message("lessons-weight-wanted", weight=typed[:20]))
    return int(weight * _HUNDRED + 0.5)


def weigh_in(db: Database, given: Given, weight: int, own: Signer, now: int) -> tuple[str, Yard]:
    """Lets a yard's figures count with a weight; returns NEW, REPLACED or WEIGHED_ANEW, and the yard."""
    if given.key == own.key:
        raise CommandRefused(message("lessons-given-own"))
    meet(db, given.key, own, now)
    if confirmed(db, given.key) is None:
        raise Unconfirmed(given.key)
    with writing(db):
        row = db.conn.execute("SELECT number, body FROM lessons_given WHERE key = ?", [given.key]).fetchone()
        if row and row[0] > given.number:
            raise CommandRefused(message("lessons-given-older"))
        body = json.dumps(given._asdict(), separators=(",", ":"))
        db.conn.execute(
            "INSERT OR REPLACE INTO lessons_given (key, number, weight, weighed_at, body) "
            "VALUES (?, ?, ?, ?, ?)",
            [given.key, given.number, weight, now, body],
        )
    outcome = REPLACED if row else NEW
    if row and row[1] == body:  # a yard that came back from a backup gives other figures under an old number
        outcome = WEIGHED_ANEW
    return outcome, next(yard for key, yard in _all(db) if key == given.key)


def take_out(db: Database, shown: str) -> Yard:
    """Lets the figures of the yard with this fingerprint, or name, count no more.

    Capitals, blanks and hyphens make no difference: a seal is typed as it was read out.
    """
    wanted, counting = _plain(shown), _all(db)
    meant = [each for each in counting if wanted in {_plain(each[1].fingerprint), _plain(each[1].name)}]
    if len(meant) > 1:
        raise CommandRefused(message("lessons-yards-alike", yard=shown.strip()[:80]))
    for key, yard in meant:
        with writing(db):
            db.conn.execute("DELETE FROM lessons_given WHERE key = ?", [key])
        return yard
    says = [message("lessons-no-such-yard", yard=shown.strip()[:80])]
    if counting:
        names = sorted({yard.name for _, yard in counting})
        says.append(message("lessons-yards-count", yards=all_of(names)))
    raise CommandRefused(sentences(says))


def _plain(shown: str) -> str:
    return "".join(shown.split()).replace("-", "").casefold()


def yards(db: Database) -> list[Yard]:
    """Returns the yards whose figures count here, in the order in which they came."""
    return [yard for _, yard in _all(db)]


def others(db: Database) -> Said:
    """Returns what the figures of other yards say, each job of theirs for as much as it weighs."""
    said = Said()
    for weight, body in db.conn.execute("SELECT weight, body FROM lessons_given ORDER BY key").fetchall():
        given = json.loads(body)
        said.add(given["figures"], given["jobs"], weight / _HUNDRED)
    return said


def mark(db: Database) -> tuple:
    """Returns what differs once other figures count, or with another weight."""
    rows = db.conn.execute("SELECT key, number, weight, weighed_at FROM lessons_given ORDER BY key")
    return tuple(rows.fetchall())


def _all(db: Database) -> list[tuple[str, Yard]]:
    found: list[tuple[str, Yard]] = []
    rows = db.conn.execute("SELECT key, weight, body FROM lessons_given ORDER BY weighed_at, key").fetchall()
    for key, weight, body in rows:
        given: dict[str, Any] = json.loads(body)
        known = confirmed(db, key) or {"name": ""}
        yard = Yard(fingerprint(key), known["name"], weight, given["jobs"], given["first"], given["last"])
        found.append((key, yard))
    return found
