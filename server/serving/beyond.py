"""`swaptrail serve` for a name of one's own: with a certificate for it, or behind a proxy that has one."""

import socket
from contextlib import closing
from ipaddress import ip_address
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlsplit

from server.app import Config
from server.app import create_app
from server.refusals import CommandRefused
from server.serving import base_address
from server.serving.door import CertificateFiles
from server.serving.door.limits import Limits
from server.serving.serve import check_port
from server.serving.serve import greeting
from server.serving.serve import held_open
from server.serving.serve import serve
from server.serving.serve import settled_base
from server.storage import DataFolder

_HTTPS_PORT = 443


class Asked(NamedTuple):
    """The options of the command line; None is not given."""

    data: Path
    host: str | None = None
    port: int | None = None
    bind: str | None = None
    pair: str | None = None
    days: int | None = None


def run_with_certificate(asked: Asked, cert: Path, key: Path) -> None:
    """Serves a data folder over TLS, by default to every network of this machine."""
    host = _host(asked)
    certificate = CertificateFiles(cert, key, name=host)
    bind = _checked_bind(asked.bind) or ("::" if socket.has_dualstack_ipv6() else "0.0.0.0")
    base = settled_base(asked.data, asked.host, asked.port, "https")
    check_port(bind, base_address.port_of(base))
    app = create_app(Config(asked.data, base))
    with held_open(DataFolder(asked.data), asked.days):
        serve(
            app,
            base,
            lambda: print("\n".join(greeting(app, base, asked.data, asked.pair)), flush=True),
            certificate=certificate,
            bind=bind,
        )


def run_behind_proxy(asked: Asked) -> None:
    """Serves a data folder to a reverse proxy, by default to one on this machine.

    `port` is where the proxy finds it; phones come to the proxy, at https://HOST.
    """
    bind = _checked_bind(asked.bind) or "127.0.0.1"
    port = base_address.DEFAULT_PORT if asked.port is None else base_address.checked_port(asked.port)
    _host(asked)
    base = settled_base(asked.data, asked.host, None if _kept(asked.data) else _HTTPS_PORT, "https")
    check_port(bind, port)
    app = create_app(Config(asked.data, base, behind_proxy=True))
    limits = Limits()
    lines = [f"The proxy finds it at http://{base_address.in_brackets(bind)}:{port}.", ""]
    with held_open(DataFolder(asked.data), asked.days):
        serve(
            app,
            base,
            lambda: print("\n".join([*lines, *greeting(app, base, asked.data, asked.pair)]), flush=True),
            bind=bind,
            port=port,
            # All connections come from the proxy, which shares its own limits out among the phones.
            limits=limits._replace(connections_an_address=limits.connections),
        )


def _host(asked: Asked) -> str:
    """Returns the name to serve; refuses a new folder without one."""
    if asked.host is not None:
        return asked.host
    kept = _kept(asked.data)
    if kept is None:
        raise CommandRefused(
            "--host is missing. Give the name under which phones are to find this server; it is fixed "
            "with the first start."
        )
    return urlsplit(kept).hostname or ""


def _kept(data: Path) -> str | None:
    """Returns the address of a data folder that is there already; makes none."""
    folder = DataFolder(data)
    if not folder.database.is_file():
        return None
    with closing(folder.open()) as db:
        return base_address.kept(db)


def _checked_bind(bind: str | None) -> str | None:
    if bind is not None:
        try:
            ip_address(bind)
        except ValueError:
            raise CommandRefused(
                f"--bind {bind} is no IP address. Give one of this machine, such as 127.0.0.1, or leave it "
                "out."
            ) from None
    return bind
