"""A start that is refused leaves nothing of a data folder that it made."""

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from contextlib import contextmanager
from contextlib import suppress
from pathlib import Path

from server.storage import DataFolder

_HELD = ("events", "sessions", "labels", "quarantine")  # any row in them is somebody's work


@contextmanager
def nothing_left(data: Path, refusals: tuple[type[Exception], ...]) -> Iterator[None]:
    """Takes away what was made of a new data folder where one of `refusals` is raised."""
    folder = DataFolder(data)
    root = folder.root.absolute()
    missing = [path for path in (root, *root.parents) if not path.exists()]
    ours = (folder.photos, folder.keys, *(Path(f"{folder.database}{end}") for end in ("", "-wal", "-shm")))
    new = [path for path in ours if not path.exists()]
    try:
        yield
    except refusals:
        if folder.database in new and not _holds_anything(folder.database):
            for path in new:
                _take_away(path)
            for path in missing:
                with suppress(OSError):  # somebody has put something there meanwhile
                    path.rmdir()
        raise


def _holds_anything(database: Path) -> bool:
    if not database.exists():
        return False
    with closing(sqlite3.connect(database)) as connection:
        tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
        return any(
            connection.execute(f"SELECT 1 FROM {table} LIMIT 1").fetchone()
            for table in _HELD
            if table in tables
        )


def _take_away(path: Path) -> None:
    if path.is_dir():
        shutil.rmtree(path)
    else:
        path.unlink(missing_ok=True)
