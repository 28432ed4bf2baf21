"""The slips that wait, in a file of the data folder: a restart neither loses one nor prints it twice.

The file is no part of a backup, for what has waited in one was printed since.
"""

import json
import logging
from pathlib import Path
from typing import NamedTuple

from server.slips.slip import Slip
from server.storage.durable import write_whole

log = logging.getLogger(__name__)

FILE = "slips.json"


class Waiting(NamedTuple):
    """A slip and how it stands."""

    slip: Slip
    decision: str  # the entry that it is of
    asked_at: int  # ms
    begun: bool  # the printer was given some of it, and nobody knows how much of that is on paper

    def is_aside(self, since: int) -> bool:
        """Tells whether a person has to say what becomes of it: half printed, or asked for before `since`."""
        return self.begun or self.asked_at < since


def read(path: Path) -> list[Waiting]:
    """Returns what the file holds, the oldest first; nothing of a file that cannot be read."""
    try:
        kept = json.loads(path.read_text(encoding="utf-8"))
        return [
            Waiting(Slip(*each["slip"]), each["decision"], each["asked_at"], each["begun"]) for each in kept
        ]
    except FileNotFoundError:
        return []
    except (OSError, ValueError, TypeError, KeyError):
        log.exception("the slips that waited in %s cannot be read, and are left out", path)
        return []


def write(path: Path, waiting: list[Waiting]) -> None:
    """Writes them all. A disk that takes no more loses no decision: a slip can be asked for again."""
    try:
        if waiting:
            kept = [{**each._asdict(), "slip": list(each.slip)} for each in waiting]
            write_whole(path, json.dumps(kept).encode())
        else:
            path.unlink(missing_ok=True)
    except OSError as error:
        log.warning("the slips that wait cannot be kept in %s: %s", path, error.strerror)
