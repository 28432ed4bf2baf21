"""Reads a record and names the first place in it that is not as it was sealed, on both hosts.

In the order of trust: the seal tells which parts are as they were, the list of hashes which entry is
not, an entry's hash of its photo which photo is not. Bytes stay with the host: it takes the file apart,
hashes each member, checks the signature between `opened` and `check`, and at last compares the file,
byte for byte, with how its members are written.
"""

from collections import namedtuple

from ..log import canon
from ..messages import message
from . import named
from . import signed
from .altered import Altered
from .altered import Later
from .altered import altered
from .events import events_as_hashed
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
from .form import plain
from .form import read_hashes

INSTALLATION, PHONE = "installation", "phone"  # who seals

_TEXTS = (RECORD, ENTRIES, HASHES, SEAL)
_SEALED_BY = {SEAL_APP: INSTALLATION, PHONE_SEAL_APP: PHONE}
_SEAL_FIELDS = ("app", "v", "key", "digests")

# A seal as it is written: who made it, with which key, over which text, and the digest of each part.
Seal = namedtuple("Seal", ("by", "key", "signature", "text", "digests"))
# A record that is as it was sealed: what it says, its events, the photos in it that an entry names, [photo,
# version] of those that are in it smaller (that both show the same, only who sealed it says), and the
# signatures of phones in it, which the host checks.
Sound = namedtuple("Sound", ("record", "events", "photos", "smaller", "signatures", "phones"))


def check_sizes(sizes: dict) -> None:
    """Raise Altered unless every part that is text is there, and none is larger than in any record."""
    for name in _TEXTS:
        if name not in sizes:
            raise altered("record-not-in", file=name)
        if sizes[name] > MOST_TEXT:
            raise altered("record-larger", file=name)


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
        raise altered("record-no-seal", file=SEAL)
    return Seal(_SEALED_BY[seal["app"]], key, signature, canon.dumps(body), digests)


def unsigned() -> Altered:
    """Return what is wrong where the signature of a seal does not fit."""
    return altered("record-unsigned", file=SEAL)


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
    events = events_as_hashed(texts[ENTRIES], members[ENTRIES], seal.digests.get(ENTRIES), hashes, read)
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


def _record(text: str, seal: Seal) -> dict:
    try:
        record = plain(text)
    except NotOfTheForm:
        raise altered("record-changed-form", file=RECORD)
    version = record.get("v")
    if isinstance(version, int) and version > LATEST:
        raise Later(message("record-later", version=str(version)))
    fields = {}
    for name in seal.digests:
        if name.startswith(FIELD):
            fields[name[len(FIELD) :]] = True
    for name in sorted(set(list(fields) + list(record))):
        if name not in record:
            raise altered("record-field-missing", file=RECORD, field=name)
        if name not in fields:
            raise altered("record-field-added", file=RECORD, field=name)
        if canon.sha256_hex(canon.dumps(record[name])) != seal.digests[FIELD + name]:
            raise altered("record-field-changed", file=RECORD, field=name)
    try:
        check_record(record)
    except NotOfTheForm:
        raise altered("record-no-record", file=RECORD)
    if record["key"] != seal.key or (record["app"] == PHONE_APP) != (seal.by == PHONE):
        raise altered("record-other-key", file=RECORD)
    return record


def _hashes(text: str, members: dict, seal: Seal) -> Hashes:
    if members[HASHES] != seal.digests.get(HASHES):
        raise altered("record-changed", file=HASHES)
    try:
        return read_hashes(text)
    except NotOfTheForm:
        raise altered("record-no-hashes", file=HASHES)


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
            raise altered("record-put-in", file=name)
        if digest != seal.digests[name]:
            raise altered("record-changed", file=name)
    for name in sorted(seal.digests):
        if not name.startswith(FIELD) and name not in there:
            raise altered("record-not-in", file=name)
