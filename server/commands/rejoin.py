"""`swaptrail rejoin`: a data folder that came back from elsewhere."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.keeping import rejoin


@click.command("rejoin", cls=DataCommand, help="commands-rejoin-help")
@data_option
def command(data: Path) -> None:
    """Begins a new epoch of the log."""
    rejoin.run(data)
