"""`swaptrail rebuild`: makes what follows from the log anew."""

from pathlib import Path

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.keeping import rebuild


@click.command("rebuild", cls=DataCommand, help="commands-rebuild-help")
@data_option
def command(data: Path) -> int:
    """Makes everything that follows from the log anew, and says what differed."""
    return rebuild.run(data)
