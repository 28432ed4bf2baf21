"""Where an answer lies until it is sent: short in memory, long on disk, and whole whatever the disk says."""

import errno
import tempfile

import pytest

from server.serving.connections.answer import Answer

PIECES = [bytes([number]) * 700 for number in range(20)]


def read_all(answer, size):
    answer.rewind()
    pieces = list(iter(lambda: bytes(answer.read(size)), b""))
    assert all(len(piece) <= size for piece in pieces)
    return b"".join(pieces)


@pytest.mark.parametrize("memory", [0, 1000, 5000, 100_000])
@pytest.mark.parametrize("size", [1, 333, 100_000])
def test_it_comes_out_as_it_went_in(memory, size):
    answer = Answer(memory)
    for piece in PIECES:
        answer.write(piece)

    assert read_all(answer, size) == b"".join(PIECES)
    assert answer.bytes_written == 14_000
    answer.close()


@pytest.mark.parametrize("loop", [0, 500, 3000])
def test_a_full_disk_cuts_nothing_off(monkeypatch, loop):
    real = tempfile.TemporaryFile

    class Full:
        def __init__(self, **how):
            self._file = real(**how)
            self._left = loop

        def write(self, data):
            if not self._left:
                raise OSError(errno.ENOSPC, "No space left on device")
            taken = self._file.write(data[: self._left])
            self._left -= taken
            return taken

        def __getattr__(self, name):
            return getattr(self._file, name)

    monkeypatch.setattr(tempfile, "TemporaryFile", Full)
    answer = Answer(1500)
    for piece in PIECES:
        answer.write(piece)

    assert read_all(answer, 999) == b"".join(PIECES)
    answer.close()
