"""`swaptrail demo`: the demo scenario on loopback, gone when it ends unless it has a folder."""

from contextlib import closing
from pathlib import Path

import click

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.commands.options import DataCommand
from server.commands.options import option
from server.commands.options import port_option
from server.core.messages import message
from server.log import events
from server.phones import pairing
from server.phones import roles
from server.refusals import CommandRefused
from server.serving import base_address
from server.serving.serve import check_port
from server.serving.serve import held_open
from server.serving.serve import serve
from server.serving.serve import settled_base
from server.storage import DataFolder
from server.storage.folder import keep_setting
from server.storage.folder import setting
from server.storage.kept_days import RETURN_WINDOW
from server.storage.parts import DEMO
from server.storage.parts import scratch_folder
from server.words.spoken import say

LINK_HOURS = 24
_MARK = "demo"
LINK_USES = 20  # so that one can play several phones, each in a browser of its own


@click.command("demo", cls=DataCommand, help="commands-demo-help")
@port_option(base_address.DEFAULT_PORT)
@option("--data", "commands-demo-data", type=Path, metavar="DIR")
def command(data: Path | None, port: int | None) -> None:
    """Shows the demo scenario on loopback."""
    run(data, port)


def run(data: Path | None, port: int | None) -> None:
    """Builds the demo data and serves it."""
    if data is not None:
        _run_in(data, port)
        return
    with scratch_folder(start=DEMO) as folder:
        _run_in(folder, port)


def _run_in(data: Path, port: int | None) -> None:
    base = settled_base(data, None, port, "http")
    check_port(base_address.bind_host(base), base_address.port_of(base))  # before the work of filling it
    hints = _fill(data, base)
    app = create_app(Config(data, base))
    with closing(DataFolder(data).open()) as db:
        link, counter = (
            pairing.make_link(db, base, now_ms(), role=role, minutes=LINK_HOURS * 60, uses=LINK_USES)
            for role in roles.ROLES
        )
    lines = [
        say("commands-demo-ready"),
        "",
        f"    {link}",
        "",
        say("commands-demo-counter"),
        "",
        f"    {counter}",
        "",
        *hints,
        "",
        say("commands-ends"),
    ]
    with held_open(DataFolder(data)):
        serve(app, base, lambda: print("\n".join(lines), flush=True))


def _fill(data: Path, base: str) -> list[str]:
    """Builds the demo data in an empty folder; returns what to try."""
    with closing(DataFolder(data).open()) as db:
        if setting(db, _MARK):
            return [say("commands-demo-kept")]
        if events.last_n(db):
            raise CommandRefused(message("commands-demo-other-data", folder=str(data)))
        print(say("commands-demo-building"), flush=True)
        import demo_db  # here, because no other command needs what the scenario needs

        hints: list[str] = demo_db.build(data, base, with_year=True)
        keep_setting(db, _MARK, "1")
        RETURN_WINDOW.change(db, 0)  # the story has its own dates; a window would shut on them
    return hints
