"""Keeps a register in step beside the server: connects, enters what was decided, hears what contradicts."""

import logging
import threading
from collections.abc import Iterator
from contextlib import closing
from contextlib import contextmanager

from flask import Flask
from sqlite_utils import Database

from server.beside import beside
from server.beside import turns
from server.queries.projection import Projection
from server.register import outbox
from server.register.address import RegisterAddress
from server.register.chain import EXTENSION
from server.register.chain import Chain
from server.register.chain import counter_id
from server.register.trouble import NotReached
from server.storage import DataFolder

log = logging.getLogger(__name__)

PAUSE_SECONDS = 2.0  # until the log is looked at again, and until a lost register is tried again
ENTER_SECONDS = 10.0  # nobody waits for it


@contextmanager
def joined(app: Flask, base: str, address: RegisterAddress | None) -> Iterator[None]:
    """Has an app, served at `base`, take part in the register at `address`, if any, until the block ends."""
    if address is None:
        yield
        return
    from server.register.link import Link  # here: it needs the driver

    folder, asked = app.extensions["data_folder"], app.extensions["projection"]
    with closing(folder.open()) as db:
        chain = Chain(Link(address), base, counter_id(db))
    app.extensions[EXTENSION] = chain
    with beside("keeps the register", lambda ended: _go(folder, asked, chain, ended), chain.link.wanted.set):
        yield


def in_step(db: Database, asked: Projection, chain: Chain) -> None:
    """Connects, enters everything that is not entered yet, and hears what contradicts; raises NotReached."""
    chain.link.connect()
    while (due := outbox.due(db)) is not None:
        for unit in due.units:
            chain.enter(unit, asked.entered(db, unit, chain.place), ENTER_SECONDS)
        outbox.note(db, due.upto)
    chain.hear()


def _go(folder: DataFolder, asked: Projection, chain: Chain, ended: threading.Event) -> None:
    was_reached = True
    with closing(folder.open()) as db:
        for _ in turns(chain.link.wanted, ended):
            try:
                in_step(db, asked, chain)
                was_reached = True
            except NotReached as error:
                if was_reached:
                    log.warning("the register of returns is not reached: %s", error)
                was_reached = False
                ended.wait(PAUSE_SECONDS)
            except Exception:
                log.exception("the register of returns could not be kept in step")
            chain.link.wanted.wait(PAUSE_SECONDS)
    chain.link.close()
