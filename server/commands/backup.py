"""`swaptrail backup FILE.zip`: the whole data folder in one file."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.keeping import backup


@click.command("backup", cls=DataCommand, help="commands-backup-help")
@click.argument("file", type=Path, metavar="FILE.zip")
@data_option
def command(file: Path, data: Path) -> int:
    """Puts the whole data folder into one file."""
    return backup.run(data, file)
