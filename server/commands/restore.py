"""`swaptrail restore FILE.zip`: a new data folder from a backup."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.keeping import restore


@click.command("restore", cls=DataCommand)
@click.argument("file", type=Path, metavar="FILE.zip")
@data_option
def command(file: Path, data: Path) -> None:
    """Make a new data folder from a backup; nothing is overwritten.

    FILE.zip is the backup.
    """
    restore.run(data, file)
