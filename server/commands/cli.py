"""The command line: reads the arguments, runs one command, turns refusals into one line each."""

import argparse
import sqlite3
import sys
from pathlib import Path

from server.commands import demo
from server.commands import labels as labels_command
from server.commands import reason as reason_cli
from server.commands import record as record
from server.commands import serve as serve_options
from server.core.errors import BadInput
from server.keeping import backup
from server.keeping import rebuild
from server.keeping import restore
from server.keeping import verify
from server.log import take_in
from server.refusals import CommandRefused
from server.serving.base_address import DEFAULT_PORT
from server.serving.base_address import AddressRefused
from server.serving.lan import trust as lan_trust
from server.site import command as site_command
from server.storage.first_start import nothing_left
from server.storage.trouble import storage_words
from server.web.shell import ShellIncomplete

DEFAULT_DATA = Path("data")
_REFUSALS = (AddressRefused, BadInput, CommandRefused, ShellIncomplete)


def main(argv: list[str] | None = None) -> int:
    """Runs one command and returns its exit code.

    0 done, 1 done and something is not as it should be, 2 refused with a line that says why.
    """
    asked = parser().parse_args(argv)
    try:
        with nothing_left(_REFUSALS):
            return asked.run(asked) or 0
    except _REFUSALS as error:
        print(f"swaptrail: {error}", file=sys.stderr)
        return 2
    except (OSError, sqlite3.Error) as error:
        print(f"swaptrail: {storage_words(error)}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print()
        return 0


def parser() -> argparse.ArgumentParser:
    """Returns what reads the command line."""
    parser = argparse.ArgumentParser(
        prog="swaptrail", description="Swap-test bookkeeping for parking sensors."
    )
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    command = commands.add_parser("demo", help="the demo scenario, ready to click, on loopback")
    _add_port(command)
    command.add_argument(
        "--data", type=Path, metavar="DIR", help="keep the demo's data here (default: nowhere)"
    )
    command.set_defaults(run=lambda asked: demo.run(asked.data, asked.port))

    command = commands.add_parser("serve", help="serve one data folder")
    _add_data(command)
    _add_port(command)
    serve_options.add_options(command)

    command = commands.add_parser(
        "trust", help="the authority that phones trust: fingerprint, end, how to take it off a phone"
    )
    _add_data(command)
    command.set_defaults(run=lambda asked: lan_trust.run(asked.data))

    command = commands.add_parser("site", help="the app alone as static files: one person, no server")
    command.add_argument(
        "--out", type=Path, required=True, metavar="DIR", help="a new folder, or one with an earlier site"
    )
    command.set_defaults(run=lambda asked: site_command.run(asked.out))

    command = commands.add_parser("reason", help="the engine alone: JSON in, JSON out")
    command.add_argument("case", metavar="CASE.json", help="the case")
    command.set_defaults(run=lambda asked: reason_cli.run(asked.case))

    command = commands.add_parser("labels", help="labels to print, and what became of the printed ones")
    _add_data(command)
    labels_command.add_options(command)

    command = commands.add_parser("record", help="the record of a sensor or a job as a file of its own")
    named = "the code on a label, a sensor's id or a job's id"
    command.add_argument("name", metavar="UNIT-OR-JOB", help=named)
    command.add_argument(
        "--out", type=Path, required=True, metavar="FILE", help="a file that does not exist yet"
    )
    _add_data(command)
    command.set_defaults(run=lambda asked: record.run(asked.data, asked.name, asked.out))

    _add_keeping(commands)
    return parser


def _add_keeping(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Adds the commands by which data is kept safe."""
    command = commands.add_parser("verify", help="whether what is kept is as it was recorded")
    command.add_argument(
        "file", type=Path, metavar="FILE", help="a record, a backup, a phone's file, a data folder"
    )
    command.set_defaults(run=lambda asked: verify.run(asked.file))

    command = commands.add_parser("backup", help="the whole data folder in one file, while it is served")
    command.add_argument("file", type=Path, metavar="FILE.zip", help="a file that does not exist yet")
    _add_data(command)
    command.set_defaults(run=lambda asked: backup.run(asked.data, asked.file))

    command = commands.add_parser("restore", help="a new data folder from a backup")
    command.add_argument("file", type=Path, metavar="FILE.zip", help="the backup")
    _add_data(command)
    command.set_defaults(run=lambda asked: restore.run(asked.data, asked.file))

    command = commands.add_parser("take-in", help="what a phone recorded, from the file it made")
    command.add_argument("file", type=Path, metavar="FILE", help="the file that the phone made")
    _add_data(command)
    command.set_defaults(run=lambda asked: take_in.run(asked.data, asked.file))

    command = commands.add_parser("rebuild", help="make what follows from the log anew, and compare")
    _add_data(command)
    command.set_defaults(run=lambda asked: rebuild.run(asked.data))


def _add_data(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--data",
        type=Path,
        default=DEFAULT_DATA,
        metavar="DIR",
        help=f"the data folder (./{DEFAULT_DATA})",
    )


def _add_port(command: argparse.ArgumentParser) -> None:
    command.add_argument("--port", type=int, metavar="N", help=f"fixed at first start ({DEFAULT_PORT})")


if __name__ == "__main__":
    sys.exit(main())
