"""What a command itself made of a data folder, and that it uses one, so that it can take back its own alone.

Whoever uses a data folder holds its folder of keys locked together with the others who do. (Not its
database: SQLite's own locks would go with the file that is closed here.)
"""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from contextlib import suppress
from contextvars import ContextVar
from pathlib import Path

try:
    import fcntl
except ImportError:  # Windows; there nobody is known to be alone
    fcntl = None  # type: ignore[assignment]


class Work:
    """What one command made, in the order of making, and the folders that it holds; absolute paths."""

    def __init__(self) -> None:
        """Begins with nothing."""
        self.made: list[Path] = []
        self.held: dict[Path, int] = {}

    def hold(self, folder: Path) -> bool:
        """Holds a folder together with others; returns whether it is still the one of that name."""
        if fcntl is None or (folder in self.held and _is_at(self.held[folder], folder)):
            return True
        descriptor = os.open(folder, os.O_RDONLY)
        with suppress(OSError):  # a file system without locks: there nobody is ever alone
            fcntl.flock(descriptor, fcntl.LOCK_SH)
        if not _is_at(descriptor, folder):
            os.close(descriptor)
            return False
        self._let_go(folder)
        self.held[folder] = descriptor
        return True

    def is_alone(self, folder: Path) -> bool:
        """Tells whether nobody else holds the folder; then nobody can until the end of the command."""
        try:
            fcntl.flock(self.held[folder], fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            return False
        return _is_at(self.held[folder], folder)

    def end(self) -> None:
        """Lets go of everything."""
        for folder in list(self.held):
            self._let_go(folder)

    def _let_go(self, folder: Path) -> None:
        if folder in self.held:
            os.close(self.held.pop(folder))


_now: ContextVar[Work | None] = ContextVar("_now", default=None)


@contextmanager
def noted() -> Iterator[Work]:
    """Notes what is made from here on, and holds the data folders that are used, until the end."""
    work = Work()
    before = _now.set(work)
    try:
        yield work
    finally:
        _now.reset(before)
        work.end()


def note(path: Path) -> None:
    """Notes a file or folder that was not there, and that nobody else has made."""
    work = _now.get()
    if work is not None:
        work.made.append(path.absolute())


def hold(folder: Path) -> bool:
    """Holds a folder until the end of the command; False where it was taken away meanwhile."""
    work = _now.get()
    return work is None or work.hold(folder.absolute())


def _is_at(descriptor: int, path: Path) -> bool:
    try:
        return os.path.samestat(os.fstat(descriptor), os.stat(path))
    except FileNotFoundError:
        return False
