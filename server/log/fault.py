"""One place in a log, a backup or a record that is not as it was recorded."""

from typing import NamedTuple

from server.core.messages import message


class Fault(NamedTuple):
    """One place that is not as it was recorded; `what` is a message, `device` "" where it is no entry.

    `cut` where the file only ends too early: what is there may be as it was recorded.
    """

    device: str
    seq: int
    what: object
    cut: bool = False

    def told(self) -> dict:
        """Returns the fault as a message: whose entry, which number, what is wrong."""
        if not self.device:
            return message("keeping-fault", what=self.what)
        return message("keeping-fault-entry", device=self.device, seq=str(self.seq), what=self.what)
