"""What stands against a record that somebody brings: it is not as it was sealed, or of a later version."""

from ..messages import message


class Altered(Exception):
    """A record is not as it was sealed; carries the first place, (device or "", seq, message)."""

    def __init__(self, device: str, seq: int, what: dict):
        """Keep the place."""
        super().__init__(what["msg"])
        self.place = (device, seq, what)


class Later(Exception):
    """A record of a version that is not known here; the message says what to do."""

    def __init__(self, message: dict):
        """Keep the message."""
        super().__init__(message["msg"])
        self.message = message


def altered(what: str, **args) -> Altered:
    """Return what is wrong with a record in a place that is no entry: a message, with what it names."""
    return Altered("", 0, message(what, **args))
