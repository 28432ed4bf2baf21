"""Who is at the other end of a connection, and by what one asker is told from another."""

from ipaddress import IPv6Address
from ipaddress import IPv6Network
from ipaddress import ip_address
from typing import NamedTuple


class Peer(NamedTuple):
    """The address and port at the other end."""

    address: str
    port: int


def plain_address(address: str) -> str:
    """Returns an address as it is usually written: a socket for both families has IPv4 inside IPv6."""
    try:
        found = ip_address(address)
    except ValueError:
        return address
    return str(found.ipv4_mapped if isinstance(found, IPv6Address) and found.ipv4_mapped else found)


def crowd_of(address: str) -> str:
    """Returns what counts as one asker: an IPv4 address, or the IPv6 network of a household (/64)."""
    try:
        found = ip_address(address)
    except ValueError:
        return address
    return str(IPv6Network((found, 64), strict=False)) if isinstance(found, IPv6Address) else address
