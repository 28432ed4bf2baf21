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
from typing import NamedTuple

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
    "SELECT job FROM job_list WHERE closed AND job NOT IN (SELECT job FROM lessons WHERE version = ?) "
    "ORDER BY job LIMIT ?"
)


class Kept(NamedTuple):
    """A contribution as it was read."""

    digest: str
    said: dict[str, Any]


Held = dict[str, Kept]
"""By job, in order of it."""


def refresh(db: Database, held: Held, seconds: float | None = None) -> int:
    """Makes `held` what every closed job contributes; returns how many jobs are not worked out yet.

    Works for about so many seconds at most, without a bound until nothing is left. What has not changed stays
    the very same object.
    """
    end = None if seconds is None else time.monotonic() + seconds
    while _work_out(db) and (end is None or time.monotonic() < end):
        pass
    with at_one_moment(db):
        closed = {job for (job,) in db.conn.execute("SELECT job FROM job_list WHERE closed")}
        rows = db.conn.execute("SELECT job, digest FROM lessons WHERE version = ? ORDER BY job", [version()])
        digests = {job: digest for job, digest in rows.fetchall() if job in closed}
        known = dict(held)
        held.clear()
        for job, digest in digests.items():
            before = known.get(job)
            held[job] = before if before and before.digest == digest else _read(db, job, digest)
    return len(closed) - len(held)


def _read(db: Database, job: str, digest: str) -> Kept:
    (body,) = db.conn.execute("SELECT body FROM lessons WHERE job = ?", [job]).fetchone()
    return Kept(digest, json.loads(body))


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
        bodies = [(job, _body(db, job)) for job in wanting]
        rows = [[job, version(), _digest(body), body] for job, body in bodies]
    if not rows:
        return False
    with writing_cache(db):
        if _mark(db) == mark:  # else a job may have changed meanwhile: once more
            db.conn.executemany(
                "INSERT OR REPLACE INTO lessons (job, version, digest, body) VALUES (?, ?, ?, ?)", rows
            )
    return True


def _mark(db: Database) -> list[Any]:
    return db.conn.execute("SELECT version, upto, corrections FROM folded_mark").fetchall()


def _body(db: Database, job: str) -> str:
    state = FoldedState(db)
    state.focus(job)
    state.add_history(job)
    return json.dumps(contribution.of_job(known_job(state, job)), separators=(",", ":"))


def _digest(body: str) -> str:
    return hashlib.sha256(body.encode()).hexdigest()
