"""Where slips go, as the command line has it: LANGUAGE:PLACE, a file, a device or tcp://HOST:PORT."""

import errno
import os
import select
import socket
import stat
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlsplit

from server.core.messages import message
from server.refusals import CommandRefused

LANGUAGES = ("zpl", "escpos")
SOCKET = "tcp://"
# What is named in here is a device, there only while its printer is plugged in; it is never made by us.
DEVICES = "/dev"
SEND_SECONDS = 5.0


class Printer(NamedTuple):
    """A printer's language and place; `address` is None for a file or device."""

    language: str
    place: str
    address: tuple[str, int] | None


def checked(text: str) -> Printer:
    """Returns the printer that the option names; refuses what can never print."""
    language, colon, place = text.partition(":")
    if not colon or language not in LANGUAGES or not place:
        raise CommandRefused(message("slips-no-printer", found=text))
    if language == "escpos":
        try:
            import escpos  # noqa: F401 # here: only who has such a printer needs it
        except ImportError:
            raise CommandRefused(message("slips-no-escpos")) from None
    if place.startswith(SOCKET):
        return Printer(language, place, _address(place))
    if not _is_device(place) or os.path.lexists(place):
        _refuse_no_file(Path(place))
    return Printer(language, place, None)


@contextmanager
def opened(printer: Printer) -> Iterator[Callable[[bytes], None]]:
    """Gives what hands bytes to a printer that takes some; raises OSError where it does not in time.

    Where it raises before it gives that, nothing was handed over.
    """
    if printer.address:
        with socket.create_connection(printer.address, timeout=SEND_SECONDS) as line:
            yield line.sendall
        return
    flags = os.O_WRONLY | os.O_APPEND | os.O_NONBLOCK | os.O_CLOEXEC
    made = 0 if _is_device(printer.place) else os.O_CREAT
    file = os.open(printer.place, flags | made, 0o600)
    try:
        _wait_for(file)
        yield lambda data: _write(file, data)
    finally:
        os.close(file)


def _is_device(place: str) -> bool:
    """Tell whether a place is among the devices; what is mounted there, as /dev/shm is, holds files."""
    path, devices = Path(os.path.abspath(place)), Path(DEVICES)
    if devices not in path.parents:
        return False
    folder = next(each for each in path.parents if each.exists())
    return not devices.exists() or folder.stat().st_dev == devices.stat().st_dev


def _write(file: int, data: bytes) -> None:
    left = memoryview(data)
    while left:
        _wait_for(file)
        left = left[os.write(file, left) :]


def _wait_for(file: int) -> None:
    """Waits until a device takes bytes: one that is out of paper takes none, and never says when it will."""
    if not select.select([], [file], [], SEND_SECONDS)[1]:
        raise TimeoutError(errno.ETIMEDOUT, os.strerror(errno.ETIMEDOUT))


def _address(place: str) -> tuple[str, int]:
    try:
        parts = urlsplit(place)
        host, port = parts.hostname, parts.port
    except ValueError:
        host = port = None
    if not host or not port or parts.path:
        raise CommandRefused(message("slips-no-address", found=place))
    return host, port


def _refuse_no_file(path: Path) -> None:
    if not path.parent.is_dir():
        raise CommandRefused(message("slips-no-folder", place=str(path), folder=str(path.parent)))
    if path.is_dir():
        raise CommandRefused(message("slips-is-folder", place=str(path)))
    asked = path if path.exists() else path.parent
    if not os.access(asked, os.W_OK):
        raise CommandRefused(message("slips-not-writable", place=str(path)))
    if path.exists() and stat.S_ISBLK(path.stat().st_mode):
        raise CommandRefused(message("slips-is-disk", place=str(path)))
