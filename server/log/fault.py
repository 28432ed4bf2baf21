"""One place in a log, a backup or a record that is not as it was recorded."""

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
