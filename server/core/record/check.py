"""Reads a record and names the first place in it that is not as it was sealed, on both hosts.

In the order of trust: the seal tells which parts are as they were, the list of hashes which entry is
not, an entry's hash of its photo which photo is not. Bytes stay with the host: it takes the file apart,
hashes each member, checks the signature between `opened` and `check`, and at last compares the file,
byte for byte, with how its members are written.
"""

import json
from collections import namedtuple

from ..errors import BadInput
from ..log import canon
from ..log import envelope
from ..messages import message
from . import named
from . import signed
from .file import ENTRIES
from .file import FIELD
from .file import HASHES
from .file import LATEST
from .file import MOST_TEXT
from .file import PHONE_APP
from .file import PHONE_SEAL_APP
from .file import RECORD
from .file import SEAL
from .file import SEAL_APP
from .file import photo_member
from .form import Hashes
from .form import NotOfTheForm
from .form import check_record
from .form import identity
from .form import plain
from .form import read_hashes

INSTALLATION, PHONE = "installation", "phone"  # who seals

_TEXTS = (RECORD, ENTRIES, HASHES, SEAL)
_SEALED_BY = {SEAL_APP: INSTALLATION, PHONE_SEAL_APP: PHONE}
_SEAL_FIELDS = ("app", "v", "key", "digests")
_DEEPEST_EVENT = 12  # as a server takes it in

# A seal as it is written: who made it, with which key, over which text, and the digest of each part.
Seal = namedtuple("Seal", ("by", "key", "signature", "text", "digests"))
# A record that is as it was sealed: what it says, its events, the photos in it that an entry names, [photo,
# version] of those that are in it smaller (that both show the same, only who sealed it says), and the
# signatures of phones in it, which the host checks.
Sound = namedtuple("Sound", ("record", "events", "photos", "smaller", "signatures", "phones"))


class Altered(Exception):
    """A record is not as it was sealed; carries the first place, (device or "", seq, message)."""

    def __init__(self, device: str, seq: int, what: dict):
        """Keep the place."""
        super().__init__(what["msg"])
        self.place = (device, seq, what)


class Later(Exception):
    """A record of a version that is not known here; the message says what to do."""

    def __init__(self, message: dict):
        """Keep the message."""
        super().__init__(message["msg"])
        self.message = message


def check_sizes(sizes: dict) -> None:
    """Raise Altered unless every part that is text is there, and none is larger than in any record."""
    for name in _TEXTS:
        if name not in sizes:
            raise _altered("record-not-in", file=name)
        if sizes[name] > MOST_TEXT:
            raise _altered("record-larger", file=name)


def opened(text: str) -> Seal:
    """Return a seal whose signature is to be checked; raise Altered where it is none."""
    try:
        seal = plain(text)
        body = {name: seal[name] for name in _SEAL_FIELDS}
        key, signature, digests = seal["key"], seal["signature"], seal["digests"]
        sound = len(seal) == len(_SEAL_FIELDS) + 1 and seal["app"] in _SEALED_BY
        sound = sound and isinstance(key, str) and isinstance(signature, str) and isinstance(digests, dict)
    except (KeyError, TypeError, NotOfTheForm):
        sound = False
    if not sound:
        raise _altered("record-no-seal", file=SEAL)
    return Seal(_SEALED_BY[seal["app"]], key, signature, canon.dumps(body), digests)


def unsigned() -> Altered:
    """Return what is wrong where the signature of a seal does not fit."""
    return _altered("record-unsigned", file=SEAL)


def check(seal: Seal, found: list, texts: dict, read) -> Sound:
    """Return what an intact record says, all but its container checked; raise Altered or Later.

    `found` is [[name, digest]] of all members in their order, `texts` those that are text, bytes that
    are no UTF-8 replaced. `read(event)` returns the canonical text of an event or raises BadInput.
    """
    members = {}
    for name, digest in found:
        members[name] = digest
    record = _record(texts[RECORD], seal)
    hashes = _hashes(texts[HASHES], members, seal)
    events = _events(texts[ENTRIES], members, seal, hashes, read)
    photos, smaller = _photos(members, seal, events, hashes.smaller)
    _all_there(found, seal)
    other = signed.fault(hashes)
    if other:
        raise Altered(other[0], other[1], other[2])
    by_phone = record["installation"] if seal.by == PHONE else ""
    signatures = signed.signatures(hashes, by_phone, seal.key)
    return Sound(record, events, photos, smaller, signatures, _phones(hashes, seal))


def _phones(hashes, seal: Seal) -> list:
    """Return what is said of phones: who gave them their certificates says it, and nobody else."""
    if seal.by == INSTALLATION:
        return hashes.phones
    certified = [(each["device"], each["role"], each["name"]) for each in hashes.certificates]
    return [each for each in hashes.phones if (each["device"], each["role"], each["name"]) in certified]


def read_event(event: dict) -> str:
    """Return the canonical text of an event that a server would take in; raise BadInput."""
    if _deeper_than(event, _DEEPEST_EVENT):
        raise BadInput("event", "", message("record-levels", most=_DEEPEST_EVENT))
    envelope.check(event)
    return envelope.canonical(event)


def _record(text: str, seal: Seal) -> dict:
    try:
        record = plain(text)
    except NotOfTheForm:
        raise _altered("record-changed-form", file=RECORD)
    version = record.get("v")
    if isinstance(version, int) and version > LATEST:
        raise Later(message("record-later", version=str(version)))
    fields = {}
    for name in seal.digests:
        if name.startswith(FIELD):
            fields[name[len(FIELD) :]] = True
    for name in sorted(set(list(fields) + list(record))):
        if name not in record:
            raise _altered("record-field-missing", file=RECORD, field=name)
        if name not in fields:
            raise _altered("record-field-added", file=RECORD, field=name)
        if canon.sha256_hex(canon.dumps(record[name])) != seal.digests[FIELD + name]:
            raise _altered("record-field-changed", file=RECORD, field=name)
    try:
        check_record(record)
    except NotOfTheForm:
        raise _altered("record-no-record", file=RECORD)
    if record["key"] != seal.key or (record["app"] == PHONE_APP) != (seal.by == PHONE):
        raise _altered("record-other-key", file=RECORD)
    return record


def _hashes(text: str, members: dict, seal: Seal) -> Hashes:
    if members[HASHES] != seal.digests.get(HASHES):
        raise _altered("record-changed", file=HASHES)
    try:
        return read_hashes(text)
    except NotOfTheForm:
        raise _altered("record-no-hashes", file=HASHES)


def _events(text: str, members: dict, seal: Seal, hashes, read) -> list:
    lines = text.split("\n")
    order = hashes.order
    for index in range(len(order)):
        line = lines[index] if index < len(lines) - 1 else ""
        if canon.sha256_hex(line) != hashes.of(order[index][0], order[index][1]):
            raise _what_happened(index, lines[:-1], hashes)
    if len(lines) - 1 > len(order):
        added = identity(lines[len(order)])
        if added:
            raise Altered(added[0], added[1], message("record-added"))
        raise _altered("record-entry-added")
    if members[ENTRIES] != seal.digests.get(ENTRIES):
        raise _altered("record-changed-end", file=ENTRIES)
    _in_order(order)
    return [_event(lines[index], order[index], hashes, read) for index in range(len(order))]


def _in_order(order: list) -> None:
    """Refuse an entry that stands twice, or before an earlier one of its phone: it would count otherwise."""
    last = {}
    for device, seq in order:
        if seq <= last.get(device, 0):
            raise Altered(device, seq, message("record-not-next"))
        last[device] = seq


def _what_happened(index: int, lines: list, hashes) -> Altered:
    """Tell why the line at `index` is not the entry that stood there."""
    device, seq = hashes.order[index]
    found = identity(lines[index]) if index < len(lines) else None
    if found is not None and found != (device, seq):
        if found not in hashes.order:
            return Altered(found[0], found[1], message("record-added"))
        if len(lines) >= len(hashes.order):
            return Altered(device, seq, message("record-another"))
    if index >= len(lines) or (found != (device, seq) and len(lines) < len(hashes.order)):
        return Altered(device, seq, message("record-missing"))
    return Altered(device, seq, message("record-bytes"))


def _event(line: str, place: tuple, hashes, read) -> dict:
    """Return an entry that is as it was hashed; refuse one that no server would have taken in."""
    device, seq = place
    try:
        event = json.loads(line)
        text = read(event)
    except (ValueError, RuntimeError, BadInput):
        raise Altered(device, seq, message("record-no-entry"))
    if text != line or (event["device"], event["seq"]) != place:
        raise Altered(device, seq, message("record-no-entry"))
    before = hashes.of(device, seq - 1)
    if before is not None and event["prev"] != before:
        raise Altered(device, seq, message("record-not-next"))
    return event


def _photos(members: dict, seal: Seal, events: list, versions: dict) -> tuple:
    """Return the photos in here that an entry names, each as it was then, and those in smaller versions."""
    shown, smaller = [], []
    for event in events:
        photo = named.photo(event)
        if photo is None:
            continue
        whole = photo_member(photo) in seal.digests
        digest = photo if whole else versions.get(photo)
        if digest is None or photo_member(digest) not in seal.digests:
            continue
        if photo_member(digest) not in members:
            raise Altered(event["device"], event["seq"], message("record-photo-missing", photo=digest))
        if members[photo_member(digest)] != digest:
            raise Altered(event["device"], event["seq"], message("record-photo-changed", photo=digest))
        if whole and photo not in shown:
            shown.append(photo)
        if not whole and [photo, digest] not in smaller:
            smaller.append([photo, digest])
    return shown, smaller


def _all_there(found: list, seal: Seal) -> None:
    there = [name for name, _ in found]
    for name, digest in found:
        if name in (RECORD, SEAL):
            continue
        if name not in seal.digests:
            raise _altered("record-put-in", file=name)
        if digest != seal.digests[name]:
            raise _altered("record-changed", file=name)
    for name in sorted(seal.digests):
        if not name.startswith(FIELD) and name not in there:
            raise _altered("record-not-in", file=name)


def _deeper_than(value, levels: int) -> bool:
    if isinstance(value, dict):
        inside = [value[key] for key in value]
    elif isinstance(value, list):
        inside = value
    else:
        return False
    if levels == 0:
        return True
    for item in inside:
        if _deeper_than(item, levels - 1):
            return True
    return False


def _altered(what: str, **args) -> Altered:
    return Altered("", 0, message(what, **args))
