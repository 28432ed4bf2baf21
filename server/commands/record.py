"""`swaptrail record UNIT-OR-JOB --out FILE`: a record as a file."""

from contextlib import closing
from pathlib import Path

import click

from server.clock import now_ms
from server.commands.options import DataCommand
from server.commands.options import data_option
from server.keeping.new_file import refuse_unless_new
from server.keeping.new_file import written_whole
from server.keeping.record.make import make
from server.phones.signing import fingerprint
from server.phones.signing import signer
from server.storage import folder_with_data


@click.command("record", cls=DataCommand)
@click.argument("name", metavar="UNIT-OR-JOB")
@click.option("--out", type=Path, required=True, metavar="FILE", help="A file that does not exist yet.")
@data_option
def command(name: str, out: Path, data: Path) -> None:
    """Write the record of a sensor or a job as a file of its own.

    UNIT-OR-JOB is the code on a label, a sensor's id or a job's id.
    """
    run(data, name, out)


def run(data: Path, name: str, out: Path) -> None:
    """Writes the record of a sensor or a job."""
    folder = folder_with_data(data)
    refuse_unless_new(out, "a record")
    folder.prepare()
    signs = signer(folder)
    with closing(folder.open()) as db:
        made = make(db, folder.photos, name, signs, now_ms())
    with written_whole(out, 0o666) as part:  # it is made to be handed on
        part.write_bytes(made.data)
    entries, photos = _count(made.entries, "entry", "entries"), _count(made.photos, "photo", "photos")
    print(f"{out}: the record of {made.title}, {entries}, {photos}.")
    if made.absent:
        print(f"Named in it, but not here or too large for it: {_count(made.absent, 'photo', 'photos')}.")
    print(f"Signed with the key {fingerprint(signs.key)}; read that out to whoever takes the file.")


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"
