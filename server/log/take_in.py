"""`swaptrail take-in FILE`: takes in the file that a phone made of what it recorded.

That is what a paired phone could not send, or the whole history of one that has no server.

The entries go through the same checks as those that a phone sends, and twice is harmless. An altered
file is refused as a whole; of one that was cut off, everything is taken that is there.
"""

from contextlib import closing
from pathlib import Path
from typing import NamedTuple

from sqlite_utils import Database

from server.clock import now_ms
from server.log import events
from server.log import unsent_file
from server.photos import store as photo_store
from server.refusals import CommandRefused
from server.storage import DataFolder
from server.storage import folder_with_data
from server.web.errors import Refusal

_NO_DATA = "Name the folder with --data, or start `swaptrail serve` on it once."
_AT_ONCE = 200  # as many as a phone sends at once


class _Taken(NamedTuple):
    entries: int
    photos: int
    left_out: list[str]
    """What was not taken, a line each."""


def run(data: Path, file: Path) -> int:
    """Takes the file in; returns 1 where something of it is missing or was not taken."""
    folder = folder_with_data(data, _NO_DATA)
    end, there = _checked(file)
    folder.prepare()
    with closing(folder.open()) as db:
        taken = _take(db, folder, file)
    known = there.entries - taken.entries - sum(line.startswith("Entry") for line in taken.left_out)
    print(f"{file}: {_counted(taken)} taken in, {known} entries were here already.")
    for line in taken.left_out:
        print(line)
    if not end.whole:
        entries, photos = end.entries - there.entries, end.photos - there.photos
        print(f"The file was cut off: {entries} entries and {photos} photos of it are missing.")
    return 0 if end.whole and not taken.left_out else 1


def _checked(file: Path) -> tuple[unsent_file.End, unsent_file.End]:
    """Goes through the whole file before anything is taken; returns its end, and what is there."""
    entries = photos = 0
    try:
        for part in unsent_file.parts(file):
            if isinstance(part, unsent_file.End):
                return part, unsent_file.End(part.whole, entries, photos)
            entries += isinstance(part, unsent_file.Entry)
            photos += isinstance(part, unsent_file.Photo)
    except unsent_file.NotUnsent as error:
        raise CommandRefused(
            f"{file} {error}. Name the file that the phone made; its name begins with swaptrail."
        ) from None
    except unsent_file.Altered as error:
        raise CommandRefused(f"{file} was altered, nothing was taken in. First place: {error}") from None
    raise AssertionError("a file has an end")


def _take(db: Database, folder: DataFolder, file: Path) -> _Taken:
    stored = photos = 0
    left_out: list[str] = []
    waiting: list[dict] = []

    def hand_in() -> int:
        receipt = events.receive(db, waiting, None, now_ms())
        left_out.extend(
            f"Entry {each['seq']} of device {each['device']}: {each['reason']}" for each in receipt.refused
        )
        waiting.clear()
        return receipt.stored

    for part in unsent_file.parts(file):
        if isinstance(part, unsent_file.Entry):
            waiting.append({"event": part.event, "hash": part.hash, "relayed": True})
            if len(waiting) == _AT_ONCE:
                stored += hand_in()
        elif isinstance(part, unsent_file.Photo):
            is_new = photo_store.whole(folder.photos, part.sha256) is None
            try:
                photo_store.keep(db, folder.photos, part.sha256, part.bytes, now_ms())
                photos += is_new
            except Refusal as error:
                left_out.append(f"Photo {part.sha256}: {error}")
    stored += hand_in()
    return _Taken(stored, photos, left_out)


def _counted(taken: _Taken) -> str:
    return f"{taken.entries} entries and {taken.photos} photos"
