"""The listening socket: who comes in by it, and when it rests because no more sockets can be opened."""

import errno
import selectors
import socket
import ssl
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import suppress

from server.serving.connections.peer import Peer
from server.serving.connections.peer import plain_address

GiveContext = Callable[[], ssl.SSLContext]

_ACCEPTED_AT_ONCE = 32
_REST = 0.25  # seconds until it is tried again
_NO_DESCRIPTORS = {errno.EMFILE, errno.ENFILE, errno.ENOBUFS, errno.ENOMEM}


class NoDescriptors(Exception):
    """The process may open no more files."""


class Entrance:
    """Lets clients in, as sockets that never block; all of it runs in the thread of the connection loop."""

    def __init__(
        self, listening: socket.socket, selector: selectors.BaseSelector, context: GiveContext | None
    ):
        """`context` gives what to serve TLS with; None serves plain HTTP."""
        self._listening = listening
        self._selector = selector
        self._context = context
        self._again: float | None = None
        listening.setblocking(False)
        selector.register(listening, selectors.EVENT_READ)

    def newcomers(self) -> Iterator[tuple[socket.socket, Peer]]:
        """Yields those who wait outside, so many at once; raises NoDescriptors where one can't come in."""
        for _ in range(_ACCEPTED_AT_ONCE):
            try:
                sock, address = self._listening.accept()
            except OSError as error:
                if error.errno in _NO_DESCRIPTORS:
                    raise NoDescriptors from error
                return
            ready = self._made_ready(sock)
            if ready is not None:
                yield ready, Peer(plain_address(address[0]), address[1])

    def _made_ready(self, sock: socket.socket) -> socket.socket | None:
        try:
            sock.setblocking(False)
            if self._context is not None:
                return self._context().wrap_socket(sock, server_side=True, do_handshake_on_connect=False)
        except OSError:  # gone again
            sock.close()
            return None
        except Exception:
            sock.close()
            raise
        return sock

    def rest(self, at: float) -> None:
        """Lets nobody in for a while: whoever waits outside would keep the loop busy with failing."""
        self._selector.unregister(self._listening)
        self._again = at + _REST

    def wake(self, at: float) -> None:
        """Lets clients in again once it has rested."""
        if self._again is not None and at >= self._again:
            self._again = None
            self._selector.register(self._listening, selectors.EVENT_READ)

    def close(self) -> None:
        """Lets nobody in any more."""
        self._again = None
        with suppress(KeyError, ValueError):
            self._selector.unregister(self._listening)
        self._listening.close()
