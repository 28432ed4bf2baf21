"""Which addresses of this machine phones reach: those of the interface that leads to the router.

Bridges of containers, virtual adapters and tunnels have addresses too, and a phone that is sent there
waits for nothing; so has every interface a link-local one, which no certificate and no browser takes.
"""

import ipaddress
import socket
from typing import NamedTuple

import ifaddr

from server.core.messages import message
from server.refusals import CommandRefused
from server.serving.lan import naming
from server.serving.lan.leaf import Address

# Addresses that no machine has (RFC 5737 and 3849): asking which way they lie sends nothing.
_FAR_AWAY = ((socket.AF_INET, "203.0.113.1"), (socket.AF_INET6, "2001:db8::1"))
_ANY_PORT = 9
# How systems name what leads to no yard: adapters and bridges of containers and virtual machines, tunnels.
_VIRTUAL = ("docker", "br-", "veth", "virbr", "vmnet", "vbox", "vethernet", "cni", "podman", "lxc")
_TUNNELS = ("tun", "tap", "utun", "wg", "ppp", "ipsec")


class Interface(NamedTuple):
    """One interface of this machine and its addresses that phones may be sent to."""

    name: str
    addresses: tuple[Address, ...]

    @property
    def is_loopback(self) -> bool:
        """Tells whether only this machine itself is behind it."""
        return all(address.is_loopback for address in self.addresses)


def chosen_interface(asked: str | None) -> Interface:
    """Returns the interface that `--interface` names, by name or address, or the one to the router."""
    interfaces = usable_interfaces()
    if asked is not None:
        return _asked_for(asked, interfaces)
    yard = [interface for interface in interfaces if not _leads_nowhere(interface)]
    by_default = _by_default_route(yard)
    if by_default is not None:
        return by_default
    if len(yard) == 1:  # a network without a router: a phone's hotspot, two machines and a switch
        return yard[0]
    if not yard:
        raise CommandRefused(message("serving-no-network"))
    raise CommandRefused(message("serving-which-network", count=len(yard), networks=_listed(yard)))


def usable_interfaces() -> list[Interface]:
    """Returns the interfaces with an address that a phone could be sent to, loopback included."""
    interfaces = []
    for adapter in ifaddr.get_adapters():
        numbers = [ipaddress.ip_address(ip.ip if isinstance(ip.ip, str) else ip.ip[0]) for ip in adapter.ips]
        addresses = _worth_announcing(numbers)
        if addresses:
            interfaces.append(Interface(adapter.nice_name, addresses))
    return interfaces


def _worth_announcing(numbers: list[Address]) -> tuple[Address, ...]:
    """Returns the addresses that last: of IPv6 the private ones, and public ones only for want of others."""
    lasting = [number for number in numbers if not number.is_link_local and not number.is_unspecified]
    steady = [number for number in lasting if number.version == 4 or naming.is_private(number)]
    return tuple(sorted(steady or lasting, key=lambda number: (number.version, int(number))))


def _asked_for(asked: str, interfaces: list[Interface]) -> Interface:
    for interface in interfaces:
        if asked == interface.name or naming.as_ip(asked) in interface.addresses:
            return interface
    raise CommandRefused(message("serving-no-interface", interface=asked, networks=_listed(interfaces)))


def _by_default_route(interfaces: list[Interface]) -> Interface | None:
    for family, far_away in _FAR_AWAY:
        own = _own_address_towards(family, far_away)
        for interface in interfaces:
            if own in interface.addresses:
                return interface
    return None


def _own_address_towards(family: socket.AddressFamily, far_away: str) -> Address | None:
    """Returns the address that this machine would send from, or None where no way leads there."""
    try:
        with socket.socket(family, socket.SOCK_DGRAM) as probe:
            probe.connect((far_away, _ANY_PORT))
            return ipaddress.ip_address(probe.getsockname()[0].partition("%")[0])
    except OSError:
        return None


def _leads_nowhere(interface: Interface) -> bool:
    return interface.is_loopback or interface.name.lower().startswith((*_VIRTUAL, *_TUNNELS))


def _listed(interfaces: list[Interface]) -> str:
    return "; ".join(f"{name} ({', '.join(map(str, addresses))})" for name, addresses in interfaces)
