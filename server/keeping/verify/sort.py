"""What a sort of file has to bring to be verified."""

from collections.abc import Callable
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from server.log.fault import Fault


class Sort(NamedTuple):
    """A sort of file that can be verified; `name`, a message, is what one is called."""

    name: dict
    fits: Callable[[Path], bool]
    first_fault: Callable[[Path], Fault | None]
    lost_photos: Callable[[Path], Iterator[Fault]] | None = None  # all, where a phone may still have them
    maker: Callable[[Path], str] | None = None  # sentences on who made an intact one, where it says so
