"""The options of `swaptrail serve`, and which of its ways to the phones they ask for."""

import argparse
from pathlib import Path

from server.phones import roles
from server.refusals import CommandRefused
from server.serving import beyond as serve_beyond
from server.serving import serve
from server.serving.base_address import DEFAULT_HOST
from server.serving.lan import command as lan
from server.storage.return_window import DEFAULT_DAYS

_LAN_ONLY = ("name", "trust_port", "interface")


def add_options(command: argparse.ArgumentParser) -> None:
    """Adds everything but --data and --port, which other commands have too."""
    command.add_argument(
        "--host", metavar="H", help=f"name in the address, fixed at first start ({DEFAULT_HOST})"
    )
    command.add_argument(
        "--pair",
        nargs="?",
        const=roles.BENCH,
        choices=roles.ROLES,
        metavar="ROLE",
        help="print a pairing link although a phone is paired, for a phone at the bench or, with "
        "ROLE counter, at the parts counter",
    )
    command.add_argument(
        "--return-days",
        type=int,
        metavar="N",
        help=f"how many days after it came off a sensor is taken back (kept; {DEFAULT_DAYS})",
    )
    _add_lan(command)
    _add_beyond(command)
    command.set_defaults(run=run)


def run(asked: argparse.Namespace) -> None:
    """Serves in the one way that is asked for: on this machine alone, unless another is."""
    way = _way(asked)
    _refuse_stray(asked, way)
    beyond = serve_beyond.Asked(asked.data, asked.host, asked.port, asked.bind, asked.pair, asked.return_days)
    if way == "--lan":
        lan.run(
            lan.Asked(
                asked.data,
                asked.name,
                asked.port,
                asked.trust_port,
                asked.interface,
                asked.pair,
                asked.return_days,
            )
        )
    elif way == "--cert and --key":
        serve_beyond.run_with_certificate(beyond, asked.cert, asked.key)
    elif way == "--behind-proxy":
        serve_beyond.run_behind_proxy(beyond)
    else:
        serve.run(asked.data, asked.host, asked.port, pair=asked.pair, days=asked.return_days)


def _add_lan(command: argparse.ArgumentParser) -> None:
    """Adds what serves the phones in the same network."""
    command.add_argument(
        "--lan", action="store_true", help="for the phones in the same network, over HTTPS of its own"
    )
    command.add_argument(
        "--name",
        metavar="NAME",
        help="with --lan: NAME.local, a DNS name of your own, or a private address; fixed at first start "
        "(a new name)",
    )
    command.add_argument(
        "--trust-port", type=int, metavar="N", help="with --lan: of the page for phones (one above --port)"
    )
    command.add_argument(
        "--interface", metavar="I", help="with --lan: the network, by name or address (the one to the router)"
    )


def _add_beyond(command: argparse.ArgumentParser) -> None:
    """Adds what serves under a name of one's own."""
    command.add_argument(
        "--cert",
        type=Path,
        metavar="F",
        help="over HTTPS with this certificate for --host, PEM, chain included",
    )
    command.add_argument(
        "--key", type=Path, metavar="F", help="its key, PEM; both are read again when they change"
    )
    command.add_argument(
        "--behind-proxy",
        action="store_true",
        help="to a reverse proxy that has the certificate for --host and sets X-Forwarded-For, -Proto, -Host",
    )
    command.add_argument(
        "--bind",
        metavar="ADDR",
        help="listen at this address alone (--cert: every one of this machine; --behind-proxy: 127.0.0.1)",
    )


def _way(asked: argparse.Namespace) -> str | None:
    if (asked.cert is None) != (asked.key is None):
        given, missing = ("--cert", "--key") if asked.key is None else ("--key", "--cert")
        raise CommandRefused(f"{given} is given without {missing}. Give both files, or neither.")
    ways = [
        way
        for way, given in (
            ("--lan", asked.lan),
            ("--cert and --key", asked.cert is not None),
            ("--behind-proxy", asked.behind_proxy),
        )
        if given
    ]
    if len(ways) > 1:
        raise CommandRefused(
            f"{ways[0]} and {ways[1]} exclude each other: each is a way for phones to come in, and a data "
            "folder has one address. Give one of them."
        )
    return ways[0] if ways else None


def _refuse_stray(asked: argparse.Namespace, way: str | None) -> None:
    """Refuses options that mean nothing in the way that is asked for."""
    for option in _LAN_ONLY:
        value = getattr(asked, option)
        if way != "--lan" and value is not None:
            given = f"--{option.replace('_', '-')} {value}"
            raise CommandRefused(f"{given} goes with --lan. Add --lan, or leave it out.")
    if way == "--lan" and asked.host is not None:
        raise CommandRefused(f"--host {asked.host} does not go with --lan. Give the name with --name.")
    if way in {None, "--lan"} and asked.bind is not None:
        raise CommandRefused(
            f"--bind {asked.bind} goes with --cert and --key, or with --behind-proxy. Leave it out."
        )
