"""`swaptrail verify FILE`: whether what is kept is what was recorded, and if not, where first.

Each sort of file is one `Sort`: how to tell it, and how to find its first fault. `SORTS` lists
them; a further sort of file is one more entry.
"""

from pathlib import Path
from typing import NamedTuple

from server.core.messages import any_of
from server.core.messages import message
from server.keeping.verify.backup_zip import BACKUP
from server.keeping.verify.data_folder import FOLDER
from server.keeping.verify.record_file import RECORD
from server.keeping.verify.sort import Sort
from server.keeping.verify.unsent_check import UNSENT
from server.log.fault import Fault
from server.refusals import CommandRefused
from server.storage import folder_with_data
from server.words.spoken import say
from server.words.spoken import text

__all__ = ["SORTS", "Fault", "Found", "examine", "run", "tell_lost"]

_MOST_LINES = 20

SORTS: tuple[Sort, ...] = (FOLDER, BACKUP, RECORD, UNSENT)


class Found(NamedTuple):
    """What a file is, and its first fault or None."""

    sort: Sort
    fault: Fault | None


def examine(path: Path, wanted: tuple[Sort, ...] = SORTS) -> Found:
    """Returns what `path` is and its first fault; refuses what is none of the sorts by what is `wanted`."""
    named = any_of([sort.name for sort in wanted])
    if not path.exists():
        raise CommandRefused(message("keeping-no-file", file=str(path), wanted=named))
    for sort in SORTS:
        if sort.fits(path):
            return Found(sort, sort.first_fault(path))
    raise CommandRefused(message("keeping-not-ours", file=str(path), wanted=named))


def run(path: Path, data: Path | None = None) -> int:
    """Prints what is found; returns 0 for intact, 1 for altered, cut short, or at odds with its entries.

    `data` is the data folder that knows whose seals are whose.
    """
    if data is not None:
        folder_with_data(data)
    sort, fault = examine(path)
    if fault is None:
        print(say("keeping-intact", file=str(path), sort=sort.name))
        if sort.told is None:
            return 0
        telling = sort.told(path, data)
        print("\n".join(telling.lines))
        return 0 if telling.agrees else 1
    verdict = "keeping-incomplete" if fault.cut else "keeping-altered"
    print(say(verdict, file=str(path), sort=sort.name, place=fault.told()))
    if sort.lost_photos:
        tell_lost(list(sort.lost_photos(path)))
    return 1


def tell_lost(photos: list[Fault]) -> None:
    """Prints the photos that are missing or damaged, if there are any."""
    if photos:
        print(say("keeping-lost", photos=len(photos)))
        print("\n".join(text(photo.told()) for photo in photos[:_MOST_LINES]))
