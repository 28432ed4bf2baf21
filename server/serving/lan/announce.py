"""Announces NAME.local to the phones in the network (multicast DNS, RFC 6762) while the server runs.

The name stays when the machine's address changes: the addresses are looked at again and again, and a new
one is announced once it has stood for two looks. The end says goodbye, for without it phones would go on
for two minutes to an address where nothing answers.
"""

import ipaddress
import logging
import sys
import threading
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import contextmanager

from zeroconf import AddressResolver
from zeroconf import DNSAddress
from zeroconf import IPVersion
from zeroconf import NonUniqueNameException
from zeroconf import ServiceInfo
from zeroconf import Zeroconf

from server.core.messages import message
from server.refusals import CommandRefused
from server.serving.lan.leaf import Address
from server.serving.lan.network import Interface

SERVICE = "_https._tcp.local."
LOOK_SECONDS = 5.0
ASK_MS = 1500  # RFC 6762, 8.1: probes take three quarters of a second; twice that for a slow radio

log = logging.getLogger(__name__)


class Announcer:
    """Announces one name while it is entered; `changed` hears of new addresses before the network does."""

    def __init__(
        self,
        name: str,
        port: int,
        interface: Callable[[], Interface],
        changed: Callable[[tuple[Address, ...]], None] = lambda addresses: None,
        look_seconds: float = LOOK_SECONDS,
    ):
        """Keeps what to announce; `interface` says which addresses phones are to be sent to now."""
        self.name = name
        self._port = port
        self._interface = interface
        self._changed = changed
        self._look_seconds = look_seconds
        self._ended = threading.Event()
        self._thread = threading.Thread(target=self._follow, name="announces the name")
        self._zeroconf: Zeroconf | None = None
        self._addresses: tuple[Address, ...] = ()
        self._warned: set[str] = set()

    def __enter__(self) -> "Announcer":
        """Announces the name, which nobody else may have: see `refuse_taken`."""
        self._announce(self._interface().addresses)
        self._thread.start()
        return self

    def __exit__(self, *_: object) -> None:
        """Says goodbye."""
        self._ended.set()
        self._thread.join()
        self._be_silent()

    def _announce(self, addresses: tuple[Address, ...]) -> None:
        self._zeroconf = _speaking(addresses)
        self._addresses = addresses
        label = self.name.partition(".")[0]
        service = ServiceInfo(
            SERVICE,
            f"{label}.{SERVICE}",
            port=self._port,
            server=f"{self.name}.",
            properties={"path": "/"},
            addresses=[address.packed for address in addresses],
        )
        try:
            self._zeroconf.register_service(service, allow_name_change=False)
        except NonUniqueNameException:
            self._be_silent()
            raise _taken(self.name, set()) from None
        except BaseException:
            self._be_silent()
            raise

    def _be_silent(self) -> None:
        zeroconf, self._zeroconf = self._zeroconf, None  # one that fails to close is not closed again
        if zeroconf is not None:
            zeroconf.close()

    def _follow(self) -> None:
        """Announces anew what has changed and stood for two looks: a network that comes up settles first.

        Whatever fails is said, and the next two looks begin afresh: a thread that ended would leave the name
        without an answer until somebody starts the server again.
        """
        seen = self._addresses
        while not self._ended.wait(self._look_seconds):
            try:
                seen = self._look(seen)
            except Exception as error:
                log.info("announcing failed", exc_info=error)
                self._warn(error if isinstance(error, CommandRefused) else _failed(self.name, error))
                self._addresses = seen = ()

    def _look(self, seen: tuple[Address, ...]) -> tuple[Address, ...]:
        """Looks once, after a look that saw these addresses; returns those that it sees."""
        self._look_for_others()
        try:
            interface = self._interface()
        except CommandRefused:
            self._addresses = ()  # no network now; with the next one the name is announced anew
            return ()
        if interface.addresses == seen and seen != self._addresses:
            self._move(interface)
        return interface.addresses

    def _look_for_others(self) -> None:
        """Warns of a machine that took the name later, whose answers come in with all others."""
        if self._zeroconf is None:
            return
        records = self._zeroconf.cache.entries_with_name(f"{self.name}.")
        heard = {ipaddress.ip_address(record.address) for record in records if isinstance(record, DNSAddress)}
        foreign = heard - set(self._addresses)
        if foreign and self._addresses:
            self._warn(_taken(self.name, foreign))

    def _warn(self, refusal: Exception) -> None:
        """Says on the terminal what stands against the name, once."""
        if str(refusal) not in self._warned:
            self._warned.add(str(refusal))
            print(f"swaptrail: {refusal}", file=sys.stderr, flush=True)

    def _move(self, interface: Interface) -> None:
        """Announces the name where it is now; who hears of an address must find a certificate for it."""
        self._be_silent()
        self._changed(interface.addresses)
        refuse_taken(self.name, interface)
        self._announce(interface.addresses)
        log.info("announced at %s", interface.addresses)
        self._warned.clear()


def refuse_taken(name: str, interface: Interface) -> None:
    """Asks the network for a name and refuses it when another machine answers (RFC 6762, 8.1)."""
    asked = AddressResolver(f"{name}.")
    with _asking(interface.addresses) as zeroconf:
        asked.request(zeroconf, ASK_MS)
        claimed = {ipaddress.ip_address(text.partition("%")[0]) for text in asked.parsed_addresses()}
    foreign = claimed - set(interface.addresses)
    if foreign:
        raise _taken(name, foreign)


def _taken(name: str, foreign: set[Address]) -> CommandRefused:
    where = ", ".join(sorted(map(str, foreign)))
    if where:
        return CommandRefused(message("serving-name-taken-at", name=name, addresses=where))
    return CommandRefused(message("serving-name-taken", name=name))


def _failed(name: str, error: Exception) -> CommandRefused:
    reason = getattr(error, "strerror", None) or str(error) or type(error).__name__
    return CommandRefused(message("serving-not-announced", name=name, reason=reason))


@contextmanager
def _asking(addresses: tuple[Address, ...]) -> Iterator[Zeroconf]:
    zeroconf = _speaking(addresses)
    try:
        yield zeroconf
    finally:
        zeroconf.close()


def _speaking(addresses: tuple[Address, ...]) -> Zeroconf:
    versions = {address.version for address in addresses}
    version = IPVersion.All if len(versions) == 2 else IPVersion.V6Only if 6 in versions else IPVersion.V4Only
    try:
        return Zeroconf(interfaces=[str(address) for address in addresses], ip_version=version)
    except OSError as error:
        raise CommandRefused(message("serving-no-announcing", error=str(error.strerror))) from None
