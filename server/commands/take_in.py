"""`swaptrail take-in FILE`: what a phone recorded, from the file it made."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.log import take_in


@click.command("take-in", cls=DataCommand)
@click.argument("file", type=Path, metavar="FILE")
@data_option
def command(file: Path, data: Path) -> int:
    """Take in what a phone recorded: what it could not send, or all of it. Twice is harmless.

    FILE is the file that the phone made.
    """
    return take_in.run(data, file)
