"""The server's host of the core: folds the log as it grows and answers what screens and clerks ask.

One a process, behind a lock, because a fold is one thing that moves on; answers are kept in the
database for as long as the log and the core stay as they are, so most questions need no fold.
"""

import json
import re
import threading

from flask import Blueprint
from flask import Flask
from flask import Response
from flask import current_app
from sqlite_utils import Database

from server import events
from server.core import canon
from server.core import labels
from server.core.errors import shorten
from server.core.host import Host
from server.database import database
from server.errors import BadRequest
from server.errors import NotFound
from server.storage import writing

blueprint = Blueprint("projection", __name__)

_UNIT = re.compile(r"u[0-9a-f]{12}$|v[0-9a-f]{12}\.")

_BATCH = 2000
_BATCH_BYTES = 64 * 1024 * 1024


class Projection:
    """The folded state of the log, moved on by need."""

    def __init__(self, core: str) -> None:
        """Starts with nothing folded; `core` is the hash of the core's files."""
        self._host = Host()
        self._lock = threading.Lock()
        self._folded = 0
        self._core = core

    def answer(self, db: Database, table: str, question: dict) -> str:
        """Returns the core's answer to an op as canonical JSON, from `table` where it is there."""
        key = canon.dumps(question)
        upto = events.last_n(db)
        row = db.conn.execute(
            f"SELECT answer FROM {table} WHERE question = ? AND upto = ? AND core = ?",
            [key, upto, self._core],
        ).fetchone()
        if row:
            kept: str = row[0]
            return kept
        with self._lock:
            upto = self._catch_up(db)
            value = self._ask(question)
        text = canon.dumps(value)
        with writing(db):
            db.conn.execute(
                f"INSERT OR REPLACE INTO {table} (question, upto, core, answer) VALUES (?, ?, ?, ?)",
                [key, upto, self._core, text],
            )
        return text

    def _catch_up(self, db: Database) -> int:
        """Folds what was received since the last question; returns how far that is."""
        while batch := events.after(db, self._folded, _BATCH, _BATCH_BYTES):
            entries = [{"event": entry["event"]} for entry in batch]
            try:
                self._ask({"op": "add", "events": entries})
            except BaseException:
                # Half a batch may be folded; the next question begins from nothing.
                self._host, self._folded = Host(), 0
                raise
            self._folded = batch[-1]["n"]
        return self._folded

    def _ask(self, question: dict) -> object:
        reply = json.loads(self._host.call(canon.dumps(question)))
        if reply["ok"]:
            return reply["value"]
        error = reply["error"]
        kind = NotFound if error["field"] in {"job", "unit", "code"} else BadRequest
        raise kind(error["field"], error["found"], error["wanted"], error["message"])


def init_app(app: Flask, core: str) -> None:
    """Gives the app its projection and the routes that ask it."""
    app.extensions["projection"] = Projection(core)
    app.register_blueprint(blueprint)


@blueprint.get("/api/jobs")
def jobs() -> Response:
    """Lists the jobs."""
    return _answer("job_cache", {"op": "jobs"})


@blueprint.get("/api/jobs/<job>")
def job(job: str) -> Response:
    """Answers with one job as the screens draw it."""
    return _answer("job_cache", {"op": "job", "job": job})


@blueprint.get("/api/units/<name>")
def unit(name: str) -> Response:
    """Answers with one unit by its id, or by the code on its label as read or typed."""
    if _UNIT.match(name):
        return _answer("unit_cache", {"op": "unit", "unit": name})
    read = labels.parse(name)
    if read["outcome"] != "ours":
        raise BadRequest("code", shorten(name), "a unit's id or the code on its label", read["sentence"])
    return _answer("unit_cache", {"op": "unit", "code": read["code"]})


def _answer(table: str, question: dict) -> Response:
    projection: Projection = current_app.extensions["projection"]
    text = projection.answer(database(), table, question)
    return Response(text, mimetype="application/json")
