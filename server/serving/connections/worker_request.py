"""What a worker thread gets: a request that is whole, and a place to put the answer. No socket.

A worker waits for nobody: the request lies here in full before it begins, and the connection loop sends
the answer, however slowly the client takes it.
"""

import io
from collections.abc import Callable

from cheroot.server import HTTPConnection

from server.serving.connections.answer import Answer
from server.serving.connections.hold import Hold
from server.serving.connections.request_reader import WholeRequest


class WorkerRequest(HTTPConnection):
    """One request on its way through a worker, as cheroot's worker threads know a connection."""

    def __init__(
        self,
        server: object,
        whole: WholeRequest,
        memory_bytes: int,
        done: Callable[["WorkerRequest", bool], None],
    ):
        """`done` is called with whether the connection may be kept, once the answer is complete."""
        self.answer = Answer(memory_bytes)
        files = {"rb": GatheredRequest(whole), "wb": self.answer}
        super().__init__(server, _NoSocket(), lambda sock, mode, size: files[mode])
        self.hold: Hold | None = None
        self._done = done
        self._is_done = False

    def hold_back(self, seconds: float) -> Hold:
        """Has the answer, once it is complete, kept back for so long at most."""
        self.hold = Hold(seconds)
        return self.hold

    def keep(self) -> None:
        """The worker has answered, and the connection may carry another request."""
        self._end(keep=True)

    def close(self) -> None:
        """The worker has answered, or failed to, and the connection ends with that."""
        self._end(keep=False)

    def _end(self, *, keep: bool) -> None:
        if not self._is_done:
            self._is_done = True
            self.rfile.close()
            self._done(self, keep)


class GatheredRequest:
    """The file that cheroot reads a request from: the head, then the body."""

    closed = True  # there is nothing that a worker could be stuck in, and so nothing to cut off

    def __init__(self, whole: WholeRequest):
        self._parts = [io.BytesIO(whole.head), whole.body]
        self.bytes_read = 0

    def read(self, size: int | None = None) -> bytes:
        """Returns at most `size` bytes of the part that is being read; the head is read as lines."""
        return self._count(self._parts[0].read(-1 if size is None else size))

    def readline(self, size: int | None = None) -> bytes:
        """Returns the next line, or `size` bytes of it."""
        return self._count(self._parts[0].readline(-1 if size is None else size))

    def has_data(self) -> bool:
        """Tells cheroot that nothing of a next request is in here."""
        return False

    def close(self) -> None:
        """Frees the body's place."""
        for part in self._parts:
            part.close()

    def _count(self, data: bytes) -> bytes:
        self.bytes_read += len(data)
        head = self._parts[0]
        if len(self._parts) > 1 and isinstance(head, io.BytesIO) and head.tell() == len(head.getvalue()):
            del self._parts[0]
        return data


class _NoSocket:
    """Stands where cheroot keeps a connection's socket, which only the connection loop may touch."""

    def shutdown(self, how: int) -> None:
        """Does nothing."""
