"""`swaptrail backup FILE.zip`: the whole data folder in one file."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.keeping import backup


@click.command("backup", cls=DataCommand)
@click.argument("file", type=Path, metavar="FILE.zip")
@data_option
def command(file: Path, data: Path) -> int:
    """Put the whole data folder into one file, also while it is served.

    FILE.zip is a file that does not exist yet.
    """
    return backup.run(data, file)
