"""`swaptrail trust`: what phones trust of an installation, and how a phone stops trusting it."""

from contextlib import closing
from pathlib import Path
from urllib.parse import urlsplit

import click

from server.commands.options import DataCommand
from server.commands.options import data_option
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


@click.command("trust", cls=DataCommand)
@data_option
def command(data: Path) -> None:
    """Tell of the authority that phones trust: its fingerprint, its end, how to take it off a phone."""
    run(data)


def run(data: Path) -> None:
    """Prints the authority of a data folder; makes nothing."""
    folder = folder_with_data(data)
    with closing(folder.open()) as db:
        base = base_address.kept(db) or ""
    authority = existing_authority(folder, urlsplit(base).hostname or "")
    if authority is None:
        raise CommandRefused(
            f"{data} has no certificate authority: it was never served with --lan. Phones that open it trust "
            "whatever certificate it was given otherwise."
        )
    ranges = ", ".join(str(network) for network in naming.PRIVATE_NETWORKS)
    lines = [
        f"{base} is trusted by phones that have this certificate authority:",
        "",
        f"  Name         {authority.common_name}",
        f"  Good until   {readable(authority.ends)}",
        f"  Good for     {limits(authority.host)}",
        f"               ({ranges})",
        "  Fingerprint  (SHA-256)",
        *fingerprint_lines(authority),
        "",
        _of_the_server(kept_leaf(folder.keys / FILE)),
        "",
        "To take it off a phone:",
        *(
            f"  {family.title}: {family.removal.format(authority=authority.common_name)}"
            for family in FAMILIES
        ),
    ]
    print("\n".join(lines))


def _of_the_server(leaf: Leaf | None) -> str:
    if leaf is None:
        return "The server has no certificate of its own now; it makes one when it is started."
    return (
        f"The server's own certificate is good until {readable(leaf.ends)}; it is made anew in time while it "
        "serves."
    )
