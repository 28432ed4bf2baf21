"""One folder holds everything of an installation, so that a copy of it is a backup."""

import os
import secrets
from collections.abc import Callable
from contextlib import closing
from contextlib import suppress
from pathlib import Path

from sqlite_utils import Database

from server.core.messages import message
from server.refusals import CommandRefused

from . import own_work
from .connection import open_database
from .connection import writing
from .durable import sync_folder
from .migrations import migrations
from .parts import making
from .parts import name_inside
from .private import make_private_file
from .private import make_private_folder
from .private import tighten

SECRET_BYTES = 32
_TRIES = 20


class DataFolder:
    """The paths of a data folder, made and brought up to date on opening."""

    def __init__(self, root: Path):
        self.root = Path(root)
        self.database = self.root / "swaptrail.db"
        self.photos = self.root / "photos"
        self.keys = self.root / "keys"
        self.mark = self.root / "swaptrail.mark"

    def prepare(self) -> None:
        """Makes what is missing and runs the migrations that are due."""
        for tries_left in reversed(range(_TRIES)):
            try:
                make_private_folder(self.root)
                make_private_folder(self.keys)
                if own_work.hold(self.keys):
                    break
            except FileNotFoundError:  # as below
                if not tries_left:
                    raise
            except (FileExistsError, NotADirectoryError) as error:
                raise CommandRefused(message("server-data-in-file", folder=str(self.root))) from error
            # A command that made it was refused, and took it back meanwhile.
        make_private_folder(self.photos)
        make_private_file(self.database)
        for end in ("-wal", "-shm"):  # SQLite gives new ones the mode of the database
            tighten(self.database.with_name(f"{self.database.name}{end}"))
        with closing(self.open()) as db:
            self._refuse_newer(db)
            migrations.apply(db)
            with writing(db):
                # Tells a phone that a new or an older log answers at the same address (log/epoch.py).
                db.conn.execute(
                    "INSERT OR IGNORE INTO settings VALUES ('installation', ?)",
                    [secrets.token_hex(8)],
                )

    def _refuse_newer(self, db: Database) -> None:
        """Refuses data whose tables a newer version has changed: what is written here would lack its part."""
        with closing(Database(memory=True)) as empty:
            steps = {step.name for step in migrations.pending(empty)}
        if any(step.name not in steps for step in migrations.applied(db)):
            raise CommandRefused(message("server-newer-data", folder=str(self.root)))

    def open(self) -> Database:
        """Returns a new connection; the caller closes it."""
        return open_database(self.database)

    def secret_key(self) -> bytes:
        """Returns the key that signs cookies; refuses one that was cut short, which would sign for anyone."""
        key = self.kept_key("cookie.key", lambda: secrets.token_bytes(SECRET_BYTES))
        if len(key) < SECRET_BYTES:
            raise CommandRefused(message("server-key-damaged", file=str(self.keys / "cookie.key")))
        return key

    def kept_key(self, name: str, make: Callable[[], bytes]) -> bytes:
        """Returns a key of the installation, made at first use and readable by its owner only."""
        path = self.keys / name
        if not path.exists():
            with making(name_inside(path)) as part, part.open("wb") as file:
                file.write(make())
                file.flush()
                os.fsync(file.fileno())
                # Not replaced: of two processes that make it at the same time, one's is the key.
                with suppress(FileExistsError):
                    os.link(part, path)
                    own_work.note(path)
            sync_folder(self.keys)
        return path.read_bytes()


def folder_with_data(root: Path, advice: object = "") -> DataFolder:
    """Returns the data folder at `root`; refuses one without data, with that advice, and makes none."""
    folder = DataFolder(root)
    if not folder.database.is_file():
        advice = advice or message("server-name-folder")
        raise CommandRefused(message("server-no-data", folder=str(root), advice=advice))
    return folder


def setting(db: Database, name: str) -> str | None:
    """Returns a setting's value, or None while it was never made."""
    row = db.conn.execute("SELECT value FROM settings WHERE name = ?", [name]).fetchone()
    return row[0] if row else None


def keep_setting(db: Database, name: str, value: str) -> None:
    """Writes a setting once; those kept this way are never changed afterwards."""
    with writing(db):
        db.conn.execute("INSERT INTO settings (name, value) VALUES (?, ?)", [name, value])


def change_setting(db: Database, name: str, value: str) -> None:
    """Writes a setting that whoever runs the server may change."""
    with writing(db):
        db.conn.execute("INSERT OR REPLACE INTO settings (name, value) VALUES (?, ?)", [name, value])
