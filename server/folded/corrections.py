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
    rows = conn.execute(f"SELECT body FROM events WHERE {ARE_CORRECTIONS} AND n > ? ORDER BY n", [after])
    corrections = Corrections()
    targets = [_parts(target) for target in corrections.note([json.loads(body) for (body,) in rows])]
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


def _parts(identity: str) -> tuple[str, int]:
    device, _, seq = identity.rpartition(":")
    return device, int(seq)
