"""`swaptrail serve --lan`: one data folder for the phones in the same network, over HTTPS, until Ctrl-C."""

import socket
import threading
from collections.abc import Iterator
from contextlib import AbstractContextManager
from contextlib import closing
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from flask import Flask

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.messages import message
from server.phones import pairing
from server.phones import roles
from server.phones import sessions
from server.refusals import CommandRefused
from server.register.address import RegisterAddress
from server.register.keeper import joined
from server.serving.connections import CertificateFiles
from server.serving.connections import HttpServer
from server.serving.connections.limits import Limits
from server.serving.lan import address
from server.serving.lan import greeting
from server.serving.lan import instants
from server.serving.lan import naming
from server.serving.lan.announce import Announcer
from server.serving.lan.announce import refuse_taken
from server.serving.lan.authority import check_clock
from server.serving.lan.authority import existing_authority
from server.serving.lan.authority import kept_authority
from server.serving.lan.network import Interface
from server.serving.lan.network import chosen_interface
from server.serving.lan.renewal import FILE
from server.serving.lan.renewal import Renewal
from server.serving.lan.trust_page import check
from server.serving.lan.trust_page import create_trust_page
from server.serving.serve import check_port
from server.serving.serve import held_open
from server.serving.serve import serve
from server.slips.place import Printer
from server.slips.spool import printing
from server.storage import DataFolder
from server.storage.kept_days import AS_KEPT
from server.storage.kept_days import Days

_PAGE_LIMITS = Limits(connections=100, connections_an_address=50)  # a phone fetches a few files, once


class Options(NamedTuple):
    """The options of the command line; None is not given."""

    data: Path
    name: str | None = None
    port: int | None = None
    trust_port: int | None = None
    interface: str | None = None
    pair: str | None = None
    days: Days = AS_KEPT
    register: RegisterAddress | None = None
    printer: Printer | None = None


class _Place(NamedTuple):
    """Where a data folder is to be served, all of it checked."""

    planned: address.Planned
    interface: Interface
    bind: str
    announces: bool


def run(options: Options) -> None:
    """Serves a data folder to the phones in the network; what can be refused is, before anything is made."""
    check_clock(instants.now())
    planned, interface, bind, announces = _checked_place(options)
    folder = DataFolder(options.data)
    folder.prepare()
    with closing(folder.open()) as db:
        address.keep(db, planned)
    is_new = existing_authority(folder, planned.host) is None
    authority = kept_authority(folder, planned.host, instants.now())
    renewal = Renewal(authority, folder.keys / FILE, interface.addresses)
    app = create_app(Config(options.data, planned.base))
    app.config["TRUST_PAGE"] = f"{planned.page}/"
    app.register_blueprint(check)
    page = create_trust_page(planned.base, planned.page, authority)
    beside: list[AbstractContextManager] = [
        renewal,
        open_server(HttpServer((bind, planned.trust_port), page, limits=_PAGE_LIMITS)),
    ]
    if announces:
        where = options.interface and interface.name
        beside.append(Announcer(planned.host, planned.port, lambda: chosen_interface(where), renewal.look))
    start = greeting.Greeting(options.data, planned, authority, is_new, interface, instants.now())
    with (
        held_open(folder, options.days),
        joined(app, planned.base, options.register),
        printing(app, options.printer),
    ):
        serve(
            app,
            planned.base,
            lambda: print(
                "\n".join(start.lines(_link(app, planned.base, options.pair), pairing.TRUST_MINUTES)),
                flush=True,
            ),
            certificate=CertificateFiles(renewal.path, renewal.path),
            bind=bind,
            beside=beside,
        )


def _checked_place(options: Options) -> _Place:
    planned = address.planned(options.data, options.name, options.port, options.trust_port)
    interface = chosen_interface(options.interface)
    _check_own_address(planned.host, interface)
    bind = _bind_host(interface)
    check_port(bind, planned.port)
    check_port(bind, planned.trust_port, "serving-other-trust-port")
    announces = naming.is_announced(planned.host) and not interface.is_loopback
    if announces:
        refuse_taken(planned.host, interface)
    return _Place(planned, interface, bind, announces)


def _link(app: Flask, base: str, pair: str | None) -> tuple[str, str] | None:
    """Returns a fresh pairing link and its role, or None when a phone is paired and none was asked for."""
    with closing(app.extensions["data_folder"].open()) as db:
        if sessions.any_paired(db) and not pair:
            return None
        role = pair or roles.BENCH
        return pairing.make_link(db, base, now_ms(), role=role, minutes=pairing.TRUST_MINUTES), role


def _check_own_address(host: str, interface: Interface) -> None:
    """Refuses to serve under an address that this machine does not have now."""
    wanted = naming.as_ip(host)
    if wanted is None or wanted in interface.addresses:
        return
    own = ", ".join(map(str, interface.addresses))
    raise CommandRefused(message("serving-other-address", host=host, own=own))


def _bind_host(interface: Interface) -> str:
    """Returns the address to listen on: every one, so that a new address needs no restart; or loopback."""
    if interface.is_loopback:
        return str(interface.addresses[0])
    return "::" if socket.has_dualstack_ipv6() else "0.0.0.0"  # nosec B104 # --lan says so


@contextmanager
def open_server(http_server: HttpServer) -> Iterator[None]:
    """Runs a second server for as long as it is entered."""
    http_server.prepare()
    serving = threading.Thread(target=http_server.serve, name="serves the trust page")
    serving.start()
    try:
        yield
    finally:
        http_server.stop()
        serving.join()
