"""Keeps what lies in a data folder from the other users of the machine."""

import os
import stat
from contextlib import suppress
from pathlib import Path

from .own_work import note

_OTHERS = 0o077


def make_private_folder(path: Path) -> None:
    """Makes a folder that only its owner may enter; one that is there already is tightened."""
    _make(path, 0o700)
    tighten(path)


def make_private_file(path: Path) -> None:
    """Makes an empty file that only its owner may read; one that is there already is tightened."""
    with suppress(FileExistsError):
        os.close(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600))
        note(path)
    tighten(path)


def _make(folder: Path, mode: int) -> None:
    """Makes a folder and those above it that are missing, and notes each."""
    if not folder.parent.exists():
        _make(folder.parent, 0o777)
    try:
        folder.mkdir(mode)
    except FileExistsError:
        if not folder.is_dir():
            raise
    else:
        note(folder)


def tighten(path: Path) -> None:
    """Takes from the other users what they may do with a file or folder of ours, and gives us nothing more.

    A folder that all users share (with the sticky bit, as the system's temporary one) stays as it is.
    """
    if os.name == "nt" or not path.exists():
        return
    status = path.stat()
    if status.st_uid != os.geteuid() or not status.st_mode & _OTHERS or status.st_mode & stat.S_ISVTX:
        return
    with suppress(PermissionError, OSError):  # a disk that is open for reading alone keeps its modes
        path.chmod(stat.S_IMODE(status.st_mode) & ~_OTHERS)
