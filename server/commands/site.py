"""`swaptrail site --out DIR`: the app alone as files for a host that serves files."""

from pathlib import Path

import click

from server.commands.options import WordedCommand
from server.commands.options import option
from server.site.make import write
from server.site.notes import notes
from server.web.shell import find_static


@click.command("site", cls=WordedCommand, help="commands-site-help")
@option("--out", "commands-site-out", type=Path, required=True, metavar="DIR")
def command(out: Path) -> None:
    """Writes the app alone as static files."""
    run(out)


def run(out: Path) -> None:
    """Writes the app as static files into `out` and says what to do with them."""
    print(write(find_static(), out), end="\n\n")
    print(notes(), end="")
