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
from server.core.record.file import LATEST
from server.core.record.file import MOST_TEXT
from server.core.record.file import RECORD
from server.core.record.file import SEAL
from server.folded import FoldedState
from server.folded import catch_up
from server.keeping.record import gather
from server.keeping.record import pictures
from server.keeping.record import seal
from server.keeping.record.container import Member
from server.keeping.record.container import pieces
from server.phones.installation import installation_id
from server.phones.signing import Signer
from server.refusals import CommandRefused
from server.storage import at_one_moment
from server.web.core_files import core_digest


class Made(NamedTuple):
    """A record, the name it is sent under, and what is to be said of it.

    `photos` are in it, `smaller` of them as smaller versions; `absent` are not, `roomless` of them for want
    of room alone.
    """

    data: bytes
    name: str
    title: dict
    entries: int
    photos: int
    smaller: int
    absent: int
    roomless: int


def make(
    db: Database, photos: Path, name: str, signer: Signer, now: int, *, make_smaller: bool = False
) -> Made:
    """Returns the record of what `name` means: a unit's id, the code on a label or a job's id.

    With `make_smaller` photos without room go in as smaller versions.
    """
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
    places = [[entry.device, entry.seq] for entry in gathered.entries]
    listed: dict = {"devices": chains, "order": places, **proofs}
    text = len(entries) + len(canon.dumps(listed)) + len(canon.dumps(told))
    if text > MOST_TEXT:
        raise CommandRefused(
            message("keeping-record-large", name=name, size=text >> 20, most=MOST_TEXT >> 20)
        )
    taken = pictures.take(photos, record_file.photos(gathered.entries), text, make_smaller=make_smaller)
    if taken.smaller:
        listed["smaller"] = taken.smaller
    hashes = canon.dumps(listed).encode()
    record = {
        **record_file.fields(state, unit, job, gathered, told),
        **({"v": LATEST} if taken.smaller else {}),
        "app": APP,
        "made_at": now,
        "installation": installation,
        "key": signer.key,
        "core": core_digest(),
        "missing": taken.missing,
    }
    members: dict[str, bytes] = {ENTRIES: entries, HASHES: hashes, **taken.members}
    sealed = seal.sealed(seal.digests(record, members), signer)
    order: list[Member] = [
        (RECORD, canon.dumps(record).encode()),
        (ENTRIES, entries),
        (HASHES, hashes),
        (SEAL, sealed.encode()),
        *taken.members.items(),
    ]
    file = b"".join(bytes(piece) for _, piece in pieces(order))
    file_name = record_file.file_name(state, unit, job)
    smaller, absent = len(taken.smaller), len(taken.missing) - len(taken.smaller)
    return Made(file, file_name, title, len(gathered.entries), taken.photos, smaller, absent, taken.roomless)


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
