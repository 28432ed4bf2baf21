"""A record of a sensor or a job as a sort of file to verify."""

from pathlib import Path

from server.core.record_file import MOST_BYTES
from server.fault import Fault
from server.record.check import HEAD_BYTES
from server.record.check import Altered
from server.record.check import begins
from server.record.check import check
from server.verify.sort import Sort


def fits(path: Path) -> bool:
    """Tells whether `path` means to be a record; one that is cut short still does."""
    if not path.is_file():
        return False
    with path.open("rb") as file:
        return begins(file.read(HEAD_BYTES))


def first_fault(path: Path) -> Fault | None:
    """Returns the first fault of a record."""
    with path.open("rb") as file:
        data = file.read(MOST_BYTES + 1)
    try:
        check(data)
    except Altered as error:
        return error.fault
    return None


RECORD = Sort("a record", fits, first_fault)
