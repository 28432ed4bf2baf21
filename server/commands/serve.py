"""`swaptrail serve`: its options, and which of its ways to the phones they ask for."""

from pathlib import Path
from typing import Any
from typing import NamedTuple

import click

from server.commands.options import DataCommand
from server.commands.options import SectionOption
from server.commands.options import data_option
from server.commands.options import port_option
from server.core.facts.roles import BENCH
from server.core.facts.roles import ROLES
from server.refusals import CommandRefused
from server.serving.base_address import DEFAULT_HOST
from server.serving.base_address import DEFAULT_PORT
from server.storage.return_window import DEFAULT_DAYS

_LAN_ONLY = ("name", "trust_port", "interface")


class _Options(NamedTuple):
    """The options as they were typed; None is not given."""

    data: Path
    host: str | None
    port: int | None
    pair: str | None
    return_days: int | None
    lan: bool
    name: str | None
    trust_port: int | None
    interface: str | None
    cert: Path | None
    key: Path | None
    behind_proxy: bool
    bind: str | None


def _lan_option(name: str, **kwargs: Any) -> Any:
    return click.option(name, cls=SectionOption, section="In the local network", **kwargs)


def _own_name_option(name: str, **kwargs: Any) -> Any:
    return click.option(name, cls=SectionOption, section="Under a name of your own", **kwargs)


@click.command("serve", cls=DataCommand)
@data_option
@port_option(DEFAULT_PORT)
@click.option("--host", metavar="H", help=f"Name in the address, fixed at first start ({DEFAULT_HOST}).")
@click.option(
    "--pair",
    is_flag=False,
    flag_value=BENCH,
    type=click.Choice(ROLES),
    metavar="[ROLE]",
    help="Print a pairing link although a phone is paired, for a phone at the bench or, with ROLE counter, "
    "at the parts counter.",
)
@click.option(
    "--return-days",
    type=int,
    metavar="N",
    help=f"How many days after it came off a sensor is taken back (kept; {DEFAULT_DAYS}).",
)
@_lan_option("--lan", is_flag=True, help="For the phones in the same network, over HTTPS of its own.")
@_lan_option(
    "--name",
    metavar="NAME",
    help="NAME.local, a DNS name of your own, or a private address; fixed at first start (a new name).",
)
@_lan_option("--trust-port", type=int, metavar="N", help="Of the page for phones (one above --port).")
@_lan_option("--interface", metavar="I", help="The network, by name or address (the one to the router).")
@_own_name_option(
    "--cert",
    type=Path,
    metavar="F",
    help="Over HTTPS with this certificate for --host, PEM, chain included.",
)
@_own_name_option("--key", type=Path, metavar="F", help="Its key, PEM; both are read again when they change.")
@_own_name_option(
    "--behind-proxy",
    is_flag=True,
    help="To a reverse proxy that has the certificate for --host and sets X-Forwarded-For, -Proto, -Host.",
)
@_own_name_option(
    "--bind",
    metavar="ADDR",
    help="Listen at this address alone (--cert: every one of this machine; --behind-proxy: 127.0.0.1).",
)
def command(**given: Any) -> None:
    """Serve one data folder until Ctrl-C: on this machine alone, unless another way is asked for."""
    options = _Options(**given)
    way = _way(options)
    _refuse_stray(options, way)
    if way == "--lan":
        from server.serving.lan import serve_lan  # here: only this way needs a certificate authority

        serve_lan.run(
            serve_lan.Options(
                options.data,
                options.name,
                options.port,
                options.trust_port,
                options.interface,
                options.pair,
                options.return_days,
            )
        )
        return
    from server.serving import beyond
    from server.serving import serve

    own = beyond.Options(
        options.data, options.host, options.port, options.bind, options.pair, options.return_days
    )
    if options.cert and options.key:
        beyond.run_with_certificate(own, options.cert, options.key)
    elif way == "--behind-proxy":
        beyond.run_behind_proxy(own)
    else:
        serve.run(options.data, options.host, options.port, pair=options.pair, days=options.return_days)


def _way(options: _Options) -> str | None:
    if (options.cert is None) != (options.key is None):
        given, missing = ("--cert", "--key") if options.key is None else ("--key", "--cert")
        raise CommandRefused(f"{given} is given without {missing}. Give both files, or neither.")
    ways = [
        way
        for way, given in (
            ("--lan", options.lan),
            ("--cert and --key", options.cert is not None),
            ("--behind-proxy", options.behind_proxy),
        )
        if given
    ]
    if len(ways) > 1:
        raise CommandRefused(
            f"{ways[0]} and {ways[1]} exclude each other: each is a way for phones to come in, and a data "
            "folder has one address. Give one of them."
        )
    return ways[0] if ways else None


def _refuse_stray(options: _Options, way: str | None) -> None:
    """Refuses options that mean nothing in the way that is asked for."""
    for option in _LAN_ONLY:
        value = getattr(options, option)
        if way != "--lan" and value is not None:
            given = f"--{option.replace('_', '-')} {value}"
            raise CommandRefused(f"{given} goes with --lan. Add --lan, or leave it out.")
    if way == "--lan" and options.host is not None:
        raise CommandRefused(f"--host {options.host} does not go with --lan. Give the name with --name.")
    if way in {None, "--lan"} and options.bind is not None:
        raise CommandRefused(
            f"--bind {options.bind} goes with --cert and --key, or with --behind-proxy. Leave it out."
        )
