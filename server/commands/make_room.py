"""`swaptrail make-room --out FILE`: what was set aside goes into a file."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.commands.options import option
from server.keeping import make_room


@click.command("make-room", cls=DataCommand, help="commands-make-room-help")
@option("--out", "commands-make-room-out", type=Path, required=True, metavar="FILE")
@data_option
def command(out: Path, data: Path) -> None:
    """Moves what was kept apart and nobody wants into a file."""
    make_room.run(data, out)
