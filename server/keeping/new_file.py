"""How a command writes a file: a new one, whole or not at all."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from server.core.messages import message
from server.refusals import CommandRefused
from server.storage.durable import sync_file
from server.storage.durable import sync_folder
from server.storage.parts import beside
from server.storage.parts import making
from server.storage.parts import name_for
from server.storage.parts import take_away_left


def refuse_unless_new(out: Path) -> None:
    """Refuses to write over a file, into a folder that is not there, or a file of the name `-`."""
    if str(out) == "-":  # by custom the standard output; a file is written whole or not at all
        raise CommandRefused(message("keeping-no-stream"))
    if out.exists() or out.is_symlink():  # one that leads nowhere is somebody's too
        raise CommandRefused(message("keeping-exists", file=str(out)))
    if not out.parent.is_dir():
        raise CommandRefused(message("keeping-no-folder", file=str(out), folder=str(out.parent)))


@contextmanager
def written_whole(out: Path, mode: int = 0o600) -> Iterator[Path]:
    """Gives the name to write under: the file stands under its own name in full or not at all.

    `mode` is what others may do with it, as far as the user's umask lets them.
    """
    take_away_left(beside(out.parent))
    with making(name_for(out), mode) as part:
        yield part
        sync_file(part)
        part.replace(out)
    sync_folder(out.parent)
