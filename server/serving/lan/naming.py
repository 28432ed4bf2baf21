"""The name under which phones open an installation over the local network.

Labels, storage and permissions hang on it for good, so it is one that outlives a change of address:
NAME.local, which the installation announces itself, or a DNS name of the user's own. A private IP
address is the choice of those whose phones resolve neither; it has to stay the same for good.
"""

import ipaddress
import re
import secrets
import socket
from ipaddress import IPv4Address
from ipaddress import IPv6Address

from server.core.messages import message
from server.refusals import CommandRefused

LOCAL = ".local"
# No 0, 1, i, l, o: the name is typed by hand where a camera does not read the QR symbol.
_ALPHABET = "23456789abcdefghjkmnpqrstuvwxyz"
_SUFFIX_LENGTH = 4  # about a million names; the announcer refuses one that is taken
_LABEL = re.compile(r"[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?")
_LONGEST_NAME = 253  # RFC 1035, in text

# RFC 1918 and RFC 4193: what a home or workshop router gives out. The authority is limited to these.
PRIVATE_NETWORKS = (
    ipaddress.ip_network("10.0.0.0/8"),
    ipaddress.ip_network("172.16.0.0/12"),
    ipaddress.ip_network("192.168.0.0/16"),
    ipaddress.ip_network("fc00::/7"),
)


def new_name() -> str:
    """Returns a name of the installation's own, unlike the machine's."""
    suffix = "".join(secrets.choice(_ALPHABET) for _ in range(_SUFFIX_LENGTH))
    return f"swaptrail-{suffix}{LOCAL}"


def checked_name(asked: str) -> str:
    """Returns the host name that `--name` asks for; a bare label becomes NAME.local."""
    name = asked.strip().rstrip(".").lower()
    address = as_ip(name)
    if address is not None:
        return _checked_address(address)
    labels = name.split(".")
    if len(labels) == 1:
        labels.append(LOCAL[1:])
    name = ".".join(labels)
    if len(name) > _LONGEST_NAME or not all(_LABEL.fullmatch(label) for label in labels):
        raise CommandRefused(message("serving-name-none", name=asked))
    if labels[0] == "localhost" or labels[-1] == "localhost":
        raise CommandRefused(message("serving-name-localhost", name=asked))
    if labels[-1].isdigit():
        raise CommandRefused(message("serving-name-number", name=asked))
    if is_announced(name):
        _check_announced(asked, labels)
    return name


def is_announced(name: str) -> bool:
    """Tells whether the installation itself has to announce a name; no DNS server knows it."""
    return name.endswith(LOCAL)


def as_ip(host: str) -> IPv4Address | IPv6Address | None:
    """Returns a host as an address, or None when it is a name."""
    try:
        return ipaddress.ip_address(host.strip("[]"))
    except ValueError:
        return None


def is_private(address: IPv4Address | IPv6Address) -> bool:
    """Tells whether an address is one of those that the authority may vouch for."""
    return any(address in network for network in PRIVATE_NETWORKS)


def _checked_address(address: IPv4Address | IPv6Address) -> str:
    if is_private(address):
        return str(address)
    ranges = ", ".join(str(network) for network in PRIVATE_NETWORKS)
    raise CommandRefused(message("serving-name-public", name=str(address), ranges=ranges))


def _check_announced(asked: str, labels: list[str]) -> None:
    if len(labels) > 2:
        raise CommandRefused(message("serving-name-dot", name=asked, ending=LOCAL))
    own = socket.gethostname().partition(".")[0].lower()
    if labels[0] == own:
        raise CommandRefused(message("serving-name-own", name=asked))
