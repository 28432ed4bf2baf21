"""Who is at the other end of a connection, and by what one client is told from another."""

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
        ip = ip_address(address)
    except ValueError:
        return address
    return str(ip.ipv4_mapped if isinstance(ip, IPv6Address) and ip.ipv4_mapped else ip)


def network_of(address: str) -> str:
    """Returns what counts as one client: an IPv4 address, or the IPv6 network of a household (/64)."""
    try:
        ip = ip_address(address)
    except ValueError:
        return address
    return str(IPv6Network((ip, 64), strict=False)) if isinstance(ip, IPv6Address) else address
