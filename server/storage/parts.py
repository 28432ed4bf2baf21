"""Files and folders that are there only while something is being written.

Their writer holds them locked as long as it lives, and takes them away at its end. Of a writer that was
killed they stay behind; what nobody holds any more is taken away at a next start, and nothing else is.
"""

import os
import re
import secrets
import shutil
import tempfile
import time
from collections.abc import Callable
from collections.abc import Iterable
from collections.abc import Iterator
from contextlib import contextmanager
from contextlib import suppress
from pathlib import Path

try:
    import fcntl
except ImportError:  # Windows; there age alone tells
    fcntl = None  # type: ignore[assignment]

DEMO = "swaptrail-demo-"
_OURS = ".swaptrail-"
_BESIDE = re.compile(r"\.swaptrail-[0-9a-f]{8}(-.+\.part)?")
_DEMO = re.compile(rf"{DEMO}[0-9a-f]{{8}}")
_PHOTO = re.compile(r"[0-9a-f]{64}\.jpg\.[0-9a-f]{8}\.part")
_KEY = re.compile(r".+\.[0-9a-f]{8}\.part")
_OLD_SECONDS = 24 * 60 * 60  # where nothing can be locked


def name_for(path: Path) -> Path:
    """Returns a name to write under in a folder that holds other people's files too."""
    return path.with_name(f"{_OURS}{secrets.token_hex(4)}-{path.name}.part")


def name_inside(path: Path) -> Path:
    """Returns a name to write under in a folder of the program's own."""
    return path.with_name(f"{path.name}.{secrets.token_hex(4)}.part")


@contextmanager
def making(part: Path, mode: int = 0o600) -> Iterator[Path]:
    """Gives an empty file under that name, held until the end; gone then, unless it was renamed."""
    with _held(part, lambda: os.close(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode))):
        try:
            yield part
        finally:
            part.unlink(missing_ok=True)


@contextmanager
def making_folder(part: Path) -> Iterator[Path]:
    """Gives an empty folder under that name, held until the end; gone then, unless it was renamed."""
    with _held(part, lambda: part.mkdir(mode=0o700)):
        try:
            yield part
        finally:
            shutil.rmtree(part, ignore_errors=True)


@contextmanager
def scratch_folder(parent: Path | None = None, start: str = _OURS) -> Iterator[Path]:
    """Gives an empty folder of one's own in `parent`, or where temporary files lie."""
    folder = parent or Path(tempfile.gettempdir())
    take_away_left(beside(folder))
    with making_folder(folder / f"{start}{secrets.token_hex(4)}") as made:
        yield made


def beside(folder: Path) -> Iterator[Path]:
    """Yields what writers of ours left, or are making, in a folder that holds other things too."""
    try:
        names = sorted(os.listdir(folder))
    except OSError:  # a folder that may be written to but not listed
        return
    yield from (folder / name for name in names if _BESIDE.fullmatch(name) or _DEMO.fullmatch(name))


def inside(photos: Path, keys: Path) -> Iterator[Path]:
    """Yields the same in the two folders of a data folder that are written to by file."""
    yield from (path for path in sorted(photos.glob("??/*.part")) if _PHOTO.fullmatch(path.name))
    yield from (path for path in sorted(keys.glob("*.part")) if _KEY.fullmatch(path.name))


def take_away_left(candidates: Iterable[Path]) -> int:
    """Takes away those whose writer is gone; returns how many."""
    return sum(map(_take_away, candidates))


def _take_away(path: Path) -> bool:
    try:
        if path.is_symlink() or (os.name != "nt" and path.lstat().st_uid != os.geteuid()):
            return False
        if fcntl is None:
            if time.time() - path.stat().st_mtime < _OLD_SECONDS:
                return False
            return _remove(path)
        descriptor = os.open(path, os.O_RDONLY | os.O_NOFOLLOW)
    except OSError:  # taken away by somebody else, or not ours to open
        return False
    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        return _remove(path)
    except OSError:  # its writer lives
        return False
    finally:
        os.close(descriptor)


def _remove(path: Path) -> bool:
    if path.is_dir():
        shutil.rmtree(path)
    else:
        path.unlink()
    return True


@contextmanager
def _held(path: Path, make: Callable[[], object]) -> Iterator[None]:
    """Makes a file or folder and holds it locked."""
    if fcntl is None:
        make()
        yield
        return
    while True:
        make()
        descriptor = os.open(path, os.O_RDONLY)
        with suppress(OSError):  # a file system without locks: then only its age could tell
            fcntl.flock(descriptor, fcntl.LOCK_EX)
        with suppress(FileNotFoundError):
            if os.path.samestat(os.fstat(descriptor), os.stat(path)):
                break
        os.close(descriptor)  # taken for left behind before it was held
    try:
        yield
    finally:
        os.close(descriptor)
