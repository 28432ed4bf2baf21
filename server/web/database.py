"""One database connection a request; after a request that went well it waits for the next one.

A new connection reads the schema and prepares every statement again, which took a fifth of a sync.
"""

import weakref
from pathlib import Path
from typing import NamedTuple

from flask import Flask
from flask import Response
from flask import current_app
from flask import g
from sqlite_utils import Database

from server.storage import DataFolder
from server.storage import ask_when_writing

MOST_WAITING = 8


class Lent(NamedTuple):
    """A connection, and which file it was opened to."""

    db: Database
    file: object


class Connections:
    """Connections to one data folder that wait for a request, the one used last first; for many threads."""

    def __init__(self, folder: DataFolder):
        """Starts with none."""
        self._folder = folder
        self._waiting: list[Lent] = []
        self._is_over = False

    def take(self) -> Lent:
        """Returns a connection that is in nobody else's use."""
        file = _file(self._folder.database)
        while lent := self._one_that_waits():
            if lent.file == file:
                return lent
            lent.db.close()  # another file lies there by now, or one that is not to be written any more
        return Lent(self._folder.open(), file)

    def give_back(self, lent: Lent) -> None:
        """Lets a connection wait, if there is room and nothing in it is left open."""
        ask_when_writing(lent.db, None)
        if len(self._waiting) < MOST_WAITING and not lent.db.conn.in_transaction:
            self._waiting.append(lent)
        else:
            lent.db.close()
        if self._is_over:
            self.close()

    def close(self) -> None:
        """Closes those that wait, and from now on each that is given back: a request may be under way."""
        self._is_over = True
        while lent := self._one_that_waits():
            lent.db.close()

    def _one_that_waits(self) -> Lent | None:
        try:
            return self._waiting.pop()
        except IndexError:
            return None


def init_app(app: Flask, folder: DataFolder) -> None:
    """Prepares the data folder and lends its connections to requests."""
    folder.prepare()
    app.extensions["data_folder"] = folder
    app.extensions["connections"] = connections = Connections(folder)
    weakref.finalize(app, connections.close)

    @app.after_request
    def _went_well(response: Response) -> Response:
        g.went_well = response.status_code < 400
        return response

    app.teardown_appcontext(_end)


def data_folder() -> DataFolder:
    """Returns the data folder of the running app."""
    folder: DataFolder = current_app.extensions["data_folder"]
    return folder


def database() -> Database:
    """Returns this request's connection."""
    if "lent" not in g:
        g.lent = current_app.extensions["connections"].take()
    lent: Lent = g.lent
    return lent.db


def close_waiting(app: Flask) -> None:
    """Closes the connections that wait for a request, once there will be none."""
    app.extensions["connections"].close()


def _end(error: BaseException | None) -> None:
    lent = g.pop("lent", None)
    if lent is None:
        return
    # What was refused may have left a question half read, which would hold on to an old moment of the log.
    if error is None and g.pop("went_well", False):
        current_app.extensions["connections"].give_back(lent)
    else:
        lent.db.close()


def _file(path: Path) -> object:
    """Returns which file lies at a path and who may write to it, None where there is none."""
    try:
        status = path.stat()
    except OSError:
        return None
    return status.st_dev, status.st_ino, status.st_mode
