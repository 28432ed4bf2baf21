"""What each job contributes, kept in a table: only what has changed since is worked out again.

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
from server.lessons.spans import right_from
from server.storage import at_one_moment
from server.storage import writing_cache

_SERVER = Path(__file__).resolve().parents[1]
_AT_ONCE = 50  # jobs worked out before they are written

_WANTING = (
    "SELECT job FROM job_list WHERE job NOT IN (SELECT job FROM lessons WHERE version = ?) ORDER BY job"
)
_RECEIVED = "SELECT received_at FROM events WHERE job = ? AND kind = 'job_closed' ORDER BY n DESC LIMIT 1"
_DIGESTS = "SELECT job, digest FROM lessons WHERE version = ?"


class Kept(NamedTuple):
    """A contribution as it was read, and from which moment on its clock may have been right."""

    digest: str
    said: dict[str, Any]
    right_from: float


Held = dict[str, Kept]
"""By job."""


def refresh(db: Database, held: Held, seconds: float | None = None) -> int:
    """Makes `held` what every job contributes; returns how many jobs are not worked out yet.

    Works for about so many seconds at most, without a bound until nothing is left. What has not changed stays
    the very same object.
    """
    end = None if seconds is None else time.monotonic() + seconds
    is_late = False
    while True:
        folded.catch_up(db)
        with at_one_moment(db):
            mark = _mark(db)
            digests = dict(db.conn.execute(_DIGESTS, [version()]).fetchall())
            wanting = [job for (job,) in db.conn.execute(_WANTING, [version()]).fetchall()]
            _hold(db, held, digests)
            fresh = [_worked_out(db, job) for job in wanting[: 0 if is_late else _AT_ONCE]]
        if fresh and _keep(db, mark, fresh):
            held |= {job: _kept(digest, body) for job, digest, body in fresh}
            if len(fresh) == len(wanting):
                return 0
        if not fresh:
            return len(wanting)
        is_late = end is not None and time.monotonic() >= end


def _hold(db: Database, held: Held, digests: dict[str, str]) -> None:
    """Lets go of what is not there any more, and reads what is there by now."""
    for job in [job for job, each in held.items() if digests.get(job) != each.digest]:
        del held[job]
    for job in sorted(digests.keys() - held.keys()):
        (body,) = db.conn.execute("SELECT body FROM lessons WHERE job = ?", [job]).fetchone()
        held[job] = _kept(digests[job], body)


def _kept(digest: str, body: str) -> Kept:
    said: dict[str, Any] = {name: _fixed(value) for name, value in json.loads(body).items()}
    closed = said["opened"] if said["closed"] is None else said["closed"]
    return Kept(digest, said, right_from(said["opened"], closed))


def _fixed(value: Any) -> Any:
    """Returns lists as tuples: a full garbage collection passes over tuples of plain values.

    Of the lists of a thousand jobs it took half of a look that came upon it.
    """
    return tuple(_fixed(each) for each in value) if isinstance(value, list) else value


@cache
def version() -> str:
    """Returns the hash of all that a contribution follows from: the core, and this room."""
    digest = hashlib.sha256()
    for room in ("core", "lessons"):
        for file in sorted((_SERVER / room).rglob("*.py")):
            digest.update(f"{file.relative_to(_SERVER).as_posix()}\n".encode() + file.read_bytes())
    return digest.hexdigest()


def _keep(db: Database, mark: list[Any], fresh: list[tuple[str, str, str]]) -> bool:
    """Keeps what jobs contribute, unless the state has changed meanwhile, and a job with it."""
    with writing_cache(db):
        is_same = _mark(db) == mark
        if is_same:
            db.conn.executemany(
                "INSERT OR REPLACE INTO lessons (job, version, digest, body) VALUES (?, ?, ?, ?)",
                [[job, version(), digest, body] for job, digest, body in fresh],
            )
    return is_same


def _mark(db: Database) -> list[Any]:
    return db.conn.execute("SELECT version, upto, corrections FROM folded_mark").fetchall()


def _worked_out(db: Database, job: str) -> tuple[str, str, str]:
    """Returns a job, the digest of what it contributes, and that as JSON."""
    state = FoldedState(db)
    state.focus(job)
    state.add_history(job)
    known = known_job(state, job)
    if not known.is_closed():
        said = contribution.of_open_job(known)
    else:
        (received,) = db.conn.execute(_RECEIVED, [job]).fetchone()
        said = contribution.of_job(known) | {"received": received}
    body = json.dumps(said, separators=(",", ":"))
    return job, hashlib.sha256(body.encode()).hexdigest(), body
