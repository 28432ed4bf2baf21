"""What `serve --lan` prints: where phones open it, what it made, and by which figure they know it."""

from datetime import datetime
from datetime import timedelta
from pathlib import Path
from typing import NamedTuple

from server.phones import roles
from server.phones.pairing import token_of
from server.serving.lan import naming
from server.serving.lan.address import Planned
from server.serving.lan.authority import Authority
from server.serving.lan.instants import readable
from server.serving.lan.leaf import Address
from server.serving.lan.network import Interface
from server.serving.terminal import qr_lines

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
        made = "Made now, once:" if self.is_new else "Its own:"
        return [
            f"Swaptrail answers in your network at {self.planned.base} with the data in {self.data}.",
            f"{made} a certificate authority, good until {readable(self.authority.ends)} for "
            f"{limits(self.planned.host)}.",
            "Its key stays in that folder. Its fingerprint (SHA-256), which phones show too:",
            *fingerprint_lines(self.authority),
            *self._cautions(),
            "",
            *(self._for_phones(*link, minutes) if link else self._for_paired()),
            "",
            "Ctrl-C ends it.",
        ]

    def _for_phones(self, link: str, role: str, minutes: int) -> list[str]:
        token = token_of(link)
        pages = [f"{page}/#{token}" for page in self._pages()]
        return [
            "Scan this with a phone in the same network, or open the address there. It leads the phone "
            f"through its settings and pairs one phone {roles.WHERE[role]}, within {minutes} minutes:",
            *(f"    {page}" for page in pages),
            "",
            *qr_lines(pages[0]),
            "",
            "A phone that trusts it already pairs with this link:",
            f"    {link}",
            "",
            "If the page does not come: same network? Does the firewall of this machine let in TCP "
            f"{self.planned.port} and {self.planned.trust_port}{self._announcing()}?",
        ]

    def _announcing(self) -> str:
        return " and UDP 5353" if naming.is_announced(self.planned.host) else ""

    def _for_paired(self) -> list[str]:
        return [
            "Pair another phone from one that is paired, or start with --pair. A phone "
            "has to trust it first, at",
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
        return [
            f"Caution: the authority ends in {left.days} days. Take its file in keys/ away and start again "
            "at a quiet time: a new one is made, and every phone has to trust that."
        ]

    def _of_the_place(self) -> list[str]:
        if self.interface.is_loopback:
            return [
                f"It listens on {self.interface.name} alone, so no other machine finds it: for trying out."
            ]
        if naming.as_ip(self.planned.host) is not None:
            return [
                f"Caution: {self.planned.host} has to stay the address of this machine for good. Have the "
                "router give it always the same one; under another, every phone would begin with nothing."
            ]
        return []


def limits(host: str) -> str:
    """Returns what the authority of a host is good for, in words."""
    own = "" if naming.as_ip(host) is not None else f"{host} and "
    return f"{own}addresses inside private networks, and nothing else"


def fingerprint_lines(authority: Authority) -> list[str]:
    """Returns the fingerprint in lines that a narrow terminal holds."""
    pairs = authority.fingerprint.split(":")
    return ["    " + ":".join(pairs[at : at + _PAIRS_A_LINE]) for at in range(0, len(pairs), _PAIRS_A_LINE)]


def _easiest_first(addresses: tuple[Address, ...]) -> list[Address]:
    """Returns addresses with IPv4 first, which every phone has."""
    return sorted(addresses, key=lambda address: address.version)
