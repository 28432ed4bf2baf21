"""`swaptrail serve` for a name of one's own: with a certificate for it, or behind a proxy that has one."""

import socket
from contextlib import closing
from ipaddress import ip_address
from pathlib import Path
from typing import NamedTuple
from urllib.parse import urlsplit

from server.app import Config
from server.app import create_app
from server.core.messages import message
from server.refusals import CommandRefused
from server.register.address import RegisterAddress
from server.register.keeper import joined
from server.serving import base_address
from server.serving.connections import CertificateFiles
from server.serving.connections.limits import Limits
from server.serving.serve import check_port
from server.serving.serve import greeting
from server.serving.serve import held_open
from server.serving.serve import serve
from server.serving.serve import settled_base
from server.slips.place import Printer
from server.slips.spool import printing
from server.storage import DataFolder
from server.storage.kept_days import AS_KEPT
from server.storage.kept_days import Days
from server.words.spoken import say

_HTTPS_PORT = 443


class Options(NamedTuple):
    """The options of the command line; None is not given."""

    data: Path
    host: str | None = None
    port: int | None = None
    bind: str | None = None
    pair: str | None = None
    days: Days = AS_KEPT
    register: RegisterAddress | None = None
    printer: Printer | None = None


def run_with_certificate(options: Options, cert: Path, key: Path) -> None:
    """Serves a data folder over TLS, by default to every network of this machine."""
    host = _host(options)
    certificate = CertificateFiles(cert, key, name=host)
    bind = _checked_bind(options.bind) or ("::" if socket.has_dualstack_ipv6() else "0.0.0.0")  # nosec B104 # asked for
    base = settled_base(options.data, options.host, options.port, "https")
    check_port(bind, base_address.port_of(base))
    app = create_app(Config(options.data, base))
    with (
        held_open(DataFolder(options.data), options.days),
        joined(app, base, options.register),
        printing(app, options.printer),
    ):
        serve(
            app,
            base,
            lambda: print("\n".join(greeting(app, base, options.data, options.pair)), flush=True),
            certificate=certificate,
            bind=bind,
        )


def run_behind_proxy(options: Options) -> None:
    """Serves a data folder to a reverse proxy, by default to one on this machine.

    `port` is where the proxy finds it; phones come to the proxy, at https://HOST.
    """
    bind = _checked_bind(options.bind) or "127.0.0.1"
    port = base_address.DEFAULT_PORT if options.port is None else base_address.checked_port(options.port)
    _host(options)
    base = settled_base(options.data, options.host, None if _kept(options.data) else _HTTPS_PORT, "https")
    check_port(bind, port)
    app = create_app(Config(options.data, base, behind_proxy=True))
    limits = Limits()
    lines = [say("serving-proxy-finds", address=f"http://{base_address.in_brackets(bind)}:{port}"), ""]
    with (
        held_open(DataFolder(options.data), options.days),
        joined(app, base, options.register),
        printing(app, options.printer),
    ):
        serve(
            app,
            base,
            lambda: print("\n".join([*lines, *greeting(app, base, options.data, options.pair)]), flush=True),
            bind=bind,
            port=port,
            # All connections come from the proxy, which shares its own limits out among the phones.
            limits=limits._replace(connections_an_address=limits.connections),
        )


def _host(options: Options) -> str:
    """Returns the name to serve; refuses a new folder without one."""
    if options.host is not None:
        return options.host
    kept = _kept(options.data)
    if kept is None:
        raise CommandRefused(message("serving-host-missing"))
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
            raise CommandRefused(message("serving-bind-no-ip", address=bind)) from None
    return bind
