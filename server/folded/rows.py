"""The rows of the folded state: an entity's newest version, and older ones to go back to.

A correction makes an old event count for nothing, so what was folded after it has to be folded
again. For that each entity has at most one row a bucket of events: deleting the rows of later
buckets leaves the whole state as it was at the end of a bucket. Of old buckets only one in many
keeps its rows; going back there means a longer way forward again.
"""

import json
from typing import NamedTuple

from sqlite_utils import Database

from server.core.facts.returns import open_return
from server.core.words.words import DAY_MS
from server.folded.search import SearchIndex

BUCKET = 1024  # events; going back costs at most so many more than have come since
GROUP = 64  # buckets; of older ones only each group's last row is kept

_NEWEST = "SELECT body FROM folded WHERE kind = ? AND id = ? ORDER BY bucket DESC LIMIT 1"


class Mark(NamedTuple):
    """How far the log is folded, its corrections are noted, and from which bucket all rows are kept."""

    version: str
    upto: int
    corrections: int
    fine_from: int


def bucket_of(n: int) -> int:
    """Returns the bucket of an event; bucket `b` ends with event `b * BUCKET`."""
    return -(-n // BUCKET)


class Rows:
    """The folded state as rows of one connection."""

    def __init__(self, db: Database):
        """Reads and writes through `db`, inside whatever transaction its caller has open."""
        self.conn = db.conn
        self._search = SearchIndex(self.conn, self.read)

    def mark(self) -> Mark:
        """Returns how far the state is."""
        row = self.conn.execute("SELECT version, upto, corrections, fine_from FROM folded_mark").fetchone()
        return Mark(*row) if row else Mark("", 0, 0, 0)

    def set_mark(self, mark: Mark) -> None:
        """Keeps how far the state is."""
        self.conn.execute("INSERT OR REPLACE INTO folded_mark VALUES (1, ?, ?, ?, ?)", mark)

    def read(self, kind: str, name: str) -> str | None:
        """Returns an entity as JSON text, or None."""
        row = self.conn.execute(_NEWEST, [kind, name]).fetchone()
        return row[0] if row and row[0] != "null" else None

    def linked(self, link: str) -> list[str]:
        """Returns the entities under a link, in order of id."""
        return [name for (name,) in self.conn.execute("SELECT id FROM folded_links WHERE link = ?", [link])]

    def write(self, kind: str, name: str, old: str | None, new: str, bucket: int, fine_from: int) -> None:
        """Keeps an entity as it stands in a bucket; `old` is what was read of it before."""
        self.conn.execute("INSERT OR REPLACE INTO folded VALUES (?, ?, ?, ?)", [kind, name, bucket, new])
        self.conn.execute(
            "DELETE FROM folded WHERE kind = ? AND id = ? AND bucket <= ? AND EXISTS ("
            " SELECT 1 FROM folded AS later WHERE later.kind = folded.kind AND later.id = folded.id"
            " AND later.bucket > folded.bucket AND (later.bucket - 1) / ? = (folded.bucket - 1) / ?)",
            [kind, name, fine_from, GROUP, GROUP],
        )
        self._relink(kind, name, old, new)

    def go_back(self, mark: Mark, before: int) -> Mark:
        """Takes the state back to the end of a bucket before event `before`."""
        bucket = (before - 1) // BUCKET
        if bucket < mark.fine_from:
            bucket -= bucket % GROUP
        later = self.conn.execute(
            "SELECT DISTINCT kind, id FROM folded WHERE bucket > ?", [bucket]
        ).fetchall()
        newest = {each: self.read(*each) for each in later}
        self.conn.execute("DELETE FROM folded WHERE bucket > ?", [bucket])
        for (kind, name), old in newest.items():
            new = self.read(kind, name)
            self._relink(kind, name, old, new)
            self.stale(jobs_shown_by(kind, name, old, new))
            if kind == "job":
                self.list_job(name, json.loads(new) if new else None)
        return mark._replace(upto=min(mark.upto, bucket * BUCKET))

    def list_job(self, name: str, job: dict | None) -> None:
        """Puts a job where it belongs in the list, or takes it off."""
        if job is None:
            self.conn.execute("DELETE FROM job_list WHERE job = ?", [name])
            return
        self.conn.execute(
            "INSERT INTO job_list (job, closed, opened_at) VALUES (?, ?, ?) "
            "ON CONFLICT DO UPDATE SET closed = excluded.closed, opened_at = excluded.opened_at",
            [name, job["closed"] is not None, job["opened_at"]],
        )

    def stale(self, jobs: set[str]) -> None:
        """Marks the lines of jobs in the list as to be made again."""
        self.conn.executemany("UPDATE job_list SET line = NULL WHERE job = ?", [(job,) for job in jobs])

    def _relink(self, kind: str, name: str, old: str | None, new: str | None) -> None:
        before, after = links(kind, old), links(kind, new)
        self.conn.executemany(
            "DELETE FROM folded_links WHERE link = ? AND id = ?", [(link, name) for link in before - after]
        )
        self.conn.executemany(
            "INSERT OR IGNORE INTO folded_links VALUES (?, ?)", [(link, name) for link in after - before]
        )
        self._search.update(kind, name, old, new)


def links(kind: str, body: str | None) -> set[str]:
    """Returns under which links an entity is found again."""
    if body in {None, "null"} or kind not in {"unit", "conflicts"}:
        return set()
    entity = json.loads(body or "")
    if kind == "conflicts":
        return {f"conflicts:{conflict['job']}" for _, conflict in entity if conflict["job"]}
    names = {f"job:{job}" for job in [*entity["jobs"], entity["job"]] if job}
    names |= {f"claims:{claim['vehicle']}" for claim in entity["claims"] if claim["vehicle"]}
    names |= {f"decided:{made['at'] // DAY_MS}" for entry in entity["returns"] for made in entry["decisions"]}
    if open_return(entity):
        names.add("waiting")
    return names | {"stock"} if entity["place"] == "stock" else names


def jobs_shown_by(kind: str, name: str, old: str | None, new: str | None) -> set[str]:
    """Returns the jobs whose line in the list a change of an entity may alter."""
    if kind == "job":
        return {name}
    if kind not in {"vehicle", "unit"}:
        return set()
    before, after = (json.loads(body) if body else None for body in (old, new))
    if kind == "vehicle":
        return {job for vehicle in (before, after) if vehicle for job in vehicle["jobs"]}
    if _counts(before) == _counts(after):
        return set()
    return {job for unit in (before, after) if unit for job in [*unit["jobs"], unit["job"]] if job}


def _counts(unit: dict | None) -> tuple:
    """Returns what a unit adds to the lines of jobs: the job it is out on, and whether in dispute."""
    if unit is None:
        return (None, [])
    return (unit["job"] if unit["place"] == "out" else None, unit["jobs"] if unit["claims"] else [])
