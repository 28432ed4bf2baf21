"""`swaptrail record UNIT-OR-JOB --out FILE`: a record as a file."""

from contextlib import closing
from pathlib import Path

import click

from server.clock import now_ms
from server.commands.options import TEXT
from server.commands.options import DataCommand
from server.commands.options import data_option
from server.commands.options import option
from server.core.messages import message
from server.keeping.new_file import refuse_unless_new
from server.keeping.new_file import written_whole
from server.keeping.record.make import make
from server.phones.signing import fingerprint
from server.phones.signing import signer
from server.refusals import CommandRefused
from server.storage import folder_with_data
from server.words.spoken import say

_ENDING = ".zip"


@click.command("record", cls=DataCommand, help="commands-record-help")
@click.argument("name", type=TEXT, metavar="UNIT-OR-JOB")
@option("--out", "commands-record-out", type=Path, required=True, metavar="FILE")
@data_option
def command(name: str, out: Path, data: Path) -> None:
    """Writes the record of a sensor or a job as a file of its own."""
    run(data, name, out)


def run(data: Path, name: str, out: Path) -> None:
    """Writes the record of a sensor or a job."""
    _refuse_other_ending(out)
    folder = folder_with_data(data)
    refuse_unless_new(out)
    folder.prepare()
    signs = signer(folder)
    with closing(folder.open()) as db:
        made = make(db, folder.photos, name, signs, now_ms(), make_smaller=True)
    with written_whole(out, 0o666) as part:  # it is made to be handed on
        part.write_bytes(made.data)
    written = {"file": str(out), "title": made.title, "entries": made.entries, "photos": made.photos}
    print(say("commands-record-written", **written))
    if made.smaller:
        print(say("commands-record-smaller", photos=made.smaller))
    if made.absent:
        print(say("commands-record-absent", photos=made.absent))
    print(say("commands-record-signed", key=fingerprint(signs.key)))


def _refuse_other_ending(out: Path) -> None:
    """Refuses a name by which the file would be taken for something else than what is written."""
    if out.suffix.lower() not in {"", _ENDING}:
        about = {"file": str(out), "better": str(out.with_suffix(_ENDING))}
        raise CommandRefused(message("commands-record-ending", **about))
