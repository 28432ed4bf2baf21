"""`swaptrail register`: makes the register that a chain's counters share, and says how it stands."""

import time
from collections.abc import Iterator
from contextlib import closing
from contextlib import contextmanager
from typing import TYPE_CHECKING

import click

from server.commands.options import TEXT
from server.commands.options import OneOf
from server.commands.options import WordedCommand
from server.core.messages import message
from server.refusals import CommandRefused
from server.register.address import RegisterAddress
from server.register.address import checked
from server.words.spoken import say

if TYPE_CHECKING:
    import psycopg

_INIT, _CHECK = "init", "check"
# A key that no return has: a look-up costs the same whether it finds anything.
_NOBODYS_KEY = "serial"


@click.command("register", cls=WordedCommand, help="commands-register-help")
@click.argument("what", type=OneOf((_INIT, _CHECK)), metavar=f"{_INIT}|{_CHECK}")
@click.argument("url", type=TEXT, metavar="URL")
def command(what: str, url: str) -> int:
    """Makes or looks at a register; 0 it is as it should be, 1 it has no tables or others."""
    address = checked(url)
    from server.register import tables  # here: it needs the driver, which `checked` has looked for

    with _opened(address) as connection:
        if what == _INIT:
            tables.make(connection)
        standing = tables.standing(connection)
        if standing.form != tables.FORM:
            wrong = "register-no-tables" if standing.form is None else "register-other-form"
            print(say(wrong, register=address.shown))
            return 1
        print(
            say(
                "register-stands",
                register=address.shown,
                returns=standing.returns,
                counters=standing.counters,
            )
        )
        print(say("register-contradictions", count=standing.contradictions))
        print(say("register-look-up", milliseconds=str(_look_up_ms(connection))))
    return 0


@contextmanager
def _opened(address: RegisterAddress) -> Iterator["psycopg.Connection"]:
    from psycopg import Error

    from server.register import link

    try:
        with closing(link.opened(address)) as connection:
            yield connection
    except Error as error:
        why = " ".join(str(error).split())
        raise CommandRefused(message("register-trouble", register=address.shown, error=why)) from None


def _look_up_ms(connection: "psycopg.Connection") -> int:
    """Returns what a counter waits for one look-up, in whole milliseconds and at least 1."""
    from server.register import entries
    from server.register.transaction import serializable

    start = time.perf_counter()
    serializable(connection, lambda cursor: entries.others(cursor, [_NOBODYS_KEY], "", ""))
    return max(1, round((time.perf_counter() - start) * 1000))
