"""Takes a record apart, checks its signature and its container, and leaves the rest to the core.

The first place that is not as it was sealed is named: `server/core/record/check.py` says in which order.
"""

import hashlib
from typing import NamedTuple

from server.core.errors import BadInput
from server.core.log import canon
from server.core.messages import message
from server.core.record import check as record_check
from server.core.record import signed
from server.core.record.file import APP
from server.core.record.file import ENTRIES
from server.core.record.file import HASHES
from server.core.record.file import MOST_BYTES
from server.core.record.file import PHONE_APP
from server.core.record.file import RECORD
from server.core.record.file import SEAL
from server.core.record.file import photo_member
from server.keeping.record.container import Broken
from server.keeping.record.container import Cut
from server.keeping.record.container import Member
from server.keeping.record.container import first_difference
from server.keeping.record.container import offsets
from server.keeping.record.container import unpack
from server.log.fault import Fault
from server.log.intake import Malformed
from server.log.intake import read as read_event
from server.phones.signing import is_signed
from server.phones.signing import is_signed_by_phone
from server.refusals import CommandRefused
from server.words.spoken import Told

_SIGNED = {record_check.INSTALLATION: is_signed, record_check.PHONE: is_signed_by_phone}

# How every record begins: the first member's name in its head, then the member itself.
_BEGINNINGS = tuple(b"record.json" + canon.dumps({"app": app}).encode()[:-1] for app in (APP, PHONE_APP))
_NAME_AT = 30


class Altered(Told):
    """A record is not as it was sealed; carries the first place."""

    def __init__(self, fault: Fault):
        """Keeps the place."""
        super().__init__(fault.told())
        self.fault = fault


class Sound(NamedTuple):
    """A record that is as it was sealed: what it says, its events, where in it each photo lies.

    `by` is who sealed it, an installation or a phone; `photos` is digest -> [offset, length], so that
    whoever has the file can show them. Of those in `smaller` a smaller version lies there. `phones` is
    what is said of the phones that recorded the events, as the core takes it.
    """

    record: dict
    by: str
    events: list[dict]
    photos: dict[str, list[int]]
    smaller: list[str]
    phones: list[dict]


def begins(head: bytes) -> bool:
    """Tells by its first bytes whether a file means to be a record."""
    return head[_NAME_AT:].startswith(_BEGINNINGS)


HEAD_BYTES = _NAME_AT + max(map(len, _BEGINNINGS))


def check(data: bytes) -> Sound:
    """Returns what an intact record says; raises Altered with the first place that is not.

    Of a file that was cut short the fault says so: nobody need have touched it.
    """
    if len(data) > MOST_BYTES:
        raise _altered(message("keeping-too-large", most=MOST_BYTES >> 20))
    try:
        members = unpack(data)
    except Broken as error:
        raise _broken(error) from None
    try:
        seal, sound = _checked(members)
    except record_check.Altered as error:
        raise Altered(Fault(*error.place)) from None
    except record_check.Later as error:
        raise CommandRefused(error.message) from None
    difference = first_difference(data, members)
    if difference:
        raise _broken(difference)
    places = offsets(members)
    photos = {digest: places[photo_member(digest)] for digest in sound.photos}
    photos |= {digest: places[photo_member(version)] for digest, version in sound.smaller}
    smaller = [digest for digest, _ in sound.smaller]
    return Sound(sound.record, seal.by, sound.events, photos, smaller, sound.phones)


def _checked(members: list[Member]) -> tuple[record_check.Seal, record_check.Sound]:
    record_check.check_sizes({name: len(content) for name, content in members})
    texts = {
        name: bytes(content).decode("utf-8", "replace")  # what is none is what no hash is over
        for name, content in members
        if name in {RECORD, ENTRIES, HASHES, SEAL}
    }
    seal = record_check.opened(texts[SEAL])
    if not _SIGNED[seal.by](seal.text, seal.signature, seal.key):
        raise record_check.unsigned()
    digests = [[name, hashlib.sha256(content).hexdigest()] for name, content in members]
    sound = record_check.check(seal, digests, texts, _read)
    for each in sound.signatures:
        if not _SIGNED[each.by](each.text, each.signature, each.key):
            raise record_check.Altered(*signed.unfitting(each))
    return seal, sound


def _read(event: dict) -> str:
    try:
        return read_event(event)
    except Malformed as error:
        raise BadInput("event", "", error.message) from None


def _broken(error: Broken) -> Altered:
    return _altered(error.message, cut=isinstance(error, Cut))


def _altered(what: object, *, cut: bool = False) -> Altered:
    return Altered(Fault("", 0, what, cut))
