"""A start that is refused leaves nothing of a data folder that it made, and everything that it did not."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from contextlib import contextmanager
from contextlib import suppress
from pathlib import Path

from server.storage import DataFolder
from server.storage.own_work import Work
from server.storage.own_work import noted

# Filled by making the database, or by fixing its address. A row in any other table is somebody's work.
_OWN_TABLES = ("settings", "_sqlite_migrations", "sqlite_", "search_")


@contextmanager
def nothing_left(refusals: tuple[type[Exception], ...]) -> Iterator[None]:
    """Takes back a new data folder where one of `refusals` is raised.

    Only what this process made goes, and only while nobody else uses the folder and it holds nothing yet.
    """
    with noted() as work:
        try:
            yield
        except refusals:
            for keys in work.held:
                _take_back(DataFolder(keys.parent), work)
            raise


def _take_back(folder: DataFolder, work: Work) -> None:
    if folder.database not in work.made or not work.is_alone(folder.keys):
        return
    if _is_others(folder, work.made) or _holds_anything(folder.database):
        return
    for path in reversed(work.made):  # the folder of keys after what else there is: it is what is held
        with suppress(OSError):  # somebody has put something there meanwhile
            if path.is_dir():
                path.rmdir()
            else:
                path.unlink()
        if path == folder.database:
            for end in ("-wal", "-shm"):
                path.with_name(f"{path.name}{end}").unlink(missing_ok=True)


def _is_others(folder: DataFolder, made: list[Path]) -> bool:
    """Tells whether there is a key or a photo that somebody else put there."""
    return any(path not in made for place in (folder.keys, folder.photos) for path in place.iterdir())


def _holds_anything(database: Path) -> bool:
    with closing(sqlite3.connect(database)) as connection:
        tables = [
            name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")
        ]
        return any(
            connection.execute(f'SELECT 1 FROM "{table}" LIMIT 1').fetchone()
            for table in tables
            if not table.startswith(_OWN_TABLES)
        )
