"""The server's host of the core: answers what screens and clerks ask, from the folded state.

A question reads only the entities that it touches, so it costs the same however long the log is.
Answers are kept in the database for as long as the log and the core stay as they are.
"""

import json
import logging
import re
import sqlite3
from collections.abc import Callable
from collections.abc import Iterator
from contextlib import contextmanager

from flask import Blueprint
from flask import Flask
from flask import Response
from flask import current_app
from flask import request
from sqlite_utils import Database

from server import folded
from server.core.codes import labels
from server.core.errors import shorten
from server.core.host import Host
from server.core.log import canon
from server.core.messages import message
from server.core.views import counter_lists
from server.core.words.words import DAY_MS
from server.folded import FoldedState
from server.log import events
from server.storage import at_one_moment
from server.storage import writing_cache
from server.web.answers import json_answer
from server.web.database import database
from server.web.errors import BadRequest
from server.web.errors import NotFound
from server.words.spoken import spoken

blueprint = Blueprint("projection", __name__)
log = logging.getLogger(__name__)

_UNIT = re.compile(r"u[0-9a-f]{12}$|v[0-9a-f]{12}\.")

MOST_JOBS = 200  # in one answer
_MOST_BEYOND = 4096  # entries folded for an answer where they cannot be kept


class Projection:
    """The core's answers over a database; `core` is the hash of the core's files."""

    def __init__(self, core: str) -> None:
        """Opens nothing; each question brings its connection."""
        self._core = core

    def job(self, db: Database, job: str) -> str:
        """Returns the view of a job as canonical JSON."""

        def gather(state: FoldedState) -> None:
            state.focus(job)
            state.add_linked("stock")
            state.add_history(job)
            state.in_order()

        return self._answer(db, "job_cache", {"op": "job", "job": job}, gather)

    def unit(self, db: Database, **named: str) -> str:
        """Returns the view of a unit, asked for by `unit` or by `code`."""
        return self._answer(db, "unit_cache", {"op": "unit", **named}, lambda state: None)

    def decided(self, db: Database, start: int, end: int) -> str:
        """Returns the decisions of the counter from `start` to before `end` as canonical JSON."""

        def gather(state: FoldedState) -> None:
            state.add_linked(*(f"decided:{day}" for day in range(start // DAY_MS, (end - 1) // DAY_MS + 1)))

        return self._fresh(db, {"op": "decided", "start": start, "end": end}, gather)

    def waiting(self, db: Database) -> str:
        """Returns the returns that wait for a decision as canonical JSON."""
        return self._fresh(db, {"op": "waiting"}, lambda state: state.add_linked("waiting"))

    def entered(self, db: Database, unit: str, host: str) -> dict | None:
        """Returns what the register of a chain has to say of a unit (`op_entered`); None of one unknown."""
        question = {"op": "entered", "unit": unit, "host": host}
        entered: dict | None = json.loads(self._fresh(db, question, lambda state: None))
        return entered

    def find(self, db: Database, text: str) -> str:
        """Returns the units that a text finds as canonical JSON.

        The index says which units to look at, the core which of them it is.
        """

        def gather(state: FoldedState) -> None:
            for name in folded.units_found(db, text, counter_lists.MOST_FOUND):
                state.units.get(name)

        return self._fresh(db, {"op": "find", "text": text}, gather)

    def jobs(self, db: Database, start: int) -> str:
        """Returns a part of the list of jobs, in the core's order."""
        with _in_step(db):  # or, with a full disk, the list from before: it stands behind no decision
            upto = events.last_n(db)
            rows = db.conn.execute(
                "SELECT job, CASE core WHEN ? THEN line END FROM job_list "
                "ORDER BY closed, opened_at DESC, job LIMIT ? OFFSET ?",
                [self._core, MOST_JOBS, start],
            ).fetchall()
            made = {job: _line(db, job) for job, line in rows if line is None}
        self._keep(
            db,
            "UPDATE job_list SET core = ?, line = ? WHERE job = ? AND ? = (SELECT max(n) FROM events)",
            [[self._core, line, job, upto] for job, line in made.items()],
        )
        return "[" + ",".join(line or made[job] for job, line in rows) + "]"

    def _fresh(self, db: Database, question: dict, gather: Callable[[FoldedState], None]) -> str:
        """Returns the core's answer to a question that is hardly ever asked the same way again."""
        with _in_step(db) as stuck:
            return _folded_answer(db, question, gather, stuck)

    def _answer(self, db: Database, table: str, question: dict, gather: Callable[[FoldedState], None]) -> str:
        """Returns the core's answer as canonical JSON, from `table` where it is there."""
        key = canon.dumps(question)
        with _in_step(db) as stuck:
            upto = events.last_n(db)
            row = db.conn.execute(
                f"SELECT answer FROM {table} WHERE question = ? AND upto = ? AND core = ?",
                [key, upto, self._core],
            ).fetchone()
            if row:
                kept: str = row[0]
                return kept
            text = _folded_answer(db, question, gather, stuck)
        self._keep(
            db,
            f"INSERT OR REPLACE INTO {table} (question, upto, core, answer) VALUES (?, ?, ?, ?)",
            [[key, upto, self._core, text]],
        )
        return text

    def _keep(self, db: Database, statement: str, rows: list[list]) -> None:
        """Keeps answers for the next time; a disk that takes nothing more is no reason not to answer."""
        if not rows:
            return
        try:
            with writing_cache(db):
                db.conn.executemany(statement, rows)
        except sqlite3.OperationalError as error:
            log.warning("an answer could not be kept: %s", error)


@contextmanager
def _in_step(db: Database) -> Iterator[sqlite3.OperationalError | None]:
    """Lets everything read inside come from one moment at which the state is in step with the log.

    Yields what keeps it from being so, such as a full disk, as a rule None.
    """
    while True:
        stuck = _stuck(db)
        with at_one_moment(db):
            if stuck or folded.in_step(db):  # else a phone has sent something since
                yield stuck
                return


def _stuck(db: Database) -> sqlite3.OperationalError | None:
    """Returns what keeps the state from being folded on, such as a full disk; None when it is in step."""
    try:
        folded.catch_up(db)
    except sqlite3.OperationalError as error:
        return error
    return None


def _folded_answer(
    db: Database,
    question: dict,
    gather: Callable[[FoldedState], None],
    stuck: sqlite3.OperationalError | None,
) -> str:
    """Returns the core's answer from the folded state, with what `gather` reads of it."""
    state = FoldedState(db)
    if stuck and not folded.beyond(db, state, _MOST_BEYOND):
        raise stuck
    gather(state)
    return canon.dumps(_ask(state, question))


def _ask(state: FoldedState, question: dict) -> object:
    host = Host()
    host.fold.state = state
    reply = json.loads(host.call(canon.dumps(question)))
    if reply["ok"]:
        return reply["value"]
    error = reply["error"]
    kind = NotFound if error["field"] in {"job", "unit", "code"} else BadRequest
    raise kind(error["field"], error["found"], error["wanted"], error["message"])


def _line(db: Database, job: str) -> str:
    """Returns a job's line in the list: the list of a state in which it is the only job."""
    state = FoldedState(db)
    state.focus(job)
    lines = _ask(state, {"op": "jobs"})
    assert isinstance(lines, list)
    return canon.dumps(lines[0])


def init_app(app: Flask, core: str) -> None:
    """Gives the app its projection and the routes that ask it."""
    app.extensions["projection"] = Projection(core)
    app.register_blueprint(blueprint)


@blueprint.get("/api/jobs")
def jobs() -> Response:
    """Lists jobs, open ones first: so many at most, from `?from=`."""
    start = request.args.get("from", "0")
    if not re.fullmatch(r"[0-9]{1,9}", start):
        raise BadRequest("from", shorten(start), message("refusals-whole-from", least=0))
    return said(projection().jobs(database(), int(start)))


@blueprint.get("/api/jobs/<job>")
def job(job: str) -> Response:
    """Answers with one job as the screens draw it."""
    return said(projection().job(database(), job))


@blueprint.get("/api/units/<name>")
def unit(name: str) -> Response:
    """Answers with one unit by its id, or by the code on its label as read or typed."""
    if _UNIT.match(name):
        return said(projection().unit(database(), unit=name))
    read = labels.parse(name)
    if read["outcome"] != "ours":
        raise BadRequest("code", shorten(name), message("refusals-unit-or-code"), read["sentence"])
    return said(projection().unit(database(), code=read["code"]))


def projection() -> Projection:
    """Returns the projection of the running app."""
    host: Projection = current_app.extensions["projection"]
    return host


def said(answer: str) -> Response:
    """Answers with what the core said, in the language of the request."""
    return json_answer(spoken().render(json.loads(answer)))
