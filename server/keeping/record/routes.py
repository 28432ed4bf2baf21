"""Records over HTTP: one to take along, and one from elsewhere to look at, or to keep as evidence."""

import shutil
import tempfile
import threading
from collections.abc import Iterator
from contextlib import contextmanager

from flask import Blueprint
from flask import Flask
from flask import Response
from flask import request

from server.clock import now_ms
from server.core.errors import shorten
from server.core.record.comparison import stand_ins
from server.core.record.file import MOST_BYTES
from server.keeping.record.check import HEAD_BYTES
from server.keeping.record.check import Altered
from server.keeping.record.check import begins
from server.keeping.record.check import check
from server.keeping.record.gather import BadName
from server.keeping.record.gather import Unknown
from server.keeping.record.kept import keep
from server.keeping.record.kept import kept
from server.keeping.record.make import make
from server.keeping.record.makers import HOWS
from server.keeping.record.makers import confirm
from server.keeping.record.makers import confirmed
from server.keeping.record.makers import meet
from server.phones.sessions import require_session
from server.phones.signing import fingerprint
from server.phones.signing import signer
from server.refusals import CommandRefused
from server.web.answers import json_answer
from server.web.bodies import json_object
from server.web.bodies import larger_bodies
from server.web.bodies import text_field
from server.web.core_files import core_digest
from server.web.database import data_folder
from server.web.database import database
from server.web.errors import BadRequest
from server.web.errors import Busy
from server.web.errors import NotFound
from server.web.errors import TooLarge
from server.words.spoken import say

blueprint = Blueprint("records", __name__)

_CHECK = "/api/records/check"
_KEEP = "/api/records/kept"
_MOST_CONFIRM_BYTES = 2048
# A record is held in memory whole, so one at a time; and who waits for that keeps a thread from others.
_one_at_a_time = threading.Lock()
_in_line = threading.BoundedSemaphore(3)


def init_app(app: Flask) -> None:
    """Adds the routes; two of them take a whole record."""
    for path in (_CHECK, _KEEP):
        larger_bodies(app)["POST", path] = MOST_BYTES
    app.register_blueprint(blueprint)


@blueprint.get("/api/records/key")
def key() -> Response:
    """Tells by which fingerprint others know the records made here."""
    return json_answer({"fingerprint": fingerprint(signer(data_folder()).key)})


@blueprint.get("/api/records/<name>")
def take_along(name: str) -> Response:
    """Sends the record of a sensor (by id or label) or of a job.

    `?smaller=1` puts pictures without room in as smaller versions. `Swaptrail-Smaller` says how many those
    are, `Swaptrail-Roomless` how many had no room.
    """
    folder = data_folder()
    try:
        with _turn():
            smaller = bool(request.args.get("smaller"))
            made = make(database(), folder.photos, name, signer(folder), now_ms(), make_smaller=smaller)
    except Unknown as error:
        raise NotFound("name", shorten(name), "a sensor or job that is on record", error.message) from None
    except BadName as error:
        raise BadRequest(
            "name", shorten(name), "a label's code, a sensor's or a job's id", error.message
        ) from None
    except CommandRefused as error:
        raise TooLarge("record", "too much", "the record of one job", error.message) from None
    response = Response(made.data, mimetype="application/zip")
    response.headers["Content-Disposition"] = f'attachment; filename="{made.name}"'
    response.headers["Swaptrail-Smaller"] = str(made.smaller)
    response.headers["Swaptrail-Roomless"] = str(made.roomless)
    return response


@blueprint.post(_CHECK)
def look_at() -> Response:
    """Says whether a file is a record as it was sealed, and what it holds; keeps none of it.

    {"outcome": "intact", ...} with what the phone's core needs to show it; {"outcome": "altered",
    "cut" (its end is missing) or "none", "sentence"} for any other file. Each is an answer to the question,
    so none is an error.
    """
    with tempfile.TemporaryFile() as file:
        # In full before a turn is asked for: whoever sends slowly holds up nobody else.
        shutil.copyfileobj(request.stream, file)
        file.seek(0)
        if not begins(file.read(HEAD_BYTES)):
            return _told("none", say("keeping-no-record"))
        with _turn():
            file.seek(0)
            try:
                sound = check(file.read())
            except Altered as error:
                if error.fault.cut:
                    return _told("cut", say("keeping-cut-place", place=str(error)))
                return _told("altered", say("keeping-first-place", place=str(error)))
            except CommandRefused as error:
                return _told("none", str(error))
    record = sound.record
    names = ("unit", "job", "code", "jobs", "made_at", "elsewhere", "missing", "told")
    return json_answer(
        {
            "outcome": "intact",
            **{name: record[name] for name in names},
            "maker": {
                "kind": sound.by,
                **meet(database(), record["key"], signer(data_folder()), now_ms()),
            },
            "same_core": record["core"] == core_digest(),
            "events": [*stand_ins(record["elsewhere"]), *sound.events],
            "photos": sound.photos,
            "smaller": sound.smaller,
            "phones": sound.phones,
        }
    )


@blueprint.post(_KEEP)
def keep_one() -> Response:
    """Keeps a record from elsewhere as evidence, {"file"} is its digest.

    Only one that is as it was sealed, with a seal whose owner a person has confirmed.
    """
    with tempfile.TemporaryFile() as file:
        shutil.copyfileobj(request.stream, file)
        with _turn():
            file.seek(0)
            data = file.read()
            try:
                sound = check(data)
            except (Altered, CommandRefused) as error:
                raise BadRequest("record", "another file", "a record as it was sealed", str(error)) from None
            if confirmed(database(), sound.record["key"]) is None:
                raise BadRequest(
                    "maker",
                    fingerprint(sound.record["key"]),
                    "a confirmed seal",
                    say("server-seal-unconfirmed"),
                )
            return json_answer({"file": keep(database(), data, sound.record["key"], now_ms())})


@blueprint.get(f"{_KEEP}/<digest>")
def kept_one(digest: str) -> Response:
    """Sends a record that is kept here, byte for byte as it came."""
    data = kept(database(), digest)
    if data is None:
        raise NotFound("file", shorten(digest), "a record that is kept here")
    response = Response(data, mimetype="application/zip")
    response.headers["Content-Disposition"] = f'attachment; filename="swaptrail-record-{digest[:12]}.zip"'
    return response


@blueprint.post("/api/records/makers")
def confirm_maker() -> Response:
    """Keeps whose a seal is, once a person has compared its fingerprint: {"fingerprint", "name", "how"}."""
    body = json_object(_MOST_CONFIRM_BYTES)
    shown, name = text_field(body, "fingerprint", 80, 1), text_field(body, "name", 80, 1).strip()
    how = text_field(body, "how", 10)
    if not name:
        raise BadRequest("name", "", "whose seal it is")
    if how not in HOWS:
        raise BadRequest("how", shorten(how), " or ".join(HOWS))
    kept = confirm(database(), shown, name=name, how=how, by=require_session().name, now=now_ms())
    if kept is None:
        raise NotFound("fingerprint", shorten(shown), "the fingerprint of a record that was checked here")
    return json_answer(kept)


@contextmanager
def _turn() -> Iterator[None]:
    """Waits for the turn to hold a record in memory; refuses where several wait already."""
    if not _in_line.acquire(blocking=False):
        raise Busy("record", "several records at work", "the same one in a moment")
    try:
        with _one_at_a_time:
            yield
    finally:
        _in_line.release()


def _told(outcome: str, sentence: str) -> Response:
    return json_answer({"outcome": outcome, "sentence": sentence})
