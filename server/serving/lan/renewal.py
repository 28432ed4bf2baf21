"""Keeps the server's certificate fresh while it serves, so that no phone ever meets one that has ended.

It is made anew at two thirds of its life and when the machine's addresses change. The file is replaced
whole, and the server takes it in without a restart.
"""

import logging
import threading
from collections.abc import Iterable
from contextlib import suppress
from datetime import UTC
from datetime import datetime
from datetime import timedelta
from pathlib import Path

from cryptography import x509
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import load_pem_private_key

from server.serving.lan import instants
from server.serving.lan.authority import Authority
from server.serving.lan.leaf import Address
from server.serving.lan.leaf import Leaf
from server.serving.lan.leaf import names_of
from server.serving.lan.leaf import new_leaf
from server.serving.lan.leaf import wanted_names
from server.storage.durable import write_whole
from server.storage.own_work import note

# A machine that slept, or whose clock was set, is noticed within this time.
LONGEST_WAIT = timedelta(hours=1)
# How soon it is tried again after it failed: a disk that was full, a clock that was wrong.
RETRY_WAIT = timedelta(minutes=5)
FILE = "server-certificate.pem"  # in the keys of the data folder

log = logging.getLogger(__name__)


class Renewal:
    """Keeps a fresh certificate of one authority in a file; a context manager that renews meanwhile."""

    def __init__(
        self,
        authority: Authority,
        path: Path,
        addresses: Iterable[Address],
        clock: instants.Clock = instants.now,
    ):
        """Makes sure that the file holds a certificate that is good now."""
        self.path = path
        self._authority = authority
        self._clock = clock
        self._addresses = set(addresses)
        self._changed = threading.Condition()
        self._ended = False
        self._logged: set[str] = set()  # what stands against a new one since the last success
        self._thread = threading.Thread(target=self._renew_when_due, name="renews the certificate")
        self.leaf = self._fresh(kept_leaf(path))

    def __enter__(self) -> "Renewal":
        """Begins to renew while something else serves."""
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        """Stops renewing."""
        with self._changed:
            self._ended = True
            self._changed.notify_all()
        self._thread.join()

    def look(self, addresses: Iterable[Address] | None = None) -> None:
        """Looks at once whether a new certificate is due, for these addresses if they are given.

        Where none can be made now, the present one stays, and the thread tries again.
        """
        with self._changed:
            if addresses is not None:
                self._addresses = set(addresses)
            self._renewed()
            self._changed.notify_all()

    def due(self) -> datetime:
        """Returns when the present certificate is to be made anew."""
        return self._due(self.leaf)

    def _renew_when_due(self) -> None:
        with self._changed:
            while not self._ended:
                wait = min(self.due() - self._clock(), LONGEST_WAIT) if self._renewed() else RETRY_WAIT
                self._changed.wait(wait.total_seconds())

    def _renewed(self) -> bool:
        """Sees to it that the certificate is good now; if not, the present one stays and it returns False.

        Whatever the reason, the thread lives on: a renewal that ended would lock phones out months later.
        """
        try:
            self._check_clock()
            self.leaf = self._fresh(self.leaf)
        except Exception as error:
            # Without the name of the file, which is another at every try.
            reason = getattr(error, "strerror", None) or str(error) or type(error).__name__
            if reason not in self._logged:
                self._logged.add(reason)
                log.warning("The server's certificate could not be renewed; the one in use stays: %s", reason)
            return False
        self._logged.clear()
        return True

    def _check_clock(self) -> None:
        """Refuses a time at which the authority itself is not valid: no phone would take what it signs."""
        now = self._clock()
        if not self._authority.begins <= now < self._authority.ends:
            raise ValueError(
                f"the clock says {instants.readable(now)}, and the authority is valid from "
                f"{instants.readable(self._authority.begins)} to {instants.readable(self._authority.ends)}"
            )

    def _fresh(self, kept: Leaf | None) -> Leaf:
        now = self._clock()
        if kept is not None and self._is_good(kept, now):
            return kept
        leaf = new_leaf(self._authority, self._addresses, now)
        _replace(self.path, leaf.pem())
        return leaf

    def _due(self, leaf: Leaf) -> datetime:
        """At two thirds of its life; one that ends with its authority cannot be made to last longer."""
        if leaf.ends >= self._authority.ends:
            return datetime.max.replace(tzinfo=UTC)
        return leaf.begins + (leaf.ends - leaf.begins) * 2 / 3

    def _is_good(self, leaf: Leaf, now: datetime) -> bool:
        wanted = wanted_names(self._authority.host, self._addresses)
        return (
            leaf.certificate.issuer == self._authority.certificate.subject
            and _is_signed_by(leaf.certificate, self._authority)
            and leaf.begins <= now < self._due(leaf)
            and names_of(leaf.certificate) == wanted
        )


def _is_signed_by(certificate: x509.Certificate, authority: Authority) -> bool:
    try:
        certificate.verify_directly_issued_by(authority.certificate)
    except (InvalidSignature, TypeError, ValueError):
        return False
    return True


def kept_leaf(path: Path) -> Leaf | None:
    """Returns what the file holds, or None for anything that is no pair of key and certificate."""
    with suppress(OSError, ValueError):
        pem = path.read_bytes()
        key = load_pem_private_key(pem, password=None)
        certificate = x509.load_pem_x509_certificate(pem)
        if isinstance(key, ec.EllipticCurvePrivateKey) and key.public_key() == certificate.public_key():
            return Leaf(certificate, key)
    return None


def _replace(path: Path, content: bytes) -> None:
    is_new = not path.exists()
    write_whole(path, content)
    if is_new:
        note(path)
