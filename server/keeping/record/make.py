"""Writes a record: gathers its entries and photos, asks the core what follows from all, and seals it."""

import json
from pathlib import Path
from typing import NamedTuple

from sqlite_utils import Database

from server.core.host import Host
from server.core.log import canon
from server.core.messages import message
from server.core.record import entries as record_entries
from server.core.record import file as record_file
from server.core.record.file import APP
from server.core.record.file import ENTRIES
from server.core.record.file import HASHES
from server.core.record.file import MOST_TEXT
from server.core.record.file import RECORD
from server.core.record.file import SEAL
from server.core.record.file import photo_member
from server.folded import FoldedState
from server.folded import catch_up
from server.keeping.record import gather
from server.keeping.record import seal
from server.keeping.record.container import Member
from server.keeping.record.container import pieces
from server.phones.installation import installation_id
from server.phones.signing import Signer
from server.photos import store as photo_store
from server.refusals import CommandRefused
from server.storage import at_one_moment
from server.web.shell import core_digest


class Made(NamedTuple):
    """A record, the name it is sent under, and what is to be said of it."""

    data: bytes
    name: str
    title: dict
    entries: int
    photos: int
    absent: int


def make(db: Database, photos: Path, name: str, signer: Signer, now: int) -> Made:
    """Returns the record of what `name` means: a unit's id, the code on a label or a job's id."""
    catch_up(db)
    with at_one_moment(db):
        state = FoldedState(db)
        unit, job = gather.subject_of(state, name)
        gathered = record_entries.gather(state, gather.Log(db), unit, job)
        chains = gather.chains(db, gathered.entries)
        proofs = gather.proofs(db, gathered.entries)
        told = _told(state, unit, gathered.jobs)
        installation = installation_id(db)
    title = record_file.title(state, unit, job)
    entries = "".join(f"{entry.body}\n" for entry in gathered.entries).encode()
    hashes = canon.dumps(
        {"devices": chains, "order": [[entry.device, entry.seq] for entry in gathered.entries], **proofs}
    ).encode()
    text = len(entries) + len(hashes) + len(canon.dumps(told))
    if text > MOST_TEXT:
        raise CommandRefused(
            message("keeping-record-large", name=name, size=text >> 20, most=MOST_TEXT >> 20)
        )
    pictures, absent = _pictures(photos, record_file.photos(gathered.entries), text)
    record = {
        **record_file.fields(state, unit, job, gathered, told),
        "app": APP,
        "made_at": now,
        "installation": installation,
        "key": signer.key,
        "core": core_digest(),
        "missing": absent,
    }
    members: dict[str, bytes] = {ENTRIES: entries, HASHES: hashes, **pictures}
    sealed = seal.sealed(seal.digests(record, members), signer)
    order: list[Member] = [
        (RECORD, canon.dumps(record).encode()),
        (ENTRIES, entries),
        (HASHES, hashes),
        (SEAL, sealed.encode()),
        *pictures.items(),
    ]
    file = b"".join(bytes(piece) for _, piece in pieces(order))
    file_name = record_file.file_name(state, unit, job)
    return Made(file, file_name, title, len(gathered.entries), len(pictures), len(absent))


def _told(state: FoldedState, unit: str, jobs: list[str]) -> dict:
    """Returns what the core concludes from all that is known here."""
    for job in jobs:
        state.focus(job)
        state.add_history(job)
    state.add_linked("stock")
    state.in_order()
    host = Host()
    host.fold.state = state
    told: dict = json.loads(host.call(canon.dumps({"op": "record_told", "unit": unit, "jobs": jobs})))[
        "value"
    ]
    return told


def _pictures(folder: Path, digests: list[str], text: int) -> tuple[dict[str, bytes], list[str]]:
    """Returns the photos' bytes by member, and the digests of those not here or without room."""
    sizes = [_size(photo_store.path_of(folder, digest)) for digest in digests]
    pictures: dict[str, bytes] = {}
    absent = []
    for digest, fits in zip(digests, record_file.with_room(sizes, text), strict=True):
        data = photo_store.whole(folder, digest) if fits else None
        if data is None:
            absent.append(digest)
        else:
            pictures[photo_member(digest)] = data
    return pictures, absent


def _size(path: Path) -> int | None:
    try:
        return path.stat().st_size
    except OSError:
        return None
