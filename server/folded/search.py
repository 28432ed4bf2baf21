"""The words that units are found by, in SQLite's full-text index (FTS5) beside the folded state.

A unit has the words of its own record and those of its jobs. The two are kept apart, so that a
vehicle's new name costs its jobs and not every unit that was ever on it.
"""

import json
from typing import TYPE_CHECKING

from sqlite_utils import Database

from server.core import counter_lists

if TYPE_CHECKING:
    from server.folded.rows import Rows

_SAID = ("vehicle", "complaint", "part")  # what the words of a job come from

_FOUND = """SELECT search.id FROM search_fts JOIN search ON search.n = search_fts.rowid
    WHERE search_fts MATCH ?1 AND kind = 'unit'
    UNION SELECT folded_links.id FROM search_fts JOIN search ON search.n = search_fts.rowid
    JOIN folded_links ON link = 'job:' || search.id WHERE search_fts MATCH ?1 AND kind = 'job'"""


def index(rows: "Rows", kind: str, name: str, old: str | None, new: str | None) -> None:
    """Keeps the words of an entity that has changed; both texts are its JSON, "null" where it is gone."""
    before, after = (json.loads(body) if body else None for body in (old, new))
    if kind == "unit":
        _keep(rows, kind, name, _unit_text(before), _unit_text(after))
    elif kind == "job":
        if not before or not after or [before[each] for each in _SAID] != [after[each] for each in _SAID]:
            _index_job(rows, name, after)
    elif kind == "vehicle" and _vehicle_text(before) != _vehicle_text(after):
        for job in (after or before or {}).get("jobs", []):
            _index_job(rows, job, json.loads(rows.read("job", job) or "null"))


def units_found(db: Database, text: str, most: int) -> list[str]:
    """Returns the ids of units of whose words one begins with each word of `text`; none without words."""
    words = counter_lists.tokens(text)
    if not words:
        return []
    each = [f"SELECT id FROM ({_FOUND.replace('?1', f'?{n + 1}')})" for n in range(len(words))]
    asked = " INTERSECT ".join(each) + f" ORDER BY id LIMIT {most}"
    return [name for (name,) in db.conn.execute(asked, [f'"{word}"*' for word in words])]


def _index_job(rows: "Rows", name: str, job: dict | None) -> None:
    text = ""
    if job:
        vehicle = json.loads(rows.read("vehicle", job["vehicle"]) or "null")
        text = "\n".join(counter_lists.texts_of_job(vehicle, job)) if vehicle else ""
    _keep(rows, "job", name, None, text)


def _keep(rows: "Rows", kind: str, name: str, old: str | None, text: str) -> None:
    if text == old:
        return
    kept = rows.conn.execute("SELECT text FROM search WHERE kind = ? AND id = ?", [kind, name]).fetchone()
    if kept and not text:
        rows.conn.execute("DELETE FROM search WHERE kind = ? AND id = ?", [kind, name])
    elif kept and kept[0] != text:
        rows.conn.execute("UPDATE search SET text = ? WHERE kind = ? AND id = ?", [text, kind, name])
    elif text and not kept:
        rows.conn.execute("INSERT INTO search (kind, id, text) VALUES (?, ?, ?)", [kind, name, text])


def _unit_text(unit: dict | None) -> str:
    return "\n".join(counter_lists.texts_of_unit(unit)) if unit else ""


def _vehicle_text(vehicle: dict | None) -> list | None:
    return [vehicle["name"], vehicle["vin"]] if vehicle else None
