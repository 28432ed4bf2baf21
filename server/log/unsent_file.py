"""Reads the file that a phone makes of what it recorded; checked to the last byte.

A paired phone makes it of what it could not send, a phone without a server of everything that it holds.

One canonical JSON value a line, as `static/log/unsent-file.js` writes it:

    {"app":"swaptrail","device":…,"entries":N,"made_at":…,"photos":M,"v":2}
    {"event":{…},"hash":"…"}            N times; the entries of each device in order, without a gap
    {"bytes":"<base64>","sha256":"…"}   M times
    {"end":"<SHA-256 of the first line>"}

The first line also holds "certificates" and "signed_heads" as a batch to /api/sync does, and "key", the
public key of the phone that made it, since phones sign what they record; older files have none of them.

A file that was cut off is good as far as it goes; one that was altered is not read beyond that place.
Version 1, of the first release, is one line without photos: {"app", "device", "events", "v"}.
"""

import base64
import binascii
import hashlib
import json
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO
from typing import NamedTuple

from server.core.errors import BadInput
from server.core.log import canon
from server.core.messages import message
from server.log import intake
from server.log import proof
from server.log.fault import Fault
from server.log.proof import Proofs
from server.log.proof import SignedHead
from server.photos.store import MOST_BYTES
from server.web.errors import Refusal
from server.words.spoken import Told

APP = "swaptrail"
VERSION = 2
# Base64 takes a third more; the rest of the line is short.
_LONGEST_LINE = MOST_BYTES * 4 // 3 + 4096


class Altered(Told):
    """The file is not as it was written; `fault` names the first place."""

    def __init__(self, fault: Fault):
        super().__init__(fault.told())
        self.fault = fault


class NotUnsent(Told):
    """The file is none of these, or one of a version that is not known here; the text says which."""


class Start(NamedTuple):
    """What the first line brings to prove whose the entries are; every signature in it fits."""

    proofs: Proofs


class Entry(NamedTuple):
    """An entry as /api/sync takes it."""

    event: dict
    hash: str


class Photo(NamedTuple):
    """A photo's bytes under their hash."""

    sha256: str
    bytes: bytes


class End(NamedTuple):
    """Where the file ends: whether it was all there, and what it was to hold."""

    whole: bool
    entries: int
    photos: int


Part = Start | Entry | Photo | End


def parts(path: Path) -> Iterator[Part]:
    """Yields what the file holds, a `Start` first and an `End` last.

    Raises Altered at the first place that is not right.
    """
    with path.open("rb") as file:
        yield from _parts(_lines(file))


def is_one(path: Path) -> bool:
    """Tells whether a file begins like one of these."""
    try:
        next(parts(path))
    except NotUnsent:
        return False
    except Altered:
        return True
    return True


def _lines(file: BinaryIO) -> Iterator[tuple[str, bool]]:
    """Yields each line and whether its end is there; a line longer than any of ours is cut up."""
    while line := file.readline(_LONGEST_LINE):
        yield line.removesuffix(b"\n").decode("utf-8", "replace"), line.endswith(b"\n")


def _parts(lines: Iterator[tuple[str, bool]]) -> Iterator[Part]:
    first, complete = next(lines, ("", False))
    head = _head(_value(first))
    start = Start(_proofs(head))
    ends = _ChainEnds(start.proofs.heads)
    yield start
    if head["v"] == 1:
        for each in head["events"]:
            yield ends.checked(each if isinstance(each, dict) else {}, message("keeping-line", line="1"))[0]
        yield End(True, len(head["events"]), 0)
        return
    entries = photos = 0
    ended = False
    for number, (text, complete) in enumerate(lines, 2):
        value = _value(text)
        if ended:
            if text.strip():
                raise _followed(number, value)
            continue
        if value is None and not complete:
            break  # where a file breaks off, half a line is left
        line = message("keeping-line", line=str(number))
        if value and "event" in value and not photos:
            entry, canonical = ends.checked(value, line)
            if text != f'{{"event":{canonical},"hash":"{entry.hash}"}}':
                raise _altered(line)
            entries += 1
            yield entry
        elif value and isinstance(value.get("bytes"), str):
            photos += 1
            yield _photo(value, text, number)
        elif value and "end" in value:
            if text != canon.dumps({"end": hashlib.sha256(first.encode()).hexdigest()}):
                raise _altered(message("keeping-ends"))
            if (entries, photos) != (head["entries"], head["photos"]):
                named = {"entries": head["entries"], "photos": head["photos"]}
                there = {"entries_there": entries, "photos_there": photos}
                raise Altered(Fault("", 0, message("keeping-head-names", **named, **there)))
            ended = True
        else:
            raise _altered(line)
    yield End(ended, head["entries"], head["photos"])


class _ChainEnds:
    """The end of each device's chain in the file.

    Whether an entry is one that the server takes is not asked here: a phone also keeps what was refused.
    """

    def __init__(self, signed: list[SignedHead]) -> None:
        self._ends: dict[str, intake.Head] = {}
        self._signed = {(head.device, head.seq): head.hash for head in signed}

    def checked(self, entry: dict, line: dict) -> tuple[Entry, str]:
        """Returns an entry and its canonical text; raises Altered where a byte or an entry is wrong."""
        event = entry.get("event")
        device, seq = (event.get("device"), event.get("seq")) if isinstance(event, dict) else (None, None)
        if not isinstance(event, dict) or not isinstance(device, str) or not isinstance(seq, int):
            raise _altered(line)
        try:
            text = canon.dumps(event)
        except (BadInput, RecursionError):
            raise _altered(line) from None
        digest = intake.hash_of(text)
        if entry.get("hash") != digest:
            raise Altered(Fault(device, seq, message("keeping-bytes")))
        last = self._ends.get(device)
        if last and seq != last.seq + 1:
            raise Altered(Fault(device, last.seq + 1, message("keeping-missing")))
        if last and event.get("prev") != last.hash:
            raise Altered(Fault(device, seq, message("keeping-not-next")))
        if self._signed.get((device, seq), digest) != digest:
            raise Altered(Fault(device, seq, message("keeping-signed-other")))
        self._ends[device] = intake.Head(seq, digest)
        return Entry(event, digest), text


def _head(value: dict | None) -> dict:
    if value is None or value.get("app") != APP:
        raise NotUnsent(message("keeping-no-phone-file"))
    if value.get("v") == 1 and isinstance(value.get("events"), list):
        return value
    if value.get("v") != VERSION:
        raise NotUnsent(
            message("keeping-phone-file-version", version=str(value.get("v")), known=str(VERSION))
        )
    if not all(isinstance(value.get(name), int) for name in ("entries", "photos")):
        raise _altered(message("keeping-line", line="1"))
    return value


def _proofs(head: dict) -> Proofs:
    """Returns the proofs of a first line; raises Altered at the first signature that does not fit."""
    try:
        proofs = proof.read(head, "")
    except Refusal:
        raise _altered(message("keeping-line", line="1")) from None
    for each in proofs.certificates:
        if not each.is_from(each.issuer):
            raise Altered(Fault(each.device, 1, message("keeping-bad-certificate")))
    keys = [(each.device, each.key) for each in proofs.certificates] + [(head.get("device"), proofs.key)]
    for signed in proofs.heads:
        if not any(device == signed.device and signed.is_by(key) for device, key in keys):
            raise Altered(Fault(signed.device, signed.seq, message("keeping-bad-signature")))
    return proofs


def _photo(value: dict, text: str, number: int) -> Photo:
    try:
        data = base64.b64decode(value["bytes"], validate=True)
    except (binascii.Error, ValueError):
        raise _altered(message("keeping-line", line=str(number))) from None
    digest = value.get("sha256")
    # Also the few bits that base64 leaves unused have one right value.
    if text != f'{{"bytes":"{base64.b64encode(data).decode()}","sha256":"{digest}"}}':
        raise _altered(message("keeping-line", line=str(number)))
    if hashlib.sha256(data).hexdigest() != digest:
        raise Altered(Fault("", 0, message("keeping-photo-line", line=str(number))))
    return Photo(digest, data)


def _value(text: str) -> dict | None:
    try:
        value = json.loads(text)
    except (ValueError, RecursionError):
        return None
    return value if isinstance(value, dict) else None


def _followed(number: int, value: dict | None) -> Altered:
    if value and value.get("app") == APP:
        return Altered(Fault("", 0, message("keeping-second-file", line=str(number))))
    return Altered(Fault("", 0, message("keeping-after-end", line=str(number))))


def _altered(place: dict) -> Altered:
    return Altered(Fault("", 0, message("keeping-not-as-written", place=place)))
