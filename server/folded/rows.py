"""The rows of the folded state: an entity as each bucket of entries left it, and who asked for it.

A correction makes an old entry count for nothing, so what was folded with it has to be folded again. For
that an entity has a row for each bucket of entries that changed it: the state before any bucket is there
to begin from. And for each bucket there are the names of all that its folding asked for: a bucket that
asked for nothing that is different now would come to the same again (`ahead`).
"""

import json
from typing import NamedTuple

from sqlite_utils import Database

from server.core.codes.numbers import by_eye
from server.core.facts.returns import open_return
from server.core.state.index import LABEL
from server.core.state.serials import serials_of
from server.core.words.words import DAY_MS
from server.folded.search import SearchIndex

BUCKET = 256  # entries
WHOLE = "whole"  # the kind of what is kept as one, whatever the core keeps beside entities
ALIASES = "aliases"
GONE = "null"  # the text of an entity that the fold took away

_AT = "SELECT body FROM folded WHERE kind = ? AND id = ? AND bucket <= ? ORDER BY bucket DESC LIMIT 1"
_NEWEST = (1 << 63) - 1
# Links by which folding finds what belongs to a job.
_LEADS = ("job:", "claims:", "on:", "conflicts:", "label:")


class Mark(NamedTuple):
    """Which fold made the state, how far the log is folded, and how far its corrections are noted."""

    version: str
    upto: int
    corrections: int


class Change(NamedTuple):
    """An entity with its text before, None where there was none, and its text now."""

    kind: str
    name: str
    old: str | None
    new: str


class Rows:
    """The folded state as rows of one connection, inside whatever transaction is open."""

    def __init__(self, db: Database):
        """Reads and writes through `db`."""
        self.conn = db.conn
        self.asked: set[str] = set()  # the names of what was asked for, there or not
        self._search = SearchIndex(self.conn, self.read)

    def mark(self) -> Mark:
        """Returns how far the state is."""
        row = self.conn.execute("SELECT version, upto, corrections FROM folded_mark").fetchone()
        return Mark(*row) if row else Mark("", 0, 0)

    def set_mark(self, mark: Mark) -> None:
        """Keeps how far the state is."""
        self.conn.execute("INSERT OR REPLACE INTO folded_mark VALUES (1, ?, ?, ?)", mark)

    def read(self, kind: str, name: str) -> str | None:
        """Returns an entity as JSON text, or None."""
        if kind != WHOLE:
            self.asked.add(name)
        return self._text(kind, name)

    def _text(self, kind: str, name: str) -> str | None:
        return self.read_at(_NEWEST, kind, name)

    def read_at(self, bucket: int, kind: str, name: str) -> str | None:
        """Returns an entity as it was at the end of a bucket, or None."""
        row = self.conn.execute(_AT, [kind, name, bucket]).fetchone()
        return row[0] if row and row[0] != GONE else None

    def linked(self, link: str) -> list[str]:
        """Returns the entities under a link, in order of id; of a job also those that were once."""
        self.asked.add(link.partition(":")[2])
        query = "SELECT id FROM folded_links WHERE link = ?1"
        if link.startswith(_LEADS):
            query += " UNION SELECT id FROM folded_links_before WHERE link = ?1"
        return [name for (name,) in self.conn.execute(f"{query} ORDER BY id", [link])]

    def write(self, versions: dict, asked: set[tuple[str, int]], changes: list[Change]) -> None:
        """Writes what folding came to.

        `versions` is (kind, id, bucket) -> text, None for no row; `asked` the names that a bucket asked for;
        `changes` what is different now.
        """
        gone = [key for key, text in versions.items() if text is None]
        kept = [(*key, text) for key, text in versions.items() if text is not None]
        self.conn.executemany("DELETE FROM folded WHERE kind = ? AND id = ? AND bucket = ?", gone)
        self.conn.executemany("INSERT OR REPLACE INTO folded VALUES (?, ?, ?, ?)", kept)
        self.conn.executemany("INSERT OR IGNORE INTO folded_asked VALUES (?, ?)", sorted(asked))
        stale: set[str] = set()
        for kind, name, old, new in changes:
            self._relink(kind, name, old, new)
            stale |= self._jobs_shown_by(kind, name, old, new)
            if kind == "job":
                self._list_job(name, json.loads(new))
        self.conn.executemany("UPDATE job_list SET line = NULL WHERE job = ?", [(job,) for job in stale])
        self.conn.executemany("DELETE FROM lessons WHERE job = ?", [(job,) for job in stale])

    def keep_leads(self, leads: set[tuple[str, str]]) -> None:
        """Keeps those links that are no more: by them an old entry, folded again, finds its job's."""
        self.conn.executemany(
            "INSERT OR IGNORE INTO folded_links_before SELECT ?1, ?2 "
            "WHERE NOT EXISTS (SELECT 1 FROM folded_links WHERE link = ?1 AND id = ?2)",
            sorted(leads),
        )

    def _list_job(self, name: str, job: dict | None) -> None:
        """Puts a job where it belongs in the list, or takes it off."""
        if job is None:
            self.conn.execute("DELETE FROM job_list WHERE job = ?", [name])
            return
        self.conn.execute(
            "INSERT INTO job_list (job, closed, opened_at) VALUES (?, ?, ?) "
            "ON CONFLICT DO UPDATE SET closed = excluded.closed, opened_at = excluded.opened_at",
            [name, job["closed"] is not None, job["opened_at"]],
        )

    def _jobs_shown_by(self, kind: str, name: str, old: str | None, new: str | None) -> set[str]:
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
        sits = {unit["vehicle"] for unit in (before, after) if unit and unit["vehicle"]}
        boards = [json.loads(self._text("vehicle", vehicle) or "null") for vehicle in sorted(sits)]
        units = [unit for unit in (before, after) if unit]
        found = {job for vehicle in boards if vehicle for job in vehicle["jobs"]}
        return found | {job for unit in units for job in [*unit["jobs"], unit["job"]] if job}

    def _relink(self, kind: str, name: str, old: str | None, new: str) -> None:
        before, after = links(kind, old), links(kind, new)
        over, fresh = ([(link, name) for link in each] for each in (before - after, after - before))
        self.conn.executemany("DELETE FROM folded_links WHERE link = ? AND id = ?", over)
        self.keep_leads({(link, each) for link, each in over if link.startswith(_LEADS)})
        self.conn.executemany("INSERT OR IGNORE INTO folded_links VALUES (?, ?)", fresh)
        self._search.update(kind, name, old, new)


def links(kind: str, body: str | None) -> set[str]:
    """Returns under which links an entity is found again."""
    if body in {None, GONE} or kind not in {"unit", "conflicts"}:
        return set()
    entity = json.loads(body or "")
    if kind == "conflicts":
        conflicts = [conflict for _, conflict in entity]
        shared = {f"label:{conflict['code']}" for conflict in conflicts if conflict["about"] == LABEL}
        return shared | {f"conflicts:{conflict['job']}" for conflict in conflicts if conflict["job"]}
    names = {f"job:{job}" for job in [*entity["jobs"], entity["job"]] if job}
    names |= {f"claims:{claim['vehicle']}" for claim in entity["claims"] if claim["vehicle"]}
    if entity["vehicle"]:
        names.add(f"on:{entity['vehicle']}")
    names |= {f"decided:{made['at'] // DAY_MS}" for entry in entity["returns"] for made in entry["decisions"]}
    names |= {f"serial:{by_eye(serial)}" for serial in serials_of(entity)}
    if open_return(entity):
        names.add("waiting")
    return names | {"stock"} if entity["place"] == "stock" else names


def leads(kind: str, name: str, body: str | None) -> set[tuple[str, str]]:
    """Returns the links of an entity by which folding finds it."""
    return {(link, name) for link in links(kind, body) if link.startswith(_LEADS)}


def asked_by(change: Change) -> set[str]:
    """Returns the names under which whoever folds asks for what is different."""
    kind, name, old, new = change
    if kind == WHOLE and name == ALIASES:
        before, after = (set(json.loads(text or "{}").items()) for text in (old, new))
        return {each for pair in before ^ after for each in pair}
    other = leads(kind, name, old) ^ leads(kind, name, new)
    return {name, *(link.partition(":")[2] for link, _ in other)}


def _counts(unit: dict | None) -> tuple:
    """Returns what a unit adds to the lines of jobs: on which it is out, and under which code in dispute."""
    if unit is None:
        return (None, None)
    disputed = (unit["jobs"], unit["code"]) if unit["claims"] else None
    return (unit["job"] if unit["place"] == "out" else None, disputed)
