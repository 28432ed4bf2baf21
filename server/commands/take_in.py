"""`swaptrail take-in FILE`: what a phone recorded, from the file it made."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.log import take_in


@click.command("take-in", cls=DataCommand, help="commands-take-in-help")
@click.argument("file", type=Path, metavar="FILE")
@data_option
def command(file: Path, data: Path) -> int:
    """Takes in what a phone recorded."""
    return take_in.run(data, file)
