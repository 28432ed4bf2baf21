"""The one address of an installation: scheme, host and port, fixed for the life of a data folder.

A browser keeps storage, permissions and the installed app by that address, and labels carry it.
Under another address the same phone would be an empty one, with what it has not sent out of reach.
"""

import ipaddress
import re
from urllib.parse import urlsplit

from sqlite_utils import Database

from server.core.messages import message
from server.refusals import CommandRefused
from server.storage.folder import keep_setting
from server.storage.folder import setting

DEFAULT_HOST = "localhost"
DEFAULT_PORT = 8765
SETTING = "base_address"
_LABEL = r"[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?"  # RFC 1123, 2.1
_NAME = re.compile(rf"{_LABEL}(\.{_LABEL})*")
_PORTS = {"http": 80, "https": 443}  # what a browser leaves out of an address
# What to leave out or add so that a folder is served as it always was.
_AS_BEFORE = {
    "http": "serving-as-before-http",
    "https": "serving-as-before-https",
}


class AddressRefused(CommandRefused):
    """The address asked for cannot be served; the text says what to do."""


def settle(db: Database, host: str | None, port: int | None, scheme: str | None = None) -> str:
    """Returns the data folder's address, fixing it at first use; refuses another one later.

    None takes what was fixed, or the default. A folder that an earlier version fixed at a bare IP stays
    there: what its phones have not sent hangs on it.
    """
    fixed = kept(db)
    host = host and host.lower()  # as a browser writes it
    if fixed is None:
        _refuse_no_name(host or DEFAULT_HOST)
        base = joined(scheme or "http", host or DEFAULT_HOST, DEFAULT_PORT if port is None else port)
        keep_setting(db, SETTING, base)
        return base
    parts = urlsplit(fixed)
    asked = joined(
        scheme or parts.scheme, host or parts.hostname or "", port_of(fixed) if port is None else port
    )
    if asked != fixed:
        raise AddressRefused(
            message("serving-stays", fixed=fixed, before=message(_AS_BEFORE[parts.scheme]), asked=asked)
        )
    return fixed


def refuse_beyond_loopback(host: str) -> None:
    """Refuses a host that other machines reach: over plain HTTP the app would only half work."""
    if not is_loopback(host):
        raise AddressRefused(message("serving-beyond", host=host, own=DEFAULT_HOST))


def is_loopback(host: str) -> bool:
    """Tells whether `host` names this machine alone."""
    address = _bare_ip(host)
    return host == "localhost" if address is None else address.is_loopback


def bind_host(base: str) -> str:
    """Returns the address to listen on for a base address on loopback."""
    host = urlsplit(base).hostname or ""
    return "127.0.0.1" if host == "localhost" else host


def port_of(base: str) -> int:
    """Returns the port of a base address, also where a browser leaves it out."""
    parts = urlsplit(base)
    return parts.port or _PORTS[parts.scheme]


def _refuse_no_name(host: str) -> None:
    """Refuses what is no name, and a number in its place: networks give numbers out anew, a name can move."""
    if _bare_ip(host) is not None:
        raise AddressRefused(message("serving-bare-ip", host=host, own=DEFAULT_HOST))
    if not _NAME.fullmatch(host):
        raise AddressRefused(message("serving-no-name", host=host))


def _bare_ip(host: str) -> ipaddress.IPv4Address | ipaddress.IPv6Address | None:
    try:
        return ipaddress.ip_address(host)
    except ValueError:
        return None


def kept(db: Database) -> str | None:
    """Returns the address that was fixed for a data folder, or None while there is none."""
    return setting(db, SETTING)


def joined(scheme: str, host: str, port: int) -> str:
    """Returns an address as a browser writes it."""
    name = in_brackets(host)
    checked_port(port)
    return f"{scheme}://{name}" if port == _PORTS[scheme] else f"{scheme}://{name}:{port}"


def in_brackets(host: str) -> str:
    """Returns a host as it stands in an address: IPv6 in brackets."""
    return f"[{host}]" if ":" in host else host


def checked_port(port: int) -> int:
    """Returns a port; refuses a number that is none."""
    if not 1 <= port <= 65535:
        raise AddressRefused(message("serving-no-port", option="--port", port=str(port), most="65535"))
    return port
