"""A bell that any thread may ring, so that a loop which waits for sockets wakes up."""

import socket
from contextlib import suppress


class Bell:
    """Two ends of a socket: the loop waits for what `waits_on` brings."""

    def __init__(self) -> None:
        self.waits_on, self._rope = socket.socketpair()
        for end in (self.waits_on, self._rope):
            end.setblocking(False)

    def ring(self) -> None:
        """Wakes the loop; a bell that is taken down, or rings already, takes it as well."""
        with suppress(BlockingIOError, OSError):
            self._rope.send(b"!")

    def hush(self) -> None:
        """Takes note that it rang."""
        with suppress(BlockingIOError):
            self.waits_on.recv(4096)

    def close(self) -> None:
        """Takes it down."""
        self.waits_on.close()
        self._rope.close()
