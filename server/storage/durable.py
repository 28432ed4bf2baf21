"""What it takes for a file to be still there after a power cut: its bytes, then its name."""

import os
from pathlib import Path

from .parts import making
from .parts import name_inside


def sync_file(path: Path) -> None:
    """Makes a file's bytes durable."""
    with path.open("rb+") as file:
        os.fsync(file.fileno())


def sync_folder(folder: Path) -> None:
    """Makes a new name in a folder durable; only where folders can be opened (not on Windows)."""
    if os.name == "nt":
        return
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    finally:
        os.close(descriptor)


def write_whole(path: Path, content: bytes) -> None:
    """Writes a file of a data folder: it stands under its name in full or not at all, for its owner alone."""
    with making(name_inside(path)) as part:
        with part.open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, path)
    sync_folder(path.parent)
