"""`swaptrail lessons`: what the closed jobs of a data folder teach, as text, JSON or CSV."""

import json
from contextlib import closing
from datetime import UTC
from datetime import date
from datetime import datetime
from pathlib import Path
from typing import Any

import click
from sqlite_utils import Database

from server.clock import now_ms
from server.commands import lessons_yards as yards
from server.commands.options import DataCommand
from server.commands.options import OneOf
from server.commands.options import data_option
from server.commands.options import option
from server.core.errors import BadInput
from server.core.messages import message
from server.lessons.figures import figures
from server.lessons.page import page
from server.lessons.table import as_csv
from server.lessons.weighed_in import weight_of
from server.phones.signing import signer
from server.storage import folder_with_data
from server.words.spoken import say
from server.words.spoken import text

#: What is asked of the command: one of them, or a page to read.
_THINGS = ("json", "csv", "give", "weigh_in", "yards", "take_out")
#: What is said beside another option alone.
_GOES_WITH = (("weight", "weigh_in"), ("whose", "weigh_in"), ("compared", "whose"), ("whose", "compared"))
#: What is typed, and what an empty one is told to be.
_TYPED = {"give": "file", "weigh_in": "file", "whose": "name", "take_out": "yard"}
_FIGURES = ("json", "csv")  # over the jobs of a span; what passes between yards is of all


@click.command("lessons", cls=DataCommand, help="commands-lessons-help")
@option("--json", "commands-lessons-json", is_flag=True)
@option("--csv", "commands-lessons-csv", is_flag=True)
@option("--since", "commands-lessons-since", metavar="DATE")
@option("--give", "commands-lessons-give", metavar="FILE")
@option("--weigh-in", "commands-lessons-weigh-in", metavar="FILE")
@option("--weight", "commands-lessons-weight", metavar="WEIGHT")
@option("--whose", "commands-lessons-whose", metavar="NAME")
@option("--compared", "commands-lessons-compared", type=OneOf(yards.HOWS))
@option("--yards", "commands-lessons-yards", is_flag=True)
@option("--take-out", "commands-lessons-take-out", metavar="YARD")
@data_option
def command(data: Path, **asked: Any) -> None:
    """Prints what the closed jobs teach, or lets figures pass between yards."""
    _check_one_thing(asked)
    _check_goes_with(asked)
    _check_typed(asked)
    since, weight = _since(asked["since"]), weight_of("1" if asked["weight"] is None else asked["weight"])
    folder = folder_with_data(data)
    folder.prepare()
    with closing(folder.open()) as db:
        if asked["give"]:
            yards.give(db, signer(folder), Path(asked["give"]))
        elif asked["weigh_in"]:
            whose, how = asked["whose"] or "", asked["compared"] or ""
            yards.weigh_in(db, signer(folder), Path(asked["weigh_in"]), weight, whose, how)
        elif asked["yards"]:
            yards.list_yards(db)
        elif asked["take_out"] is not None:
            yards.take_out(db, asked["take_out"])
        else:
            _print(db, since, as_json=asked["json"], as_table=asked["csv"])


def _check_one_thing(asked: dict[str, Any]) -> None:
    """Refuses two things at once, of which one would be left out unsaid, and a span where none is."""
    given = [name for name in _THINGS if asked[name] not in (None, False)]
    if len(given) > 1:
        first, second = map(_option, given[:2])
        raise click.UsageError(say("commands-not-together", first=first, second=second))
    if asked["since"] is not None and given and given[0] not in _FIGURES:
        raise click.UsageError(say("commands-not-together", first=_option(given[0]), second="--since"))


def _check_goes_with(asked: dict[str, Any]) -> None:
    """Refuses what would be left out unsaid without another option."""
    for name, other in _GOES_WITH:
        if asked[name] is not None and asked[other] is None:
            words = say("commands-lessons-goes-with", option=_option(name), other=_option(other))
            raise click.UsageError(words)


def _check_typed(asked: dict[str, Any]) -> None:
    """Refuses what was left empty, as a script does whose variable is not set."""
    for name, what in _TYPED.items():
        if asked[name] is not None and not asked[name].strip():
            raise BadInput(_option(name), asked[name], message("commands-lessons-wanted", what=what))


def _option(name: str) -> str:
    return f"--{name.replace('_', '-')}"


def _print(db: Database, since: int, *, as_json: bool, as_table: bool) -> None:
    """Prints the figures over the jobs closed since a moment in ms, 0 for all."""
    found = figures(db, now_ms(), since)
    if as_json:
        print(json.dumps(found, ensure_ascii=False, indent=2))
    elif as_table:
        print(as_csv(found), end="")
    else:
        _tell(page(found, ""))


def _since(typed: str | None) -> int:
    if typed is None:
        return 0
    try:
        day = date.fromisoformat(typed)
    except ValueError:
        raise BadInput("--since", typed, message("commands-lessons-date")) from None
    return int(datetime(day.year, day.month, day.day, tzinfo=UTC).timestamp() * 1000)


def _tell(told: dict[str, Any]) -> None:
    for sentence in told["summary"]:
        print(text(sentence))
    for section in told["sections"]:
        print(f"\n{text(section['title'])}")
        for row in section["rows"]:
            note = f"  {text(row['note'])}" if row["note"] else ""
            print(say("commands-lessons-row", words=row["words"], figure=row["figure"]) + note)
