"""Reads a record and names the first place in it that is not as it was sealed.

In the order of trust: the seal tells which parts are as they were, the list of hashes which entry is
not, an entry's hash of its photo which photo is not; at last the container, byte for byte.
"""

import hashlib
import json
from typing import NamedTuple

from server import named
from server.core import canon
from server.core.record_file import APP
from server.core.record_file import ENTRIES
from server.core.record_file import FIELD
from server.core.record_file import HASHES
from server.core.record_file import MOST_BYTES
from server.core.record_file import MOST_TEXT
from server.core.record_file import PHONE_APP
from server.core.record_file import RECORD
from server.core.record_file import SEAL
from server.core.record_file import VERSION
from server.fault import Fault
from server.intake import Malformed
from server.intake import read as read_event
from server.record import seal
from server.record.container import Broken
from server.record.container import Member
from server.record.container import first_difference
from server.record.container import offsets
from server.record.container import unpack
from server.record.contents import Hashes
from server.record.contents import NotOfTheForm
from server.record.contents import check_record
from server.record.contents import identity
from server.record.contents import plain
from server.record.contents import read_hashes
from server.record.make import photo_member
from server.refusals import CommandRefused

# How every record begins: the first member's name in its head, then the member itself.
_BEGINNINGS = tuple(b"record.json" + canon.dumps({"app": app}).encode()[:-1] for app in (APP, PHONE_APP))
_NAME_AT = 30


class Altered(Exception):
    """A record is not as it was sealed; carries the first place."""

    def __init__(self, fault: Fault):
        """Keeps the place."""
        super().__init__(fault.sentence())
        self.fault = fault


class Sound(NamedTuple):
    """A record that is as it was sealed: what it says, its events, where in it each photo lies.

    `by` is who sealed it, an installation or a phone; `photos` is digest -> [offset, length], so that
    whoever has the file can show them.
    """

    record: dict
    by: str
    events: list[dict]
    photos: dict[str, list[int]]


def begins(head: bytes) -> bool:
    """Tells by its first bytes whether a file means to be a record."""
    return head[_NAME_AT:].startswith(_BEGINNINGS)


HEAD_BYTES = _NAME_AT + max(map(len, _BEGINNINGS))


def check(data: bytes) -> Sound:
    """Returns what an intact record says; raises Altered with the first place that is not."""
    if len(data) > MOST_BYTES:
        raise _altered(f"it is larger than the {MOST_BYTES >> 20} MB that a record takes at most")
    try:
        members = unpack(data)
    except Broken as error:
        raise _altered(str(error)) from None
    by_name = dict(members)
    for name in (RECORD, ENTRIES, HASHES, SEAL):
        if name not in by_name:
            raise _altered(f"{name} is missing in it")
        if len(by_name[name]) > MOST_TEXT:
            raise _altered(f"{name} is larger than in any record")
    sealed = _seal(by_name)
    digests = sealed.digests
    record = _record(by_name, sealed)
    hashes = _hashes(by_name, digests)
    events = _events(by_name, digests, hashes)
    shown = _photos(by_name, digests, events)
    _all_there(members, digests)
    difference = first_difference(data, members)
    if difference:
        raise _altered(difference)
    places = offsets(members)
    return Sound(record, sealed.by, events, {digest: places[photo_member(digest)] for digest in shown})


def _seal(members: dict) -> seal.Seal:
    try:
        return seal.opened(_text(members[SEAL]))
    except seal.Unsealed as error:
        raise _altered(f"{SEAL}: {error}") from None


def _record(members: dict, sealed: seal.Seal) -> dict:
    digests = sealed.digests
    try:
        record = plain(_text(members[RECORD]))
    except NotOfTheForm:
        raise _altered(f"{RECORD} was changed; it is not written as a record is") from None
    version = record.get("v")
    if isinstance(version, int) and version > VERSION:
        raise CommandRefused(f"This record is of version {version}, later than this program. Update it.")
    fields = {name.removeprefix(FIELD) for name in digests if name.startswith(FIELD)}
    for name in sorted(fields | set(record)):
        if name not in record:
            raise _altered(f"{RECORD}: {name} is missing")
        if name not in fields:
            raise _altered(f"{RECORD}: {name} was added")
        if canon.sha256_hex(canon.dumps(record[name])) != digests[FIELD + name]:
            raise _altered(f"{RECORD}: {name} was changed")
    try:
        check_record(record)
    except NotOfTheForm:
        raise _altered(f"{RECORD} is not written as a record is") from None
    if record["key"] != sealed.key or (record["app"] == PHONE_APP) != (sealed.by == seal.PHONE):
        raise _altered(f"{RECORD}: it names another key than the seal")
    return record


def _hashes(members: dict, digests: dict[str, str]) -> Hashes:
    if _digest(members[HASHES]) != digests.get(HASHES):
        raise _altered(f"{HASHES} was changed")
    try:
        return read_hashes(_text(members[HASHES]))
    except NotOfTheForm:
        raise _altered(f"{HASHES} is not written as a list of hashes is") from None


def _events(members: dict, digests: dict[str, str], hashes: Hashes) -> list[dict]:
    lines = bytes(members[ENTRIES]).split(b"\n")
    for index, (device, seq) in enumerate(hashes.order):
        line = lines[index] if index < len(lines) - 1 else b""
        if _digest(line) != hashes.of(device, seq):
            raise Altered(_what_happened(index, lines[:-1], hashes))
    if len(lines) - 1 > len(hashes.order):
        added = identity(_text(lines[len(hashes.order)]))
        raise Altered(Fault(*(added or ("", 0)), "it was added" if added else "an entry was added"))
    if _digest(members[ENTRIES]) != digests.get(ENTRIES):
        raise _altered(f"{ENTRIES} was changed at its end")
    return [_event(line, place, hashes) for line, place in zip(lines, hashes.order, strict=False)]


def _what_happened(index: int, lines: list[bytes], hashes: Hashes) -> Fault:
    """Tells why the line at `index` is not the entry that stood there."""
    device, seq = hashes.order[index]
    found = identity(_text(lines[index])) if index < len(lines) else None
    if found not in {None, (device, seq)}:
        assert found is not None
        if found not in hashes.order:
            return Fault(*found, "it was added")
        if len(lines) >= len(hashes.order):
            return Fault(device, seq, "another entry stands in its place")
    if index >= len(lines) or (found != (device, seq) and len(lines) < len(hashes.order)):
        return Fault(device, seq, "it is missing")
    return Fault(device, seq, "its bytes do not match its hash")


def _event(line: bytes, place: tuple[str, int], hashes: Hashes) -> dict:
    """Returns an entry that is as it was hashed; refuses one that no server would have taken in."""
    device, seq = place
    try:
        event: dict = json.loads(line)
        text = read_event(event)
    except (ValueError, RecursionError, Malformed):
        raise Altered(Fault(device, seq, "it is no entry")) from None
    if text.encode() != line or (event["device"], event["seq"]) != place:
        raise Altered(Fault(device, seq, "it is no entry"))
    before = hashes.of(device, seq - 1)
    if before is not None and event["prev"] != before:
        raise Altered(Fault(device, seq, "it does not continue the entry before it"))
    return event


def _photos(members: dict, digests: dict[str, str], events: list[dict]) -> set[str]:
    """Returns the photos in here that an entry names, each as it was then."""
    shown = set()
    for event in events:
        digest = named.photo(event)
        name = photo_member(digest) if digest else ""
        if digest is None or name not in digests:
            continue
        at = (event["device"], event["seq"])
        if name not in members:
            raise Altered(Fault(*at, f"the photo {digest} is missing"))
        if _digest(members[name]) != digest:
            raise Altered(Fault(*at, f"the photo {digest} is another one, or was changed"))
        shown.add(digest)
    return shown


def _all_there(members: list[Member], digests: dict[str, str]) -> None:
    sealed = {name for name in digests if not name.startswith(FIELD)}
    for name, _ in members:
        if name not in {RECORD, SEAL, *sealed}:
            raise _altered(f"{name} was added to it")
    for name in sorted(sealed - {name for name, _ in members}):
        raise _altered(f"{name} is missing in it")


def _text(data: "bytes | memoryview") -> str:
    """Returns UTF-8 text; bytes that are none come out as what no hash and no signature is over."""
    return bytes(data).decode("utf-8", "replace")


def _digest(data: "bytes | memoryview") -> str:
    return hashlib.sha256(data).hexdigest()


def _altered(what: str) -> Altered:
    return Altered(Fault("", 0, what))
