"""The words that units are found by, in SQLite's full-text index (FTS5) beside the folded state.

A unit has the words of its own record and those of its jobs. The two are kept apart, so that a
vehicle's new name costs its jobs and not every unit that was ever on it.
"""

import json
import sqlite3
from collections.abc import Callable
from functools import partial

from sqlite_utils import Database

from server.core.views import nearly
from server.core.views import search

_WORDS_OF_JOB = ("vehicle", "complaint", "part")  # what the words of a job come from

_BY_ONE_WORD = """SELECT search.id FROM search_fts JOIN search ON search.n = search_fts.rowid
    WHERE search_fts MATCH ?1 AND kind = 'unit'
    UNION SELECT folded_links.id FROM search_fts JOIN search ON search.n = search_fts.rowid
    JOIN folded_links ON link = 'job:' || search.id WHERE search_fts MATCH ?1 AND kind = 'job'"""


class SearchIndex:
    """The words of units and jobs, kept in step with the rows of the folded state."""

    def __init__(self, conn: sqlite3.Connection, read: Callable[[str, str], str | None]) -> None:
        """Writes through `conn`; `read` gives the newest text of an entity by its kind and id, or None."""
        self._conn = conn
        self._read = read

    def update(self, kind: str, name: str, old: str | None, new: str | None) -> None:
        """Keeps the words of an entity that has changed; both texts are its JSON, "null" where it is gone."""
        before, after = (json.loads(body) if body else None for body in (old, new))
        if kind == "unit":
            self._keep(kind, name, _unit_text(before), _unit_text(after))
        elif kind == "job":
            if (
                not before
                or not after
                or [before[each] for each in _WORDS_OF_JOB] != [after[each] for each in _WORDS_OF_JOB]
            ):
                self._keep_job(name, after)
        elif kind == "vehicle" and _vehicle_text(before) != _vehicle_text(after):
            for job in (after or before or {}).get("jobs", []):
                self._keep_job(job, json.loads(self._read("job", job) or "null"))

    def _keep_job(self, name: str, job: dict | None) -> None:
        text = ""
        if job:
            vehicle = json.loads(self._read("vehicle", job["vehicle"]) or "null")
            text = search.words_of(*search.of_job(vehicle, job)) if vehicle else ""
        self._keep("job", name, None, text)

    def _keep(self, kind: str, name: str, old: str | None, text: str) -> None:
        if text == old:
            return
        kept = self._conn.execute(
            "SELECT text FROM search WHERE kind = ? AND id = ?", [kind, name]
        ).fetchone()
        if kept and not text:
            self._conn.execute("DELETE FROM search WHERE kind = ? AND id = ?", [kind, name])
        elif kept and kept[0] != text:
            self._conn.execute("UPDATE search SET text = ? WHERE kind = ? AND id = ?", [text, kind, name])
        elif text and not kept:
            self._conn.execute("INSERT INTO search (kind, id, text) VALUES (?, ?, ?)", [kind, name, text])


def units_found(db: Database, text: str, most: int) -> list[str]:
    """Returns the ids of the units that `text` finds, as the core finds them; none without words."""
    asked = search.Asked(text)
    if asked.is_empty():
        return []
    return _found(db, asked, most, _exactly) or _found(db, asked, most, partial(_nearly, db))


def _found(db: Database, asked: search.Asked, most: int, matching: Callable[[str], str]) -> list[str]:
    """Returns the units that have each piece; `matching` makes of a typed word what the index is asked."""
    words: list[str] = []

    def by_word(word: str) -> str:
        words.append(matching(word))
        return f"SELECT id FROM ({_BY_ONE_WORD.replace('?1', f'?{len(words)}')})"

    pieces = [
        f"SELECT id FROM ({by_word(''.join(parts))}"
        + (f" UNION SELECT id FROM ({' INTERSECT '.join(map(by_word, parts))}))" if len(parts) > 1 else ")")
        for parts in asked.pieces
    ]
    found = f"SELECT id FROM ({' INTERSECT '.join(pieces)}) UNION {by_word(asked.whole)}"
    query = f"SELECT id FROM ({found}) ORDER BY id LIMIT {most}"
    return [name for (name,) in db.conn.execute(query, words)]


def _exactly(word: str) -> str:
    return f'"{word}"*'


def _nearly(db: Database, word: str) -> str:
    """Returns what asks for the word and for every beginning in the index that is one slip away from it."""
    if len(word) < nearly.SHORTEST:
        return _exactly(word)
    first, second, swapped = nearly.halves(word)
    terms = db.conn.execute(
        "SELECT term FROM search_terms WHERE instr(term, ?) OR substr(term, 1, ?) IN (?, ?)",
        [second, len(first), first, swapped[: len(first)]],
    )
    begins = {nearly.beginning(term, word) for (term,) in terms} - {""}
    return " OR ".join(map(_exactly, sorted(begins | {word})))


def _unit_text(unit: dict | None) -> str:
    return search.words_of(*search.of_unit(unit)) if unit else ""


def _vehicle_text(vehicle: dict | None) -> list | None:
    return [vehicle["name"], vehicle["vin"], vehicle.get("plate")] if vehicle else None
