"""Moves the folded state on to the end of the log, a bucket at a time.

A correction counts from the start. One whose target is folded already takes the state back to
before it and forward again, now without it or with what it should have said.
"""

import json

from sqlite_utils import Database

from server.core.facts.corrections import Corrections
from server.core.log import envelope
from server.folded import corrections
from server.folded.rows import BUCKET
from server.folded.rows import GROUP
from server.folded.rows import Mark
from server.folded.rows import Rows
from server.folded.rows import bucket_of
from server.folded.state import FoldedState
from server.folded.version import fold_version

CACHES = (
    "folded",
    "folded_links",
    "folded_mark",
    "withdrawn",
    "righted",
    "job_list",
    "job_cache",
    "unit_cache",
    "search",
)


def in_step(db: Database) -> bool:
    """Tells whether the state is this fold's and reaches to the end of the log."""
    mark = Rows(db).mark()
    last = db.conn.execute("SELECT coalesce(max(n), 0) FROM events").fetchone()[0]
    return mark.version == fold_version() and mark.upto == last


def advance(db: Database, most: int) -> bool:
    """Folds up to about `most` events; tells whether the state is in step with the log then.

    Called inside a transaction.
    """
    rows = Rows(db)
    mark = rows.mark()
    if mark.version != fold_version():
        forget(db)
        mark = Mark(fold_version(), 0, 0, 0)
    last: int = db.conn.execute("SELECT coalesce(max(n), 0) FROM events").fetchone()[0]
    mark = _note_corrections(rows, mark, last)
    target = min(last, mark.upto + most)
    while mark.upto < target:
        stop = min(last, bucket_of(mark.upto + 1) * BUCKET)
        fine_from = max(mark.fine_from, (bucket_of(stop) - 1) // GROUP * GROUP - GROUP)
        mark = mark._replace(fine_from=fine_from)
        _fold(db, mark, stop)
        mark = mark._replace(upto=stop)
    rows.set_mark(mark)
    return mark.upto == last


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


def _fold(db: Database, mark: Mark, stop: int) -> None:
    state = FoldedState(db)
    for entry in corrections.entries(db.conn, "n > ? AND n <= ?", [mark.upto, stop]):
        state.fold(*entry)
    state.save(bucket_of(stop), mark.fine_from)


def _note_corrections(rows: Rows, mark: Mark, last: int) -> Mark:
    """Notes what corrections not seen yet say, and goes back before the first entry that they name."""
    first = corrections.note(rows.conn, mark.corrections)
    if first is not None and first <= mark.upto:
        mark = rows.go_back(mark, first)
    return mark._replace(corrections=last)
