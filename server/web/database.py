"""One database connection a request, closed when the request ends."""

from flask import Flask
from flask import current_app
from flask import g
from sqlite_utils import Database

from server.storage import DataFolder


def init_app(app: Flask, folder: DataFolder) -> None:
    """Prepares the data folder and lends its connections to requests."""
    folder.prepare()
    app.extensions["data_folder"] = folder
    app.teardown_appcontext(_close)


def data_folder() -> DataFolder:
    """Returns the data folder of the running app."""
    folder: DataFolder = current_app.extensions["data_folder"]
    return folder


def database() -> Database:
    """Returns this request's connection."""
    if "database" not in g:
        g.database = data_folder().open()
    db: Database = g.database
    return db


def _close(error: BaseException | None) -> None:
    db = g.pop("database", None)
    if db is not None:
        db.close()
