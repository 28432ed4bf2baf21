"""What verification answers with, and what a sort of file has to bring."""

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple


class Fault(NamedTuple):
    """One place that is not as it was recorded; `device` is "" where no entry is concerned."""

    device: str
    seq: int
    what: str

    def sentence(self) -> str:
        """Returns the fault in words: whose entry, which number, what is wrong."""
        if not self.device:
            return f"{self.what}."
        return f"device {self.device}, entry {self.seq}: {self.what}."


class Sort(NamedTuple):
    """A sort of file that can be verified."""

    name: str
    fits: Callable[[Path], bool]
    first_fault: Callable[[Path], Fault | None]
