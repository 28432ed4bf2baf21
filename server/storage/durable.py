"""What it takes for a file to be still there after a power cut: its bytes, then its name."""

import os
from pathlib import Path


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
