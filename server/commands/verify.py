"""`swaptrail verify FILE`: whether a file is as it was written."""

from pathlib import Path

import click

from server.commands.options import WordedCommand
from server.keeping import verify


@click.command("verify", cls=WordedCommand, help="commands-verify-help")
@click.argument("file", type=Path, metavar="FILE")
def command(file: Path) -> int:
    """Tells whether what is kept is as it was recorded, and where it is not."""
    return verify.run(file)
