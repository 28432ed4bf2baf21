"""`swaptrail verify FILE`: whether a file is as it was written."""

from pathlib import Path

import click

from server.keeping import verify


@click.command("verify")
@click.argument("file", type=Path, metavar="FILE")
def command(file: Path) -> int:
    """Tell whether what is kept is as it was recorded, and where it is not.

    FILE is a record, a backup, a phone's file, or a data folder. Ends with 0 when it is intact, with 1 when
    it was altered, with 2 when it is none of these.
    """
    return verify.run(file)
