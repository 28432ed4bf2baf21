"""`swaptrail verify FILE`: whether a file is as it was written."""

from pathlib import Path

import click

from server.commands.options import WordedCommand
from server.commands.options import option
from server.keeping import verify


@click.command("verify", cls=WordedCommand, help="commands-verify-help")
@click.argument("file", type=Path, metavar="FILE")
@option("--data", "commands-verify-data", type=Path, metavar="DIR")
def command(file: Path, data: Path | None) -> int:
    """Tells whether what is kept is as it was recorded, and where it is not."""
    return verify.run(file, data)
