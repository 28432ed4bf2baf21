"""A data folder as a sort of file to verify: its log and its photos, read without changing a byte."""

import hashlib
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

from server.core.messages import message
from server.keeping.verify import log_check
from server.keeping.verify import photo_check
from server.keeping.verify.sort import Sort
from server.log.fault import Fault
from server.photos.store import path_of
from server.storage import DataFolder


def fits(path: Path) -> bool:
    """Tells whether `path` is a folder with a database of this program."""
    file = DataFolder(path).database
    if not path.is_dir() or not file.is_file():
        return False
    try:
        with closing(open_only(file)) as connection:
            tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master")}
    except sqlite3.DatabaseError as error:
        return error.sqlite_errorcode != sqlite3.SQLITE_NOTADB
    return {"settings", "events", "photos"} <= tables


def first_fault(path: Path) -> Fault | None:
    """Returns the first fault of a data folder."""
    with closing(open_only(DataFolder(path).database)) as connection:
        fault = log_check.first_fault(connection)
    return fault or next(lost_photos(path), None)


def lost_photos(path: Path) -> Iterator[Fault]:
    """Yields every photo of a data folder that is missing or damaged, found before or now."""
    folder = DataFolder(path)
    with closing(open_only(folder.database)) as connection:
        yield from photo_check.known(connection)
        yield from photo_check.faults(connection, lambda digest: _hash(folder.photos, digest))


def open_only(file: Path) -> sqlite3.Connection:
    """Opens a database for reading alone."""
    # Beside a file that nobody has open SQLite would leave two more, unless told that nobody writes.
    in_use = file.with_name(f"{file.name}-wal").exists()
    return sqlite3.connect(f"{file.resolve().as_uri()}?{'mode=ro' if in_use else 'immutable=1'}", uri=True)


def _hash(photos: Path, digest: str) -> str | None:
    try:
        with path_of(photos, digest).open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError:
        return None


FOLDER = Sort(message("keeping-sort-folder"), fits, first_fault, lost_photos=lost_photos)
