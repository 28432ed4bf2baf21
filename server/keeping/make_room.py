"""`swaptrail make-room`: moves what was kept apart and nobody wants out of the database, into a file.

What was set aside, and chains that left the kept one, take room of what may be kept apart at all
(`server/log/unproven.py`). They count for nothing, so nothing follows from them. They are deleted only once
the file stands whole; it has one canonical JSON value a line:

    {"table", "device", "seq", "hash", "brought_by", "at", "body"}

`brought_by` is the name of the phone that brought it, or null.
"""

from collections.abc import Iterator
from contextlib import closing
from itertools import chain
from pathlib import Path

from sqlite_utils import Database

from server.core.log import canon
from server.keeping.new_file import refuse_unless_new
from server.keeping.new_file import written_whole
from server.storage import folder_with_data
from server.storage import writing
from server.words.spoken import say

# Which rows of each table are moved, and what says when they came.
_MOVED = {"unproven": ("set_aside_at IS NOT NULL", "at"), "quarantine": ("1", "received_at")}


def run(data: Path, out: Path) -> None:
    """Moves them from `data` into the new file `out`; harmless at any time, also while it is served."""
    folder = folder_with_data(data)
    refuse_unless_new(out)
    folder.prepare()
    with closing(folder.open()) as db, writing(db):
        entries = 0
        lines = _lines(db)
        first = next(lines, None)
        if first is None:
            print(say("keeping-room-none"))
            return
        with written_whole(out) as part, part.open("w", encoding="utf-8") as file:
            for line in chain((first,), lines):
                file.write(f"{line}\n")
                entries += 1
        for table, (where, _) in _MOVED.items():
            db.conn.execute(f"DELETE FROM {table} WHERE {where}")
    print(say("keeping-room-made", file=str(out), entries=entries))


def _lines(db: Database) -> Iterator[str]:
    for table, (where, at) in _MOVED.items():
        rows = db.conn.execute(
            f"SELECT device, seq, hash, name, {at}, body FROM {table} "
            f"LEFT JOIN sessions ON sessions.id = brought_by WHERE {where} ORDER BY {table}.id"
        )
        for device, seq, digest, name, came_at, body in rows:
            line = {"table": table, "device": device, "seq": seq, "hash": digest, "brought_by": name}
            yield canon.dumps({**line, "at": came_at, "body": body})
