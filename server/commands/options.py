"""What several commands have in common: words by language, --data, --port, what is typed, the help."""

import re
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import click

from server.core.errors import BadInput
from server.core.errors import shorten
from server.core.messages import any_of
from server.core.messages import message
from server.refusals import CommandRefused
from server.words.files import languages
from server.words.spoken import say
from server.words.spoken import speak

DEFAULT_DATA = Path("data")
REFUSALS = (BadInput, CommandRefused)
CONTEXT: dict[str, Any] = {"help_option_names": ["-h", "--help"], "max_content_width": 100}


def _misfit(found: str, wanted: dict) -> str:
    """Returns what was found where something else is wanted; bytes that are no text are spelt out."""
    readable = found.encode("utf-8", "backslashreplace").decode("utf-8")
    return say("commands-found", found=shorten(readable), wanted=wanted)


class WholeNumber(click.ParamType):
    """A whole number of figures that every table has room for."""

    name = "number"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> int:
        """Returns the number that was typed."""
        if not re.fullmatch(r"[+-]?\d{1,18}", str(value).strip()):
            self.fail(_misfit(str(value), message("commands-whole-number")), param, ctx)
        return int(value)


class Text(click.ParamType):
    """Text that can be kept and shown: a command line may hold bytes that are no letters."""

    name = "text"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> str:
        """Returns the text that was typed."""
        try:
            str(value).encode("utf-8")
        except UnicodeEncodeError:
            self.fail(_misfit(str(value), message("case-utf-8")), param, ctx)
        return str(value)


class OneOf(click.Choice[str]):
    """One of a few words."""

    def __init__(self, choices: Sequence[str]):
        """Takes the words that there are."""
        super().__init__(choices)

    def get_invalid_choice_message(self, value: Any, ctx: click.Context | None) -> str:
        """Returns what is wrong with another word."""
        return _misfit(str(value), any_of(list(self.choices)))


WHOLE_NUMBER, TEXT = WholeNumber(), Text()


class WordedHelp(click.Command):
    """What has its help in the language in use; its `help` is the id of a message."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Reads what was typed; a misuse knows where, so that the way to use it can stand beside it."""
        try:
            return super().parse_args(ctx, args)
        except click.BadOptionUsage as error:
            error.ctx = error.ctx or ctx
            raise

    def get_help_option_names(self, ctx: click.Context) -> list[str]:
        """Returns how the help is asked for, also where the command is used by itself."""
        return CONTEXT["help_option_names"]

    def format_usage(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Writes how it is used."""
        pieces = " ".join(self.collect_usage_pieces(ctx))
        formatter.write_usage(ctx.command_path, pieces, prefix=f"{say('commands-usage')} ")

    def format_help_text(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Writes what it does."""
        formatter.write_paragraph()
        with formatter.indentation():
            formatter.write_text(say(self.help or ""))

    def get_help_option(self, ctx: click.Context) -> click.Option | None:
        """Returns the option that shows the help."""
        shown = super().get_help_option(ctx)
        if shown is not None:
            shown.help = say("commands-help")
        return shown


class WordedCommand(WordedHelp):
    """A command whose options stand in the help under their section."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Reads what was typed; what is left over is refused in our words."""
        ctx.allow_extra_args = True
        left = super().parse_args(ctx, args)
        if left:
            raise click.UsageError(say("commands-left-over", given=" ".join(left)), ctx)
        return left

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Writes the options into the help, those of a section under its name."""
        sections: dict[str, list[tuple[str, str]]] = {}
        for option in self.get_params(ctx):
            line = option.get_help_record(ctx) if isinstance(option, click.Option) else None
            if line:
                sections.setdefault(getattr(option, "section", "commands-options"), []).append(line)
        for name, lines in sections.items():
            with formatter.section(say(name)):
                formatter.write_dl(lines)


class DataCommand(WordedCommand):
    """A command on a data folder: one that is refused leaves nothing of a folder that it made itself."""

    def invoke(self, ctx: click.Context) -> Any:
        """Runs the command."""
        # Here: what needs no data folder starts without SQLite.
        from server.storage.first_start import nothing_left

        with nothing_left(REFUSALS):
            return super().invoke(ctx)


class WordedOption(click.Option):
    """An option whose help is a message; `section` is the id of the heading under which it stands."""

    def __init__(self, *args: Any, words: str, section: str = "", about: dict | None = None, **kwargs: Any):
        """Takes what any option takes, the id of its help, and its arguments."""
        super().__init__(*args, **kwargs)
        self.words = words
        self.about = about or {}
        if section:
            self.section = section

    def get_help_record(self, ctx: click.Context) -> tuple[str, str] | None:
        """Returns the option as it is typed, and what it does."""
        record = super().get_help_record(ctx)
        return (record[0], say(self.words, **self.about)) if record else None


def option(name: str, words: str, **kwargs: Any) -> Any:
    """Returns a decorator that gives a command an option; `words` is its help's id, `about` its arguments."""
    if "type" not in kwargs and "is_flag" not in kwargs:
        kwargs["type"] = TEXT
    return click.option(name, cls=WordedOption, words=words, **kwargs)


def _choose(ctx: click.Context, param: click.Parameter, language: str | None) -> None:
    if language is None:
        return
    if language not in languages():
        wanted = any_of(languages())
        raise CommandRefused(BadInput("--language", language, wanted).message())
    speak(language)


#: For the program, and for a command that is asked by scripts.
language_option = option(
    "--language",
    "commands-language",
    metavar="CODE",
    is_eager=True,  # before --help
    expose_value=False,
    callback=_choose,
)

data_option = option(
    "--data",
    "commands-data",
    about={"folder": f"./{DEFAULT_DATA}"},
    type=Path,
    default=DEFAULT_DATA,
    metavar="DIR",
)


def port_option(default: int) -> Any:
    """Returns the option --port; `default` is what the help names."""
    return option("--port", "commands-port", about={"port": str(default)}, type=WHOLE_NUMBER, metavar="N")
