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
from server.core.messages import message
from server.log import events
from server.log import unsent_file
from server.photos import store as photo_store
from server.refusals import CommandRefused
from server.storage import DataFolder
from server.storage import folder_with_data
from server.web.errors import Refusal
from server.words.spoken import say
from server.words.spoken import text

_NO_DATA = message("keeping-name-or-serve")
_NO_ENTRY = "keeping-entry-not-taken"
_AT_ONCE = 200  # as many as a phone sends at once


class _Taken(NamedTuple):
    entries: int
    photos: int
    left_out: list[dict]
    """What was not taken, a message each."""


def run(data: Path, file: Path) -> int:
    """Takes the file in; returns 1 where something of it is missing or was not taken."""
    folder = folder_with_data(data, _NO_DATA)
    end, there = _checked(file)
    folder.prepare()
    with closing(folder.open()) as db:
        taken = _take(db, folder, file)
    known = there.entries - taken.entries - sum(each["msg"] == _NO_ENTRY for each in taken.left_out)
    counts = {"entries": taken.entries, "photos": taken.photos, "known": known}
    print(say("keeping-taken-in", file=str(file), **counts))
    for each in taken.left_out:
        print(text(each))
    if not end.whole:
        entries, photos = end.entries - there.entries, end.photos - there.photos
        print(say("keeping-missing-of-it", entries=entries, photos=photos))
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
        raise CommandRefused(message("keeping-name-phone-file", file=str(file), why=error.message)) from None
    except unsent_file.Altered as error:
        told = message("keeping-altered-not-taken", file=str(file), place=error.message)
        raise CommandRefused(told) from None
    raise AssertionError("a file has an end")


def _take(db: Database, folder: DataFolder, file: Path) -> _Taken:
    stored = photos = 0
    left_out: list[dict] = []
    waiting: list[dict] = []

    def hand_in() -> int:
        receipt = events.receive(db, waiting, None, now_ms())
        left_out.extend(
            message(_NO_ENTRY, seq=str(each["seq"]), device=str(each["device"]), why=each["reason"])
            for each in receipt.refused
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
                left_out.append(message("keeping-photo-not-taken", photo=part.sha256, why=error.message))
    stored += hand_in()
    return _Taken(stored, photos, left_out)
