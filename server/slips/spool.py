"""Prints slips in a thread beside the server; one that cannot be printed now waits, and holds up nobody."""

import logging
import threading
from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager

from flask import Flask

from server.beside import beside
from server.slips import place
from server.slips.place import Printer
from server.slips.slip import Slip

log = logging.getLogger(__name__)

EXTENSION = "slips"
MOST_WAITING = 500
AGAIN_SECONDS = 3.0


class Spool:
    """The slips that wait for a printer, the oldest first."""

    def __init__(self, printer: Printer) -> None:
        """Sends nothing yet."""
        self.printer = printer
        self.trouble = ""
        self._waiting: deque[Slip] = deque()
        self._lock = threading.Lock()
        self._wanted = threading.Event()

    @property
    def waiting(self) -> int:
        """How many slips wait."""
        return len(self._waiting)

    def add(self, slip: Slip) -> bool:
        """Lets a slip wait for its turn; False where too many do."""
        with self._lock:
            if len(self._waiting) >= MOST_WAITING:
                return False
            self._waiting.append(slip)
        self._wanted.set()
        return True

    def wake(self) -> None:
        """Ends a pause."""
        self._wanted.set()

    def go(self, ended: threading.Event) -> None:
        """Prints what waits until `ended` is set."""
        while True:
            self._wanted.clear()  # before the look at the end: a wake that comes with that is kept
            if ended.is_set():
                return
            while self._waiting and not ended.is_set() and self._print(self._waiting[0]):
                with self._lock:
                    self._waiting.popleft()
            # With a trouble it is tried again after a while; without one, when there is something to print.
            self._wanted.wait(AGAIN_SECONDS if self._waiting else None)

    def _print(self, slip: Slip) -> bool:
        try:
            place.send(self.printer, _bytes_of(self.printer, slip))
        except OSError as error:
            trouble = error.strerror or str(error)
            if trouble != self.trouble:
                log.warning("the printer %s takes no slip: %s", self.printer.place, trouble)
            self.trouble = trouble
            return False
        except Exception:
            log.exception("a slip could not be made, and is left out")
            return True
        self.trouble = ""
        return True


@contextmanager
def printing(app: Flask, printer: Printer | None) -> Iterator[None]:
    """Lets an app print slips until the block ends."""
    if printer is None:
        yield
        return
    spool = Spool(printer)
    app.extensions[EXTENSION] = spool
    with beside("prints slips", spool.go, spool.wake):
        yield


def _bytes_of(printer: Printer, slip: Slip) -> bytes:
    if printer.language == "zpl":
        from server.slips import zpl as language
    else:
        from server.slips import escpos as language  # type: ignore[no-redef]  # here: it needs a package of its own
    return language.bytes_of(slip)
