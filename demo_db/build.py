"""Fills an empty data folder with the demo, by the server's own storage."""

from contextlib import closing
from pathlib import Path

from sqlite_utils import Database

from demo_db import year
from demo_db.hints import hints
from demo_db.log import Log
from demo_db.log import Phone
from demo_db.log import StoryBroken
from demo_db.stories import MARAS_PHONE
from demo_db.stories import START
from demo_db.stories import tell
from demo_db.year import YEARS_PHONE
from server.log import events
from server.photos import store as photo_store
from server.storage import DataFolder

_MOST_BYTES = 64 * 1024 * 1024


class FolderInUse(Exception):
    """The data folder holds something that is no demo; nothing was written to it."""


def build(data_dir: Path, base_url: str, *, start: int = START, with_year: bool = False) -> list[str]:
    """Fill an empty data folder and return a few lines on what to try; a demo there stays as it is.

    `with_year` puts a year of jobs before the demo's own, for the page of what jobs teach.
    """
    folder = DataFolder(data_dir)
    folder.prepare()
    log = Log(base_url)
    with closing(folder.open()) as db:
        if events.head(db, MARAS_PHONE).seq:
            kept = events.after(db, 0, events.last_n(db), _MOST_BYTES)
            log.resume(kept)
        elif events.last_n(db):
            raise FolderInUse(f"{data_dir} holds data that is no demo. Name an empty folder.")
        else:
            if with_year:
                year.tell(log, Phone(YEARS_PHONE, "Mara"), start)
            tell(log, start)
            _store(db, folder, log)
    return hints(log)


def _store(db: Database, folder: DataFolder, log: Log) -> None:
    """Store the pictures, then all events in one transaction: the demo is there in full or not at all."""
    now = log.entries[-1]["event"]["at"]
    for digest, data in log.photos.items():
        photo_store.keep(db, folder.photos, digest, data, now)
    receipt = events.receive(db, log.entries, None, now)
    if receipt.refused or receipt.stored != len(log.entries):
        raise StoryBroken(f"the server did not take the log: {receipt.refused[:1]}")
