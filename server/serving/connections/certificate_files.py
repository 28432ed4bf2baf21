"""A certificate that lies in two files, and is taken up anew when somebody renews them."""

import logging
import ssl
import threading
import time
from collections.abc import Callable
from pathlib import Path

from server.refusals import CommandRefused
from server.serving.connections.certificate_check import Pair
from server.serving.connections.certificate_check import checked_context

log = logging.getLogger(__name__)

LOOK_SECONDS = 1.0  # the files are looked at no more often, however many connections come


class CertificateFiles:
    """The TLS context of a certificate and its key; follows the files while the server runs.

    Refuses a pair that phones would not take. A pair that is put there later and is not fit is
    left aside, and the one before is served on: a renewal writes one file after the other.
    """

    def __init__(
        self,
        cert: Path,
        key: Path,
        *,
        name: str | None = None,
        clock: Callable[[], float] = time.monotonic,
    ):
        """`name` is the host name that the certificate must cover; None leaves that unchecked."""
        self._pair = Pair(Path(cert), Path(key))
        self._name = name
        self._clock = clock
        self._lock = threading.Lock()
        self._served = self._marks()
        self._complaint = ""
        self._context = checked_context(self._pair, name)
        self._looked = clock()

    def context(self) -> ssl.SSLContext:
        """Returns the context for the next connection."""
        with self._lock:
            if self._clock() - self._looked >= LOOK_SECONDS:
                self._looked = self._clock()
                self._take_up_changes()
            return self._context

    def _take_up_changes(self) -> None:
        """Serves what lies in the files now; where that is not fit, looks again each time.

        It may become fit without a change of a file: when a clock moves on, or permissions are set right.
        """
        marks = self._marks()
        if marks == self._served:
            return
        try:
            self._context = checked_context(self._pair, self._name)
        except CommandRefused as error:
            if str(error) != self._complaint:
                self._complaint = str(error)
                log.error("The certificate from before is served on. %s", error)
        else:
            self._served, self._complaint = marks, ""
            log.warning("The certificate in %s was changed and is served now.", self._pair.certificate)

    def _marks(self) -> list[tuple[int, int, int] | None]:
        """Returns what changes with a file's content."""
        return [_mark(path) for path in self._pair]


def _mark(path: Path) -> tuple[int, int, int] | None:
    try:
        status = path.stat()
    except OSError:
        return None
    return status.st_mtime_ns, status.st_size, status.st_ino
