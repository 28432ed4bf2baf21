"""An answer on its way: written by a worker all at once, sent by the loop as the client takes it."""

import tempfile
from collections import deque
from contextlib import suppress
from typing import IO


class Answer:
    """The file that cheroot writes an answer to.

    What is short, or lies in memory anyway as the app's files do, stays there uncopied; a long one goes
    to a temporary file. Where the disk takes none, memory has to: an answer is never cut off for that.
    """

    closed = False

    def __init__(self, memory_bytes: int):
        """Takes up to `memory_bytes` in memory."""
        self._memory_bytes = memory_bytes
        self._file: IO[bytes] | None = None
        self._disk_takes = True
        self._chunks: deque[memoryview] = deque()
        self._in_memory = 0
        self.bytes_written = 0

    def write(self, data: bytes) -> int:
        """Takes the next bytes of the answer."""
        self._chunks.append(memoryview(data))
        self._in_memory += len(data)
        self.bytes_written += len(data)
        if self._in_memory > self._memory_bytes and self._disk_takes:
            self._move_to_disk()
        return len(data)

    def flush(self) -> None:
        """Does nothing: the answer goes out when it is complete."""

    def rewind(self) -> None:
        """Goes to the beginning, to be sent."""
        if self._file:
            self._file.seek(0)

    def read(self, size: int) -> memoryview:
        """Returns the next bytes to send, at most `size`; none at the end."""
        if self._file and (data := self._file.read(size)):
            return memoryview(data)
        if not self._chunks:
            return memoryview(b"")
        chunk = self._chunks.popleft()
        if len(chunk) > size:
            self._chunks.appendleft(chunk[size:])
        return chunk[:size]

    def close(self) -> None:
        """Frees the answer's place."""
        self._chunks.clear()
        if self._file:
            self._file.close()

    def _move_to_disk(self) -> None:
        end = self._file.tell() if self._file else 0
        try:
            self._file = self._file or tempfile.TemporaryFile(buffering=0)  # noqa: SIM115
            for chunk in self._chunks:
                _write_all(self._file, chunk)
        except OSError:
            self._disk_takes = False
            with suppress(OSError):
                if self._file:
                    self._file.truncate(end)
                    self._file.seek(end)
            return
        self._chunks.clear()
        self._in_memory = 0


def _write_all(file: IO[bytes], data: memoryview) -> None:
    while data:
        data = data[file.write(data) :]
