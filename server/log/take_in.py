"""`swaptrail take-in FILE`: takes in the file that a phone made of what it recorded.

That is what a paired phone could not send, or the whole history of one that has no server.

The entries go through the same checks as those that a phone sends, and twice is harmless. An altered
file is refused as a whole; of one that was cut off, everything is taken that is there. What a phone with a
key recorded counts as its certificate and signature in the file prove, and is kept apart without them; for
what a phone without a key recorded, whoever runs the command answers.
"""

from collections.abc import Iterator
from contextlib import closing
from itertools import islice
from pathlib import Path
from typing import NamedTuple

from sqlite_utils import Database

from server.clock import now_ms
from server.core.messages import message
from server.log import events
from server.log import unsent_file
from server.log.proof import Proofs
from server.phones import certificates
from server.phones.signing import signer
from server.photos import store as photo_store
from server.refusals import CommandRefused
from server.storage import DataFolder
from server.storage import folder_with_data
from server.storage import writing
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
    keyless: int
    """Of how many phones nothing can prove who recorded it."""


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
    if taken.entries and taken.keyless:
        print(say("keeping-taken-in-keyless", phones=taken.keyless))
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
    devices: set[str] = set()
    waiting: list[dict] = []
    proofs = _proofs(file)._replace(issuer=signer(folder).key)

    def hand_in(*, only_prove: bool = False) -> int:
        with writing(db):
            receipt = events.take_in(db, waiting, None, now_ms(), proofs=proofs, only_prove=only_prove)
        left_out.extend(
            message(_NO_ENTRY, seq=str(each["seq"]), device=str(each["device"]), why=each["reason"])
            for each in receipt.refused
        )
        waiting.clear()
        return receipt.stored

    for batch in _batches(file) if proofs.heads else ():
        waiting += batch
        hand_in(only_prove=True)
    for part in unsent_file.parts(file):
        if isinstance(part, unsent_file.Entry):
            devices.add(part.event["device"])
            waiting.append(_brought(part))
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
    keyless = sum(not certificates.are_known(db, each) for each in devices)
    return _Taken(stored, photos, left_out, keyless)


def _proofs(file: Path) -> Proofs:
    return next(part.proofs for part in unsent_file.parts(file) if isinstance(part, unsent_file.Start))


def _batches(file: Path) -> Iterator[list[dict]]:
    """Yields the entries of a file, as many at once as a phone sends."""
    entries = (_brought(part) for part in unsent_file.parts(file) if isinstance(part, unsent_file.Entry))
    while batch := list(islice(entries, _AT_ONCE)):
        yield batch


def _brought(entry: unsent_file.Entry) -> dict:
    return {"event": entry.event, "hash": entry.hash, "relayed": True}
