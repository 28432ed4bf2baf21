"""Prints slips in a thread beside the server; one that cannot be printed now waits, and holds up nobody.

Each is printed once at most: of one that the printer was given when the server or the line broke off, nobody
knows whether it is on paper. A person says what becomes of it, and of one that has waited for a day.
"""

import logging
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from flask import Flask

from server.beside import beside
from server.beside import turns
from server.clock import now_ms
from server.core.words.words import DAY_MS
from server.slips import kept
from server.slips import place
from server.slips.kept import Waiting
from server.slips.place import Printer
from server.slips.slip import Slip

log = logging.getLogger(__name__)

EXTENSION = "slips"
MOST_WAITING = 500
AGAIN_SECONDS = 3.0


class Spool:
    """The slips that wait for a printer, the oldest first."""

    def __init__(self, printer: Printer, file: Path) -> None:
        """Sends nothing yet; what an earlier server left in `file` waits again."""
        self.printer = printer
        self.trouble = ""
        self._file = file
        self._slips = kept.read(file)
        self._at_printer: Waiting | None = None
        self._lock = threading.Lock()
        self._wanted = threading.Event()

    @property
    def waiting(self) -> int:
        """How many slips are being printed, or are as soon as the printer takes them."""
        return len(self._slips) - len(self.aside)

    @property
    def aside(self) -> list[Waiting]:
        """Those of which a person says what becomes of them."""
        since = now_ms() - DAY_MS
        return [each for each in self._slips if each.is_aside(since) and each != self._at_printer]

    def add(self, slip: Slip, decision: str) -> bool:
        """Lets the slip of a decision wait for its turn, if it does not yet; False where too many do."""
        with self._lock:
            if len(self._slips) >= MOST_WAITING:
                return False
            aside = self.aside
            if decision not in [each.decision for each in self._slips if each not in aside]:
                self._keep([*self._slips, Waiting(slip, decision, now_ms(), begun=False)])
        self._wanted.set()
        return True

    def settle(self, *, prints: bool) -> None:
        """Prints those that were put aside, or leaves them."""
        with self._lock:
            aside, now = self.aside, now_ms()
            again = [each._replace(asked_at=now, begun=False) for each in aside if prints]
            self._keep([each for each in self._slips if each not in aside] + again)
        self._wanted.set()

    def wake(self) -> None:
        """Ends a pause."""
        self._wanted.set()

    def go(self, ended: threading.Event) -> None:
        """Prints what waits until `ended` is set."""
        for _ in turns(self._wanted, ended):
            while (turn := self._in_turn()) and not ended.is_set() and self._print(turn[0]):
                pass
            # With a trouble it is tried again after a while; without one, when there is something to print.
            self._wanted.wait(AGAIN_SECONDS if self._in_turn() else None)

    def _print(self, waiting: Waiting) -> bool:
        """Prints a slip; False where the printer does not answer."""
        try:
            data = _bytes_of(self.printer, waiting.slip)
        except Exception:
            log.exception("a slip could not be made, and is left out")
            self._change(waiting, None)
            return True
        begun = waiting._replace(begun=True)
        try:
            with place.opened(self.printer) as hand_over:
                self._at_printer = begun
                self._change(waiting, begun)
                hand_over(data)
        except OSError as error:
            trouble = error.strerror or str(error)
            if trouble != self.trouble:
                log.warning("the printer %s takes no slip: %s", self.printer.place, trouble)
            self.trouble = trouble
            self._at_printer = None
            return False
        self.trouble = ""
        self._change(begun, None)
        self._at_printer = None
        return True

    def _in_turn(self) -> list[Waiting]:
        since = now_ms() - DAY_MS
        return [each for each in self._slips if not each.is_aside(since)]

    def _change(self, one: Waiting, into: Waiting | None) -> None:
        with self._lock:
            changed = [into if each == one else each for each in self._slips]
            self._keep([each for each in changed if each is not None])

    def _keep(self, slips: list[Waiting]) -> None:
        self._slips = slips
        kept.write(self._file, slips)


@contextmanager
def printing(app: Flask, printer: Printer | None) -> Iterator[None]:
    """Lets an app print slips until the block ends."""
    if printer is None:
        yield
        return
    spool = Spool(printer, app.extensions["data_folder"].root / kept.FILE)
    app.extensions[EXTENSION] = spool
    with beside("prints slips", spool.go, spool.wake):
        yield


def _bytes_of(printer: Printer, slip: Slip) -> bytes:
    if printer.language == "zpl":
        from server.slips import zpl as language
    else:
        from server.slips import escpos as language  # type: ignore[no-redef]  # here: it needs a package of its own
    return language.bytes_of(slip)
