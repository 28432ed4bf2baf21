"""What several commands have in common: --data, --port, and options in sections of the help."""

from pathlib import Path
from typing import Any

import click

from server.core.errors import BadInput
from server.refusals import CommandRefused

DEFAULT_DATA = Path("data")
REFUSALS = (BadInput, CommandRefused)


class DataCommand(click.Command):
    """A command on a data folder: one that is refused leaves nothing of a folder that it made itself."""

    def invoke(self, ctx: click.Context) -> Any:
        """Runs the command."""
        # Here: what needs no data folder starts without SQLite.
        from server.storage.first_start import nothing_left

        with nothing_left(REFUSALS):
            return super().invoke(ctx)

    def format_options(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """Writes the options into the help, those of a section under its name."""
        sections: dict[str, list[tuple[str, str]]] = {}
        for option in self.get_params(ctx):
            line = option.get_help_record(ctx) if isinstance(option, click.Option) else None
            if line:
                sections.setdefault(getattr(option, "section", "Options"), []).append(line)
        for name, lines in sections.items():
            with formatter.section(name):
                formatter.write_dl(lines)


class SectionOption(click.Option):
    """An option that stands under a heading of its own in the help."""

    def __init__(self, *args: Any, section: str, **kwargs: Any) -> None:
        """Takes what any option takes, and the heading."""
        super().__init__(*args, **kwargs)
        self.section = section


data_option = click.option(
    "--data",
    type=Path,
    default=DEFAULT_DATA,
    metavar="DIR",
    help=f"The data folder (./{DEFAULT_DATA}).",
)


def port_option(default: int) -> Any:
    """Returns the option --port; `default` is what the help names."""
    return click.option("--port", type=int, metavar="N", help=f"Fixed at first start ({default}).")
