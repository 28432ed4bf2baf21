"""`swaptrail restore FILE.zip`: a new data folder from a backup."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.keeping import restore


@click.command("restore", cls=DataCommand, help="commands-restore-help")
@click.argument("file", type=Path, metavar="FILE.zip")
@data_option
def command(file: Path, data: Path) -> None:
    """Makes a new data folder from a backup."""
    restore.run(data, file)
