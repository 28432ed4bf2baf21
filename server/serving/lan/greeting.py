"""What `serve --lan` prints: where phones open it, what it made, and by which figure they know it."""

from datetime import datetime
from datetime import timedelta
from pathlib import Path
from typing import NamedTuple

from server.phones.pairing import token_of
from server.serving.lan import naming
from server.serving.lan.address import Planned
from server.serving.lan.authority import Authority
from server.serving.lan.instants import readable
from server.serving.lan.leaf import Address
from server.serving.lan.network import Interface
from server.serving.terminal import qr_lines
from server.words.spoken import say

_PAIRS_A_LINE = 16
_END_IS_NEAR = timedelta(days=90)


class Greeting(NamedTuple):
    """One start of the server in words."""

    data: Path
    planned: Planned
    authority: Authority
    is_new: bool
    interface: Interface
    now: datetime

    def lines(self, link: tuple[str, str] | None, minutes: int) -> list[str]:
        """Returns the lines; `link` is a pairing link and its role, good for `minutes`, or None."""
        made = "serving-authority-made" if self.is_new else "serving-authority"
        host = limits(self.planned.host)
        return [
            say("serving-answers-in-lan", address=self.planned.base, folder=str(self.data)),
            say(made, until=readable(self.authority.ends), limits=host),
            say("serving-fingerprint"),
            *fingerprint_lines(self.authority),
            *self._cautions(),
            "",
            *(self._for_phones(*link, minutes) if link else self._for_paired()),
            "",
            say("serving-ends"),
        ]

    def _for_phones(self, link: str, role: str, minutes: int) -> list[str]:
        token = token_of(link)
        pages = [f"{page}/#{token}" for page in self._pages()]
        return [
            say("serving-scan-this", role=role, minutes=minutes),
            *(f"    {page}" for page in pages),
            "",
            *qr_lines(pages[0]),
            "",
            say("serving-trusts-already"),
            f"    {link}",
            "",
            self._if_nothing_comes(),
        ]

    def _if_nothing_comes(self) -> str:
        announced = naming.is_announced(self.planned.host)
        ports = {"port": str(self.planned.port), "trust_port": str(self.planned.trust_port)}
        return say("serving-firewall-announced" if announced else "serving-firewall", **ports)

    def _for_paired(self) -> list[str]:
        return [
            say("serving-trust-first"),
            *(f"    {page}/" for page in self._pages()),
        ]

    def _pages(self) -> list[str]:
        """The trust page, by address first: that works before a phone finds the name."""
        numbers = [
            self.planned._replace(host=str(number)).page
            for number in _easiest_first(self.interface.addresses)[:1]
        ]
        return list(dict.fromkeys([*numbers, self.planned.page]))

    def _cautions(self) -> list[str]:
        return [*self._of_the_place(), *self._of_the_end()]

    def _of_the_end(self) -> list[str]:
        """Says in time that the authority ends: every phone has to trust the next one anew."""
        left = self.authority.ends - self.now
        if left > _END_IS_NEAR:
            return []
        return [say("serving-authority-ends", days=left.days)]

    def _of_the_place(self) -> list[str]:
        if self.interface.is_loopback:
            return [say("serving-loopback", interface=self.interface.name)]
        if naming.as_ip(self.planned.host) is not None:
            return [say("serving-address-stays", host=self.planned.host)]
        return []


def limits(host: str) -> str:
    """Returns what the authority of a host is good for, in words."""
    if naming.as_ip(host) is not None:
        return say("serving-limits-addresses")
    return say("serving-limits", host=host)


def fingerprint_lines(authority: Authority) -> list[str]:
    """Returns the fingerprint in lines that a narrow terminal holds."""
    pairs = authority.fingerprint.split(":")
    return ["    " + ":".join(pairs[at : at + _PAIRS_A_LINE]) for at in range(0, len(pairs), _PAIRS_A_LINE)]


def _easiest_first(addresses: tuple[Address, ...]) -> list[Address]:
    """Returns addresses with IPv4 first, which every phone has."""
    return sorted(addresses, key=lambda address: address.version)
