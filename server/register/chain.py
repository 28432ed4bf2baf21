"""One counter's part in a chain: the link to the register, who it is there, and what it has heard."""

import secrets
from collections.abc import Callable
from typing import TYPE_CHECKING
from typing import TypeVar
from urllib.parse import urlsplit

from flask import current_app
from sqlite_utils import Database

from server.clock import now_ms
from server.register import entries
from server.register.entries import Contradiction
from server.register.entries import Entry
from server.register.entries import part_that_fits
from server.register.trouble import NotReached
from server.storage.folder import keep_setting
from server.storage.folder import setting

if TYPE_CHECKING:
    from server.register.link import Link  # needs the driver, which a server without a register has not

_COUNTER = "register_counter"
EXTENSION = "register"

Result = TypeVar("Result")


class Chain:
    """A register as one counter uses it."""

    def __init__(self, link: "Link", base: str, counter: str):
        """`base` is the address of the installation, `counter` its id in the register."""
        self.link = link
        self.counter = counter
        self.place = urlsplit(base).netloc.lower()
        self.contradictions: list[Contradiction] = []  # as of the last time that it was reached

    def others(self, keys: list[str], part: str) -> list[Entry]:
        """Returns what other counters have under these keys; raises NotReached."""
        fits = part_that_fits(part)
        return self.link.done(lambda cursor: entries.others(cursor, keys, self.counter, fits))

    def claim(self, keys: list[str], unit: str, part: str) -> list[Entry]:
        """Begins to accept a return, unless others have it, who are returned; raises NotReached."""
        fits = part_that_fits(part)
        mine = Entry(self.counter, unit, self.place, fits, entries.ACCEPT, False, False, now_ms())
        return self.link.done(lambda cursor: entries.claim(cursor, keys, mine))

    def release(self, unit: str) -> None:
        """Gives back what was begun and did not come on record; raises NotReached."""
        self.link.done(lambda cursor: entries.withdraw(cursor, self.counter, unit, only_begun=True))

    def enter(self, unit: str, entered: dict | None, seconds: float) -> None:
        """Enters how a return now stands, as the core says (`op_entered`); raises NotReached."""
        if entered is None or not entered["decision"]:
            self.link.done(lambda cursor: entries.withdraw(cursor, self.counter, unit), seconds)
            return
        part = part_that_fits(entered["part"])
        given = (part, entered["decision"], True, entered["knowing"], entered["at"])
        mine = Entry(self.counter, unit, self.place, *given)
        keys = [each for each in entered["keys"] if entries.is_key(each)]
        self.link.done(lambda cursor: entries.enter(cursor, keys, mine), seconds)

    def hear(self) -> None:
        """Asks what contradicts this counter's decisions; raises NotReached."""
        self.contradictions = self.link.done(lambda cursor: entries.contradictions(cursor, self.counter))


def counter_id(db: Database) -> str:
    """Returns by what id the register knows a data folder; it stays when the folder comes from a backup."""
    kept = setting(db, _COUNTER)
    if kept is None:
        kept = secrets.token_hex(8)
        keep_setting(db, _COUNTER, kept)
    return kept


def current_chain() -> Chain | None:
    """Returns the chain of the running app, None where it has no register."""
    chain: Chain | None = current_app.extensions.get(EXTENSION)
    return chain


def reached(ask: Callable[[Chain], Result]) -> Result | None:
    """Returns what the register of the running app answers; None where there is none or it is not reached."""
    chain = current_chain()
    if chain is None:
        return None
    try:
        return ask(chain)
    except NotReached:
        return None
