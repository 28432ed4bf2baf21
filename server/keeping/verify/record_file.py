"""A record of a sensor or a job as a sort of file to verify."""

from pathlib import Path

from server.core.messages import message
from server.core.record import check as record_check
from server.core.record.file import MOST_BYTES
from server.keeping.record.check import HEAD_BYTES
from server.keeping.record.check import Altered
from server.keeping.record.check import Sound
from server.keeping.record.check import begins
from server.keeping.record.check import check
from server.keeping.verify.sort import Sort
from server.log.fault import Fault
from server.phones.signing import fingerprint
from server.words.spoken import say


def fits(path: Path) -> bool:
    """Tells whether `path` means to be a record; one that is cut short still does."""
    if not path.is_file():
        return False
    with path.open("rb") as file:
        return begins(file.read(HEAD_BYTES))


def first_fault(path: Path) -> Fault | None:
    """Returns the first fault of a record."""
    try:
        _checked(path)
    except Altered as error:
        return error.fault
    return None


def maker(path: Path) -> str:
    """Says what sealed a record (whose key it is, it cannot say), and what only that one vouches for."""
    sound = _checked(path)
    maker_key = fingerprint(sound.record["key"])
    by_phone = sound.by == record_check.PHONE
    said = say("keeping-sealed-phone" if by_phone else "keeping-sealed", key=maker_key)
    if not sound.smaller:
        return said
    return said + "\n" + say("keeping-smaller", count=len(sound.smaller))


def _checked(path: Path) -> Sound:
    with path.open("rb") as file:
        return check(file.read(MOST_BYTES + 1))


RECORD = Sort(message("keeping-sort-record"), fits, first_fault, maker=maker)
