"""What a sort of file has to bring to be verified."""

from collections.abc import Callable
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from server.log.fault import Fault


class Telling(NamedTuple):
    """What an intact file says, line by line; `agrees` is whether it says what follows from what is in it."""

    lines: list[str]
    agrees: bool


class Sort(NamedTuple):
    """A sort of file that can be verified; `name`, a message, is what one is called."""

    name: dict
    fits: Callable[[Path], bool]
    first_fault: Callable[[Path], Fault | None]
    lost_photos: Callable[[Path], Iterator[Fault]] | None = None  # all, where a phone may still have them
    # What an intact one says, where it says more than that, by what the data folder beside it knows, if any.
    told: Callable[[Path, Path | None], Telling] | None = None
