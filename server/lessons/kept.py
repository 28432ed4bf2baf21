"""What each closed job contributes, kept in a table: only what has changed since is worked out again.

The folded state takes a job's row away when the job, its vehicle or a unit of it changes (`folded/rows.py`);
another version of the core or of this room makes all rows worthless. All of it is a cache.
"""

import hashlib
import json
import time
from functools import cache
from pathlib import Path
from typing import Any

from sqlite_utils import Database

from server import folded
from server.core.state.job import known_job
from server.folded import FoldedState
from server.lessons import contribution
from server.storage import at_one_moment
from server.storage import writing_cache

_SERVER = Path(__file__).resolve().parents[1]
_AT_ONCE = 50  # jobs worked out before they are written

_WANTING = (
    "SELECT job FROM job_list LEFT JOIN lessons USING (job) "
    "WHERE closed AND lessons.version IS NOT ? ORDER BY job LIMIT ?"
)


def contributions(db: Database, seconds: float | None = None) -> tuple[list[dict[str, Any]], int]:
    """Returns what every closed job contributes, and how many jobs are not worked out yet.

    Works for about so many seconds at most, without a bound until nothing is left.
    """
    end = None if seconds is None else time.monotonic() + seconds
    while _work_out(db) and (end is None or time.monotonic() < end):
        pass
    rows = db.conn.execute(
        "SELECT body FROM lessons JOIN job_list USING (job) WHERE closed AND version = ? ORDER BY job",
        [version()],
    ).fetchall()
    (closed,) = db.conn.execute("SELECT count(*) FROM job_list WHERE closed").fetchone()
    return [json.loads(body) for (body,) in rows], closed - len(rows)


@cache
def version() -> str:
    """Returns the hash of all that a contribution follows from: the core, and this room."""
    digest = hashlib.sha256()
    for room in ("core", "lessons"):
        for file in sorted((_SERVER / room).rglob("*.py")):
            digest.update(f"{file.relative_to(_SERVER).as_posix()}\n".encode() + file.read_bytes())
    return digest.hexdigest()


def _work_out(db: Database) -> bool:
    """Works out some of the jobs that are wanting; tells whether there may be more."""
    folded.catch_up(db)
    with at_one_moment(db):
        mark = _mark(db)
        wanting = [job for (job,) in db.conn.execute(_WANTING, [version(), _AT_ONCE])]
        rows = [[job, version(), _body(db, job)] for job in wanting]
    if not rows:
        return False
    with writing_cache(db):
        if _mark(db) == mark:  # else a job may have changed meanwhile: once more
            db.conn.executemany("INSERT OR REPLACE INTO lessons (job, version, body) VALUES (?, ?, ?)", rows)
    return True


def _mark(db: Database) -> list[Any]:
    return db.conn.execute("SELECT version, upto, corrections FROM folded_mark").fetchall()


def _body(db: Database, job: str) -> str:
    state = FoldedState(db)
    state.focus(job)
    state.add_history(job)
    return json.dumps(contribution.of_job(known_job(state, job)), separators=(",", ":"))
