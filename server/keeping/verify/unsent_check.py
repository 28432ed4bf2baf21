"""The file that a phone makes of what it recorded, as a sort of file to verify."""

from pathlib import Path

from server.core.messages import message
from server.keeping.verify.sort import Sort
from server.log import unsent_file
from server.log.fault import Fault


def fits(path: Path) -> bool:
    """Tells whether `path` is such a file of a version that is known here."""
    return path.is_file() and unsent_file.is_one(path)


def first_fault(path: Path) -> Fault | None:
    """Returns the first place that is not as it was written; also where the file breaks off."""
    entries = photos = 0
    try:
        for part in unsent_file.parts(path):
            if isinstance(part, unsent_file.End) and not part.whole:
                there = {"entries": entries, "photos": photos}
                told = {"of_entries": part.entries, "of_photos": part.photos}
                return Fault("", 0, message("keeping-cut-off", **there, **told))
            entries += isinstance(part, unsent_file.Entry)
            photos += isinstance(part, unsent_file.Photo)
    except unsent_file.Altered as error:
        return error.fault
    return None


UNSENT = Sort(message("keeping-sort-phone-file"), fits, first_fault)
