"""What `swaptrail lessons` does with figures that pass between yards: give, weigh in, list, take out."""

import getpass
from pathlib import Path

from sqlite_utils import Database

from server.clock import now_ms
from server.core.evidence.assumptions import exact
from server.keeping.new_file import refuse_unless_new
from server.keeping.new_file import written_whole
from server.keeping.record.makers import HOWS
from server.keeping.record.makers import confirm
from server.lessons import given
from server.lessons import weighed_in
from server.lessons.weighed_in import Yard
from server.lessons.yards_page import how_many
from server.phones.signing import Signer
from server.phones.signing import fingerprint
from server.refusals import CommandRefused
from server.words.spoken import say
from server.words.spoken import text

__all__ = ["HOWS", "give", "list_yards", "take_out", "weigh_in"]


def give(db: Database, signs: Signer, out: Path) -> None:
    """Writes the yard's own figures as a file for another yard."""
    refuse_unless_new(out)
    made, jobs = given.give(db, signs, now_ms())
    with written_whole(out, 0o666) as part:  # it is made to be handed on
        part.write_text(made)
    print(say("lessons-gave", file=str(out), jobs=jobs))
    print(say("lessons-yard-seal", key=fingerprint(signs.key)))


def weigh_in(db: Database, signs: Signer, file: Path, weight: int, whose: str, how: str) -> None:
    """Lets the figures of another yard count; `whose` and `how` confirm its seal, both "" where not said."""
    try:
        data = file.read_bytes()
    except OSError as error:
        raise CommandRefused(f"{file}: {error.strerror}") from None
    figures = given.read(data)
    try:
        outcome, yard = weighed_in.weigh_in(db, figures, weight, signs, now_ms())
    except weighed_in.Unconfirmed as error:
        if not whose:
            raise
        _confirm(db, error.fingerprint, whose, how)
        outcome, yard = weighed_in.weigh_in(db, figures, weight, signs, now_ms())
    if whose and yard.name != _name(whose):  # it was confirmed under another name before
        _confirm(db, yard.fingerprint, whose, how)
        yard = yard._replace(name=_name(whose))
    print(say("lessons-weighed", how=outcome, yard=yard.name, jobs=yard.jobs, weight=exact(weight * 10_000)))


def list_yards(db: Database) -> None:
    """Prints the yards whose figures count."""
    yards = weighed_in.yards(db)
    for yard in yards:
        print(say("lessons-yard-weighs", yard=yard.name, weight=exact(yard.weight * 10_000)))
        print(f"  {_of(yard)}  {say('lessons-yard-seal', key=yard.fingerprint)}")
    if not yards:
        print(say("lessons-yards-none"))


def take_out(db: Database, shown: str) -> None:
    """Lets the figures of a yard count no more."""
    yard = weighed_in.take_out(db, shown)
    print(say("lessons-taken-out", yard=yard.name, jobs=yard.jobs))


def _confirm(db: Database, seal: str, whose: str, how: str) -> None:
    confirm(db, seal, name=_name(whose), how=how, by=getpass.getuser(), now=now_ms())


def _name(whose: str) -> str:
    return whose.strip()[:80]


def _of(yard: Yard) -> str:
    return text(how_many(yard.jobs, yard.first, yard.last))
