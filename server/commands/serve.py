"""`swaptrail serve`: its options, and which of its ways to the phones they ask for."""

from pathlib import Path
from typing import Any
from typing import NamedTuple

import click

from server.commands.options import WHOLE_NUMBER
from server.commands.options import DataCommand
from server.commands.options import OneOf
from server.commands.options import data_option
from server.commands.options import option
from server.commands.options import port_option
from server.core.facts.roles import BENCH
from server.core.facts.roles import ROLES
from server.core.messages import all_of
from server.core.messages import message
from server.refusals import CommandRefused
from server.register.address import checked
from server.serving.base_address import DEFAULT_HOST
from server.serving.base_address import DEFAULT_PORT
from server.slips import place
from server.storage.kept_days import RETURN_WINDOW
from server.storage.kept_days import Days

_LAN_ONLY = ("name", "trust_port", "interface")


class _Options(NamedTuple):
    """The options as they were typed; None is not given."""

    data: Path
    host: str | None
    port: int | None
    pair: str | None
    return_days: int | None
    warranty_days: int | None
    lan: bool
    name: str | None
    trust_port: int | None
    interface: str | None
    cert: Path | None
    key: Path | None
    behind_proxy: bool
    bind: str | None
    register: str | None
    printer: str | None


_LAN, _OWN_NAME = "commands-serve-in-lan", "commands-serve-own-name"


@click.command("serve", cls=DataCommand, help="commands-serve-help")
@data_option
@port_option(DEFAULT_PORT)
@option("--host", "commands-serve-host", about={"host": DEFAULT_HOST}, metavar="H")
@option(
    "--pair",
    "commands-serve-pair",
    is_flag=False,
    flag_value=BENCH,
    type=OneOf(ROLES),
    metavar="[ROLE]",
)
@option(
    "--return-days",
    "commands-serve-return-days",
    about={"days": RETURN_WINDOW.first},
    type=WHOLE_NUMBER,
    metavar="N",
)
@option("--warranty-days", "commands-serve-warranty-days", type=WHOLE_NUMBER, metavar="N")
@option("--register", "commands-serve-register", metavar="URL")
@option("--printer", "commands-serve-printer", metavar="LANGUAGE:PLACE")
@option("--lan", "commands-serve-lan", section=_LAN, is_flag=True)
@option("--name", "commands-serve-name", section=_LAN, metavar="NAME")
@option("--trust-port", "commands-serve-trust-port", section=_LAN, type=WHOLE_NUMBER, metavar="N")
@option("--interface", "commands-serve-interface", section=_LAN, metavar="I")
@option("--cert", "commands-serve-cert", section=_OWN_NAME, type=Path, metavar="F")
@option("--key", "commands-serve-key", section=_OWN_NAME, type=Path, metavar="F")
@option("--behind-proxy", "commands-serve-behind-proxy", section=_OWN_NAME, is_flag=True)
@option("--bind", "commands-serve-bind", section=_OWN_NAME, metavar="ADDR")
def command(**given: Any) -> None:
    """Serves one data folder until Ctrl-C."""
    options = _Options(**given)
    way = _way(options)
    days = Days(options.return_days, options.warranty_days)
    _refuse_stray(options, way)
    register = checked(options.register) if options.register else None
    printer = place.checked(options.printer) if options.printer else None
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
                days,
                register,
                printer,
            )
        )
        return
    from server.serving import beyond
    from server.serving import serve

    own = beyond.Options(
        options.data, options.host, options.port, options.bind, options.pair, days, register, printer
    )
    if options.cert and options.key:
        beyond.run_with_certificate(own, options.cert, options.key)
    elif way == "--behind-proxy":
        beyond.run_behind_proxy(own)
    else:
        serve.run(
            options.data,
            options.host,
            options.port,
            pair=options.pair,
            days=days,
            register=register,
            printer=printer,
        )


def _way(options: _Options) -> str | None:
    if (options.cert is None) != (options.key is None):
        given, missing = ("--cert", "--key") if options.key is None else ("--key", "--cert")
        raise CommandRefused(message("commands-serve-half", given=given, missing=missing))
    ways = [
        way
        for way, given in (
            ("--lan", options.lan),
            ("--cert", options.cert is not None),
            ("--behind-proxy", options.behind_proxy),
        )
        if given
    ]
    if len(ways) > 1:
        first, second = (all_of(["--cert", "--key"]) if way == "--cert" else way for way in ways[:2])
        raise CommandRefused(message("commands-serve-two-ways", first=first, second=second))
    return ways[0] if ways else None


def _refuse_stray(options: _Options, way: str | None) -> None:
    """Refuses options that mean nothing in the way that is asked for."""
    for name in _LAN_ONLY:
        value = getattr(options, name)
        if way != "--lan" and value is not None:
            given = f"--{name.replace('_', '-')} {value}"
            raise CommandRefused(message("commands-serve-lan-only", given=given))
    if way == "--lan" and options.host is not None:
        raise CommandRefused(message("commands-serve-host-in-lan", host=options.host))
    if way in {None, "--lan"} and options.bind is not None:
        raise CommandRefused(message("commands-serve-bind-alone", address=options.bind))
