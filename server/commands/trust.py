"""`swaptrail trust`: what phones trust of an installation, and how a phone stops trusting it."""

from contextlib import closing
from pathlib import Path
from urllib.parse import urlsplit

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
from server.core.messages import message
from server.refusals import CommandRefused
from server.serving import base_address
from server.serving.lan import naming
from server.serving.lan.authority import existing_authority
from server.serving.lan.greeting import fingerprint_lines
from server.serving.lan.greeting import limits
from server.serving.lan.instants import readable
from server.serving.lan.leaf import Leaf
from server.serving.lan.phone_steps import FAMILIES
from server.serving.lan.renewal import FILE
from server.serving.lan.renewal import kept_leaf
from server.storage import folder_with_data
from server.words.spoken import say


@click.command("trust", cls=DataCommand, help="commands-trust-help")
@data_option
def command(data: Path) -> None:
    """Tells of the authority that phones trust."""
    run(data)


def run(data: Path) -> None:
    """Prints the authority of a data folder; makes nothing."""
    folder = folder_with_data(data)
    with closing(folder.open()) as db:
        base = base_address.kept(db) or ""
    authority = existing_authority(folder, urlsplit(base).hostname or "")
    if authority is None:
        raise CommandRefused(message("commands-trust-none", folder=str(data)))
    ranges = ", ".join(str(network) for network in naming.PRIVATE_NETWORKS)
    lines = [
        say("commands-trust-by", address=base),
        "",
        *_table(
            (say("commands-trust-name"), authority.common_name),
            (say("commands-trust-until"), readable(authority.ends)),
            (say("commands-trust-for"), limits(authority.host)),
            ("", f"({ranges})"),
            (say("commands-trust-fingerprint"), "(SHA-256)"),
        ),
        *fingerprint_lines(authority),
        "",
        _of_the_server(kept_leaf(folder.keys / FILE)),
        "",
        say("commands-trust-off"),
        *(
            f"  {say(family.title)}: {say(family.removal, authority=authority.common_name)}"
            for family in FAMILIES
        ),
    ]
    print("\n".join(lines))


def _of_the_server(leaf: Leaf | None) -> str:
    if leaf is None:
        return say("commands-trust-no-leaf")
    return say("commands-trust-leaf", until=readable(leaf.ends))


def _table(*rows: tuple[str, str]) -> list[str]:
    """Returns names and what they say, the latter in one column."""
    width = max(len(name) for name, _ in rows)
    return [f"  {name.ljust(width)}  {said}" for name, said in rows]
