"""Moves the folded state on to the end of the log, a bucket at a time.

A correction counts from the start. One whose target is folded already takes the state back to
before it and forward again, now without it.
"""

import json

from sqlite_utils import Database

from server.core.facts.kinds import KINDS
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
    withdrawn = {}
    for _, event in left:
        data = event["data"]
        if event["kind"] == "corrected" and not KINDS["corrected"].problem(data):
            withdrawn[data["device"], data["seq"]] = {"actor": event["actor"], "reason": data["reason"]}
    for n, event in left:
        state.fold(n, event, withdrawn.get((event["device"], event["seq"])))
    return True


def forget(db: Database) -> None:
    """Drops every cache; called inside a transaction."""
    for table in CACHES:
        db.conn.execute(f"DELETE FROM {table}")


def _fold(db: Database, mark: Mark, stop: int) -> None:
    state = FoldedState(db)
    events = db.conn.execute(
        "SELECT n, body, withdrawn.actor, withdrawn.reason FROM events "
        "LEFT JOIN withdrawn USING (device, seq) WHERE n > ? AND n <= ? ORDER BY n",
        [mark.upto, stop],
    )
    for n, body, actor, reason in events:
        state.fold(n, json.loads(body), None if reason is None else {"actor": actor, "reason": reason})
    state.save(bucket_of(stop), mark.fine_from)


def _note_corrections(rows: Rows, mark: Mark, last: int) -> Mark:
    """Notes what corrections not seen yet take back, and goes back before the first of it."""
    corrections = rows.conn.execute(
        "SELECT body FROM events WHERE kind = 'corrected' AND n > ? ORDER BY n", [mark.corrections]
    ).fetchall()
    first = last + 1
    for (body,) in corrections:
        event = json.loads(body)
        data = event["data"]
        if KINDS["corrected"].problem(data):
            continue
        target = [data["device"], data["seq"]]
        rows.conn.execute(
            "INSERT OR REPLACE INTO withdrawn VALUES (?, ?, ?, ?)", [*target, event["actor"], data["reason"]]
        )
        row = rows.conn.execute("SELECT n FROM events WHERE device = ? AND seq = ?", target).fetchone()
        first = min(first, row[0]) if row else first
    if first <= mark.upto:
        mark = rows.go_back(mark, first)
    return mark._replace(corrections=last)
