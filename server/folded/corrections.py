"""What corrections say of the entries that they name, as rows: noted before anything is folded.

A correction counts from the start, so whoever reads entries from here gets each with what was said of
it since.
"""

import json
import sqlite3
from collections.abc import Iterator
from typing import NamedTuple

from server.core.facts.corrections import Corrections

# As the index on them has it.
ARE_CORRECTIONS = "kind IN ('corrected', 'put_right')"


class Corrected(NamedTuple):
    """An entry by its number, who took it back or None, what puts it right or None."""

    n: int
    event: dict
    withdrawn: dict | None
    righted: dict | None


def entries(conn: sqlite3.Connection, where: str, values: list) -> Iterator[Corrected]:
    """Returns the entries of the log of which `where` holds, in order, with what corrects them."""
    rows = conn.execute(
        "SELECT n, body, withdrawn.actor, withdrawn.reason, righted.said FROM events "
        "LEFT JOIN withdrawn USING (device, seq) LEFT JOIN righted USING (device, seq) "
        f"WHERE {where} ORDER BY n",
        values,
    )
    for n, body, actor, reason, said in rows:
        withdrawn = None if reason is None else {"actor": actor, "reason": reason}
        yield Corrected(n, json.loads(body), withdrawn, None if said is None else json.loads(said))


def note(conn: sqlite3.Connection, after: int) -> list[int]:
    """Notes the corrections behind entry `after`; returns the numbers of the entries that they name."""
    fresh = _corrections(conn, "n > ?", after)
    corrections = Corrections()
    corrected = corrections.note(fresh)
    targets = [_parts(target) for target in corrected]
    if after and any(_is_corrected(conn, target) for target in targets):
        # What stands of several corrections of one entry hangs on all of them, and few are corrected twice.
        earlier = _corrections(conn, "n <= ?", after)
        named = set(corrected)
        corrections = Corrections()
        corrections.note([each for each in earlier if _target(each) in named] + fresh)
        conn.executemany("DELETE FROM withdrawn WHERE device = ? AND seq = ?", targets)
    conn.executemany(
        "INSERT OR REPLACE INTO withdrawn VALUES (?, ?, ?, ?)",
        [(*_parts(target), said["actor"], said["reason"]) for target, said in corrections.withdrawn.items()],
    )
    conn.executemany(
        "INSERT OR REPLACE INTO righted VALUES (?, ?, ?)",
        [
            (*_parts(target), json.dumps(said, ensure_ascii=False))
            for target, said in corrections.righted.items()
        ],
    )
    return [
        n
        for target in targets
        for (n,) in conn.execute("SELECT n FROM events WHERE device = ? AND seq = ?", target)
    ]


def _corrections(conn: sqlite3.Connection, where: str, upto: int) -> list[dict]:
    rows = conn.execute(f"SELECT body FROM events WHERE {ARE_CORRECTIONS} AND {where} ORDER BY n", [upto])
    return [json.loads(body) for (body,) in rows]


def _is_corrected(conn: sqlite3.Connection, target: tuple[str, int]) -> bool:
    return any(
        conn.execute(f"SELECT 1 FROM {table} WHERE device = ? AND seq = ?", target).fetchone()
        for table in ("withdrawn", "righted")
    )


def _target(correction: dict) -> str:
    """Returns the identity of the entry that a correction names; of one of another form, of none."""
    data = correction["data"]
    return f"{data.get('device')}:{data.get('seq')}"


def _parts(identity: str) -> tuple[str, int]:
    device, _, seq = identity.rpartition(":")
    return device, int(seq)
