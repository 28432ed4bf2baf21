"""The command line: finds the command, runs it, turns refusals into one line each.

A command is a module of this folder with a `command` in it, and one line in COMMANDS. It is loaded when it is
asked for, so that each starts with what it needs itself.
"""

import importlib
import sqlite3
import sys
from collections.abc import Sequence

import click

from server.commands.options import REFUSALS
from server.core.errors import BadInput

# In the order of the help; a module has _ where its command has -.
COMMANDS = {
    "demo": "the demo scenario, ready to click, on loopback",
    "serve": "serve one data folder",
    "trust": "the authority that phones trust: fingerprint, end, how to take it off a phone",
    "site": "the app alone as static files: one person, no server",
    "reason": "the engine alone: JSON in, JSON out",
    "labels": "labels to print, and what became of the printed ones",
    "record": "the record of a sensor or a job as a file of its own",
    "verify": "whether what is kept is as it was recorded",
    "backup": "the whole data folder in one file, while it is served",
    "restore": "a new data folder from a backup",
    "take-in": "what a phone recorded, from the file it made",
    "rebuild": "make what follows from the log anew, and compare",
}


class CommandLine(click.Group):
    """The commands of COMMANDS, none of them loaded before it is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Returns the names in the order of the help."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Loads a command; None where there is none of this name."""
        if cmd_name not in COMMANDS:
            return None
        command: click.Command = importlib.import_module(
            f"server.commands.{cmd_name.replace('-', '_')}"
        ).command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Writes what each command does into the help, without loading any."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


command_line = CommandLine(
    name="swaptrail",
    help="Swap-test bookkeeping for parking sensors.",
    epilog="`swaptrail COMMAND --help` says what a command takes.",
    no_args_is_help=False,
    subcommand_metavar="COMMAND ...",
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)


def main(argv: Sequence[str] | None = None) -> int:
    """Runs one command and returns its exit code.

    0 done, 1 done and something is not as it should be, 2 refused with a line that says why. A line that is
    no command ends the program with 2.
    """
    arguments = list(sys.argv[1:] if argv is None else argv)
    try:
        with command_line.make_context("swaptrail", arguments) as context:
            return command_line.invoke(context) or 0
    except click.exceptions.Exit as end:  # after --help
        return end.exit_code
    except click.UsageError as error:
        print(_misuse(error), file=sys.stderr)
        sys.exit(2)
    except REFUSALS as error:
        print(f"swaptrail: {_said(error)}", file=sys.stderr)
        return 2
    except (OSError, sqlite3.Error) as error:
        from server.storage.trouble import storage_words  # here: the folder's other modules are many

        print(f"swaptrail: {storage_words(error)}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print()
        return 0


def _said(error: Exception) -> str:
    """Returns a refusal in the language in use."""
    from server.words.spoken import text  # here: what is not refused starts without the words

    return text(error.message()) if isinstance(error, BadInput) else str(error)


def _misuse(error: click.UsageError) -> str:
    """Returns one line: what is wrong in what was typed, and how the command is used."""
    usage = ""
    if error.ctx:
        words = " ".join(error.ctx.command.collect_usage_pieces(error.ctx))
        usage = f" (usage: {error.ctx.command_path} {words}; --help says more)"
    return f"swaptrail: {' '.join(error.format_message().split())}{usage}"


if __name__ == "__main__":
    sys.exit(main())
