"""Writes a record: gathers its entries and photos, asks the core what follows from all, and seals it."""

import functools
import hashlib
import json
from pathlib import Path
from typing import NamedTuple

from sqlite_utils import Database

from server import named
from server import photo_store
from server.core import canon
from server.core import envelope
from server.core.host import Host
from server.core.labels import shown
from server.folded import FoldedState
from server.installation import installation_id
from server.projection import catch_up
from server.record import gather
from server.record import seal
from server.record.container import MOST_BYTES
from server.record.container import MOST_MEMBERS
from server.record.container import Member
from server.record.container import pieces
from server.refusals import CommandRefused
from server.shell import core_bundle
from server.signing import Signer
from server.storage import reading

APP, VERSION = "swaptrail record", 1
RECORD, ENTRIES, HASHES, SEAL = "record.json", "entries.jsonl", "hashes.json", "seal.json"

MOST_TEXT = 16 * 1024 * 1024  # of one member that is no photo, so that reading it stays bounded

_PHOTO_OVERHEAD = 512  # what a photo takes beside its own bytes: its heads, its digests
_OTHER_MEMBERS = 4
_OTHER_BYTES = 64 * 1024


class Made(NamedTuple):
    """A record, the name it is sent under, and what is to be said of it."""

    data: bytes
    name: str
    title: str
    entries: int
    photos: int
    absent: int


def make(db: Database, photos: Path, name: str, signer: Signer, now: int) -> Made:
    """Returns the record of what `name` means: a unit's id, the code on a label or a job's id."""
    catch_up(db)
    with reading(db):
        state = FoldedState(db)
        subject = gather.subject_of(state, name)
        found = gather.gather(db, state, subject)
        chains = gather.chains(db, found.entries)
        told = _told(state, found)
        installation = installation_id(db)
    code = state.units[subject.unit]["code"] if subject.unit else ""
    entries = "".join(f"{entry.body}\n" for entry in found.entries).encode()
    hashes = canon.dumps(
        {"devices": chains, "order": [[entry.device, entry.seq] for entry in found.entries]}
    ).encode()
    text = len(entries) + len(hashes) + len(canon.dumps(told))
    if text > MOST_TEXT:
        raise CommandRefused(
            f"The record of {name} would hold {text >> 20} MB of entries, and {MOST_TEXT >> 20} is the "
            "most. Take the record of one job."
        )
    pictures, absent = _pictures(photos, found, MOST_BYTES - text - _OTHER_BYTES)
    record = {
        "app": APP,
        "v": VERSION,
        "unit": subject.unit,
        "job": subject.job,
        "code": code,
        "jobs": found.jobs,
        "made_at": now,
        "installation": installation,
        "key": signer.key,
        "core": core_digest(),
        "format": envelope.FORMAT_VERSION,
        "elsewhere": found.elsewhere,
        "missing": absent,
        "told": told,
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
    title = f"sensor {shown(code) or subject.unit}" if subject.unit else _title(state, subject.job)
    file_name = f"swaptrail-record-{code or subject.unit or subject.job}.zip"
    return Made(file, file_name, title, len(found.entries), len(pictures), len(absent))


@functools.cache
def core_digest() -> str:
    """Returns by which core's files this program concludes."""
    return hashlib.sha256(core_bundle()).hexdigest()


def photo_member(digest: str) -> str:
    """Returns under which name a photo lies in a record."""
    return f"photos/{digest}.jpg"


def _told(state: FoldedState, found: gather.Gathered) -> dict:
    """Returns what the core concludes from all that is known here."""
    for job in found.jobs:
        state.focus(job)
        state.add_history(job)
    state.add_linked("stock")
    state.in_order()
    host = Host()
    host.fold.state = state
    asked = {"op": "record_told", "unit": found.subject.unit, "jobs": found.jobs}
    told: dict = json.loads(host.call(canon.dumps(asked)))["value"]
    return told


def _pictures(folder: Path, found: gather.Gathered, room: int) -> tuple[dict[str, bytes], list[str]]:
    """Returns the photos' bytes by member, and the digests of those not here or without room."""
    pictures: dict[str, bytes] = {}
    absent = []
    for digest in dict.fromkeys(named.photo(entry.event) for entry in found.entries):
        if digest is None:
            continue
        data = photo_store.whole(folder, digest)
        size = len(data or b"") + _PHOTO_OVERHEAD
        if data is None or size > room or len(pictures) >= MOST_MEMBERS - _OTHER_MEMBERS:
            absent.append(digest)
        else:
            room -= size
            pictures[photo_member(digest)] = data
    return pictures, absent


def _title(state: FoldedState, job: str) -> str:
    return f"the job on {state.vehicles[state.jobs[job]['vehicle']]['name']}"
