"""Where slips go, as the command line has it: LANGUAGE:PLACE, a file, a device or tcp://HOST:PORT."""

import os
import select
import socket
import stat
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlsplit

from server.core.messages import message
from server.refusals import CommandRefused

LANGUAGES = ("zpl", "escpos")
SOCKET = "tcp://"
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
    _refuse_no_file(Path(place))
    return Printer(language, place, None)


def send(printer: Printer, data: bytes) -> None:
    """Hands bytes to the printer; raises OSError where it does not take them in time."""
    if printer.address:
        with socket.create_connection(printer.address, timeout=SEND_SECONDS) as line:
            line.sendall(data)
        return
    flags = os.O_WRONLY | os.O_APPEND | os.O_CREAT | os.O_NONBLOCK | os.O_CLOEXEC
    file = os.open(printer.place, flags, 0o600)
    try:
        left = memoryview(data)
        while left:
            # A device that is out of paper takes nothing more, and never says when it will.
            if not select.select([], [file], [], SEND_SECONDS)[1]:
                raise TimeoutError(os.strerror(110))
            left = left[os.write(file, left) :]
    finally:
        os.close(file)


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
