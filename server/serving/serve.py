"""`swaptrail serve`: one data folder at its one address, until Ctrl-C."""

import errno
import signal
import socket
import threading
from collections.abc import Callable
from collections.abc import Iterable
from collections.abc import Iterator
from contextlib import AbstractContextManager
from contextlib import ExitStack
from contextlib import closing
from contextlib import contextmanager
from pathlib import Path
from queue import SimpleQueue

from flask import Flask

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.messages import message
from server.log import mark
from server.phones import pairing
from server.phones import roles
from server.phones import sessions
from server.photos import lost
from server.photos import rounds
from server.photos.sweep import sweep
from server.refusals import CommandRefused
from server.register.address import RegisterAddress
from server.register.keeper import joined
from server.serving import base_address
from server.serving.connections import Certificate
from server.serving.connections import HttpServer
from server.serving.connections.limits import Limits
from server.serving.terminal import qr_lines
from server.slips.place import Printer
from server.slips.spool import printing
from server.storage import DataFolder
from server.storage.kept_days import AS_KEPT
from server.storage.kept_days import Days
from server.storage.parts import beside
from server.storage.parts import inside
from server.storage.parts import take_away_left
from server.web.database import close_waiting
from server.words.spoken import say

_OTHER_PORT = "serving-other-port"


def run(
    data: Path,
    host: str | None,
    port: int | None,
    *,
    pair: str | None = None,
    days: Days = AS_KEPT,
    register: RegisterAddress | None = None,
    printer: Printer | None = None,
) -> None:
    """Serves `data`; prints a pairing link when no phone is paired yet, or for the role in `pair`.

    `days` changes what the data folder keeps; `register` is the one that a chain's counters share,
    `printer` prints slips.
    """
    base = settled_base(data, host, port, "http")
    app = create_app(Config(data, base))
    with held_open(DataFolder(data), days), joined(app, base, register), printing(app, printer):
        serve(app, base, lambda: print("\n".join(greeting(app, base, data, pair)), flush=True))


@contextmanager
def held_open(folder: DataFolder, days: Days = AS_KEPT) -> Iterator[None]:
    """Makes a data folder ready and holds it open while it is served; `days` changes what it keeps.

    What a killed process left half written in it or beside it is taken away.
    """
    take_away_left(inside(folder.photos, folder.keys))
    take_away_left(beside(folder.root.resolve().parent))
    with closing(folder.open()) as db:
        days.keep(db)
        sweep(db, folder.photos, now_ms())
        gone = mark.notice(db, folder)
        if gone:
            print(say("serving-went-back", folder=str(folder.root), entry=str(gone)), flush=True)
        photos = lost.count(db)
        if photos:
            print(say("serving-photos-lost", photos=photos), flush=True)
        # Held open while serving: with the last connection SQLite takes its log file away, and where the
        # folder can no longer be written it could not make a new one to read by.
        with mark.kept(folder), rounds.going(folder):
            yield


def settled_base(data: Path, host: str | None, port: int | None, scheme: str | None = None) -> str:
    """Returns the address of a data folder, which is made if it is new.

    `scheme` is how it is to be served: "https", "http", or None for a command that serves nothing.
    """
    if host is not None and scheme != "https":
        base_address.refuse_beyond_loopback(host)
    folder = DataFolder(data)
    folder.prepare()
    with closing(folder.open()) as db:
        return base_address.settle(db, host, port, scheme)


def serve(
    app: Flask,
    base: str,
    ready: Callable[[], None],
    *,
    certificate: Certificate | None = None,
    bind: str | None = None,
    port: int | None = None,
    limits: Limits | None = None,
    beside: Iterable[AbstractContextManager] = (),
) -> None:
    """Serves an app until Ctrl-C or SIGTERM; calls `ready` once the port is taken.

    With a `certificate` over TLS; at the address `bind` and the port `port`, or where `base` lies. What
    stands in `beside` is entered once the port is taken, before `ready`, and left before the server ends.
    """
    address = (bind or base_address.bind_host(base), port or base_address.port_of(base))
    check_port(*address)
    http_server = HttpServer(address, app, certificate, limits=limits)
    with _end_asked() as asked:

        def accept() -> None:
            try:
                http_server.serve()
            finally:
                asked.put(None)

        http_server.prepare()
        accepting = threading.Thread(target=accept, name="accepts connections")
        accepting.start()
        try:
            with ExitStack() as running:
                for each in beside:
                    running.enter_context(each)
                ready()
                asked.get()
        finally:
            http_server.stop()
            accepting.join()
            close_waiting(app)
    print()


@contextmanager
def _end_asked() -> Iterator[SimpleQueue]:
    """Yields a queue that gets something as soon as Ctrl-C or SIGTERM asks for the end.

    They throw nothing into what runs, as KeyboardInterrupt does: thrown while a connection was
    being handed to a thread, it left that thread waiting for good, and the server never ended.
    SIGINT too is set: a process started in the background of a script ignores it otherwise.
    """
    asked: SimpleQueue = SimpleQueue()  # its put() may be called from the handler of a signal
    signs = (signal.SIGINT, signal.SIGTERM)
    before = {sign: signal.signal(sign, lambda *_: asked.put(None)) for sign in signs}
    try:
        yield asked
    finally:
        for sign, handler in before.items():
            signal.signal(sign, handler)


def greeting(app: Flask, base: str, data: Path, pair: str | None) -> list[str]:
    """Returns what a start says; makes a pairing link where no phone is paired or `pair` names a role."""
    with closing(app.extensions["data_folder"].open()) as db:
        if sessions.any_paired(db) and not pair:
            return [
                say("serving-answers", address=base, folder=str(data)),
                say("serving-paired"),
                say("serving-ends"),
            ]
        role = pair or roles.BENCH
        link = pairing.make_link(db, base, now_ms(), role=role)
    return [
        say("serving-answers", address=base, folder=str(data)),
        "",
        say("serving-pair", role=role, minutes=pairing.LINK_MINUTES),
        link,
        "",
        *qr_lines(link),
        "",
        say("serving-ends"),
    ]


def check_port(host: str, port: int, otherwise: str = _OTHER_PORT) -> None:
    """Refuses a port that cannot be had; asked first, for cheroot wraps the reason in a text.

    `otherwise` is the id of what else can be done than end the program that has it.
    """
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    with socket.socket(family) as probe:
        probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((host, port))
        except OSError as error:
            if error.errno != errno.EADDRINUSE:
                raise CommandRefused(
                    message("serving-port-shut", port=str(port), error=str(error.strerror))
                ) from None
            told = message("serving-port-taken", port=str(port), otherwise=message(otherwise))
            raise CommandRefused(told) from None
