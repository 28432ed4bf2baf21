"""The command line: finds the command, runs it, turns refusals into one line each.

A command is a module of this folder with a `command` in it, and one line in COMMANDS. It is loaded when it is
asked for, so that each starts with what it needs itself.
"""

import importlib
import os
import sqlite3
import sys
from collections.abc import Sequence

import click

from server.commands.options import CONTEXT
from server.commands.options import REFUSALS
from server.commands.options import WordedHelp
from server.commands.options import language_option
from server.core.errors import BadInput
from server.words.speech import FIRST
from server.words.spoken import nearest
from server.words.spoken import say
from server.words.spoken import speak
from server.words.spoken import text

# In the order of the help: the name, and the id of what it does; a module has _ where its command has -.
COMMANDS = {
    "demo": "commands-demo",
    "serve": "commands-serve",
    "trust": "commands-trust",
    "site": "commands-site",
    "reason": "commands-reason",
    "labels": "commands-labels",
    "record": "commands-record",
    "lessons": "commands-lessons",
    "verify": "commands-verify",
    "backup": "commands-backup",
    "restore": "commands-restore",
    "take-in": "commands-take-in",
    "rebuild": "commands-rebuild",
    "rejoin": "commands-rejoin",
    "make-room": "commands-make-room",
    "register": "commands-register",
}
# Which variable names the language, in the order in which POSIX has them decide.
_LANGUAGE_VARIABLES = ("LC_ALL", "LC_MESSAGES", "LANG")


class CommandLine(WordedHelp, click.Group):
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

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Writes the options, and what each command does, without loading any."""
        lines = [option.get_help_record(ctx) for option in self.get_params(ctx)]
        with formatter.section(say("commands-options")):
            formatter.write_dl([line for line in lines if line])
        with formatter.section(say("commands-heading")):
            formatter.write_dl([(name, say(words)) for name, words in COMMANDS.items()])

    def format_epilog(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Writes where to learn more."""
        formatter.write_paragraph()
        with formatter.indentation():
            formatter.write_text(say("commands-more"))


command_line = language_option(
    CommandLine(
        name="swaptrail",
        help="commands-program",
        no_args_is_help=False,
        subcommand_metavar="COMMAND ...",
        context_settings=CONTEXT,
    )
)


def main(argv: Sequence[str] | None = None) -> int:
    """Runs one command and returns its exit code.

    0 done, 1 done and something is not as it should be, 2 refused with a line that says why, 130 stopped by
    Ctrl-C before it was done, as a shell tells of SIGINT. A line that is no command ends the program with 2.
    """
    arguments = list(sys.argv[1:] if argv is None else argv)
    speak(nearest(next(filter(None, map(os.environ.get, _LANGUAGE_VARIABLES)), None)) or FIRST)
    try:
        with command_line.make_context("swaptrail", arguments) as context:
            return command_line.invoke(context) or 0
    except click.exceptions.Exit as end:  # after --help
        return end.exit_code
    except click.UsageError as error:
        print(_misuse(error), file=sys.stderr)
        sys.exit(2)
    except REFUSALS as error:
        print(f"swaptrail: {_on_one_line(_said(error))}", file=sys.stderr)
        return 2
    except (OSError, sqlite3.Error) as error:
        from server.storage.trouble import storage_words  # here: the folder's other modules are many

        print(f"swaptrail: {_on_one_line(storage_words(error))}", file=sys.stderr)
        return 2
    except KeyboardInterrupt:
        print(
            f"\nswaptrail: {say('commands-stopped')}", file=sys.stderr
        )  # behind the ^C that a terminal shows
        return 130


def _said(error: Exception) -> str:
    """Returns a refusal in the language in use."""
    return text(error.message()) if isinstance(error, BadInput) else str(error)


def _misuse(error: click.UsageError) -> str:
    """Returns one line: what is wrong in what was typed, and how the command is used."""
    said = _on_one_line(_wrong(error))
    if not error.ctx:
        return f"swaptrail: {said}"
    words = " ".join(error.ctx.command.collect_usage_pieces(error.ctx))
    return f"swaptrail: {say('commands-misuse', wrong=said, usage=f'{error.ctx.command_path} {words}')}"


def _on_one_line(said: str) -> str:
    """Returns a refusal without line ends: what was typed, a name of a file, may hold some."""
    return " ".join(said.split())


def _wrong(error: click.UsageError) -> str:
    """Returns what is wrong; what the library says by itself it says in English alone."""
    if isinstance(error, click.NoSuchOption):
        return say("commands-no-such-option", name=error.option_name)
    if isinstance(error, click.exceptions.NoSuchCommand):
        return say("commands-no-such-command", name=error.command_name)
    if isinstance(error, click.BadOptionUsage) and error.ctx:
        flag = any(error.option_name in one.opts for one in error.ctx.command.params if _is_flag(one))
        return say("commands-no-value" if flag else "commands-wants-value", name=error.option_name)
    if isinstance(error, click.MissingParameter):
        return say("commands-missing", name=error.param.get_error_hint(error.ctx) if error.param else "")
    if isinstance(error, click.BadParameter) and error.param:
        hint = error.param.get_error_hint(error.ctx) if error.ctx else error.param.human_readable_name
        return say("commands-bad-value", name=hint, why=error.message)
    return error.format_message()


def _is_flag(option: click.Parameter) -> bool:
    return isinstance(option, click.Option) and option.is_flag


if __name__ == "__main__":
    sys.exit(main())
