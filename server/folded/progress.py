"""Moves the folded state on to the end of the log.

A correction counts from the start. One whose target is folded already has what follows from that folded
again first, now without it or with what it should have said (`ahead`).
"""

import json

from sqlite_utils import Database

from server.core.facts.corrections import Corrections
from server.core.log import envelope
from server.folded import corrections
from server.folded.ahead import Ahead
from server.folded.rows import Mark
from server.folded.rows import Rows
from server.folded.state import FoldedState
from server.folded.version import fold_version
from server.storage import at_one_moment
from server.storage import writing

CACHES = (
    "folded",
    "folded_again",
    "folded_asked",
    "folded_links",
    "folded_links_before",
    "folded_mark",
    "withdrawn",
    "righted",
    "job_list",
    "job_cache",
    "unit_cache",
    "search",
    "lessons",
)

_AT_ONCE = 4096  # entries folded before they are written
_ALL = 1 << 62


def in_step(db: Database) -> bool:
    """Tells whether the state is this fold's and reaches to the end of the log."""
    mark = Rows(db).mark()
    return mark.version == fold_version() and mark.upto == _last(db)


def advance(db: Database, most: int) -> bool:
    """Folds up to about `most` entries; tells whether the state is in step with the log then.

    Called inside a transaction. Where a correction makes more to fold again, that is left to `catch_up`.
    """
    mark = _begin(db)
    ahead = Ahead(db)
    if not ahead.again(_to_fold_again(db), mark.upto, most):
        return False
    _keep(db, ahead, mark)
    last = _last(db)
    target = min(last, mark.upto + most)
    while mark.upto < target:
        mark = _forward(db, mark, target)
    return mark.upto == last


def catch_up(db: Database) -> None:
    """Folds to the end of the log what taking entries in has left.

    That is much where the core's fold has changed, or where much follows from an old entry that was
    corrected. Nobody who writes waits for it: the write lock is held only while what came out is written.
    """
    while not in_step(db):
        with writing(db):
            mark = _begin(db)
        ahead = Ahead(db)
        with at_one_moment(db):
            now = mark
            if entries := _to_fold_again(db):
                ahead.again(entries, mark.upto, _ALL)
            else:
                now = mark._replace(upto=min(_last(db), mark.upto + _AT_ONCE))
                ahead.forward(mark.upto, now.upto)
        with writing(db):
            if Rows(db).mark() == mark:  # else somebody else was quicker
                _keep(db, ahead, now)


def beyond(db: Database, state: FoldedState, most: int) -> bool:
    """Folds what is left of the log into `state` alone, where it cannot be kept; False if too much is.

    A correction of what is folded already waits until it can be kept: that needs the way back.
    """
    mark = Rows(db).mark()
    rows = db.conn.execute(
        "SELECT n, body FROM events WHERE n > ? ORDER BY n LIMIT ?", [mark.upto, most + 1]
    ).fetchall()
    if mark.version != fold_version() or len(rows) > most:
        return False
    left = [(n, json.loads(body)) for n, body in rows]
    noted = Corrections()
    noted.note([event for _, event in left])
    for n, event in left:
        state.fold(n, event, *noted.of(envelope.identity(event)))
    return True


def forget(db: Database) -> None:
    """Drops every cache; called inside a transaction."""
    for table in CACHES:
        db.conn.execute(f"DELETE FROM {table}")


def _begin(db: Database) -> Mark:
    """Notes the corrections not seen yet, and which entries folded before they name; returns the mark."""
    rows = Rows(db)
    mark = rows.mark()
    if mark.version != fold_version():
        forget(db)
        mark = Mark(fold_version(), 0, 0)
    last = _last(db)
    if mark.corrections < last or mark.upto == 0:
        named = [(n,) for n in corrections.note(rows.conn, mark.corrections) if n <= mark.upto]
        db.conn.executemany("INSERT OR IGNORE INTO folded_again VALUES (?)", named)
        mark = mark._replace(corrections=last)
        rows.set_mark(mark)
    return mark


def _to_fold_again(db: Database) -> list[int]:
    return [n for (n,) in db.conn.execute("SELECT n FROM folded_again")]


def _forward(db: Database, mark: Mark, target: int) -> Mark:
    """Folds a part of the log that is not too much to have in memory, and writes it."""
    now = mark._replace(upto=min(target, mark.upto + _AT_ONCE))
    ahead = Ahead(db)
    ahead.forward(mark.upto, now.upto)
    _keep(db, ahead, now)
    return now


def _keep(db: Database, ahead: Ahead, mark: Mark) -> None:
    """Writes what came out; called inside a transaction."""
    ahead.write()
    db.conn.execute("DELETE FROM folded_again")
    Rows(db).set_mark(mark)


def _last(db: Database) -> int:
    last: int = db.conn.execute("SELECT coalesce(max(n), 0) FROM events").fetchone()[0]
    return last
