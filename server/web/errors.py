"""What the HTTP edge refuses with, and the one JSON shape in which every refusal leaves.

{"error": {"field", "found", "wanted", "message"}}   with the status of the exception
"""

import logging
import sqlite3

from flask import Flask
from flask import Response
from flask import request
from flask_wtf.csrf import CSRFError
from werkzeug.exceptions import HTTPException
from werkzeug.exceptions import RequestEntityTooLarge

from server.core.errors import BadInput
from server.core.errors import shorten
from server.core.messages import message
from server.storage.trouble import trouble
from server.web.answers import json_answer
from server.words.spoken import spoken
from server.words.spoken import text

log = logging.getLogger(__name__)


class Refusal(Exception):
    """A request that is not carried out; subclasses carry the status."""

    status = 400

    def __init__(self, field: str, found: object, wanted: object, told: object = None):
        """Keeps what was wrong, in messages or text; `found` is a description or comes through `shorten`."""
        self.field = field
        self.found = found
        self.wanted = wanted
        self.message = told or BadInput(field, (found,), wanted).message()
        super().__init__(field)

    def __str__(self) -> str:
        return text(self.message)

    def as_dict(self) -> dict:
        """Returns the inside of the error shape."""
        return {
            "field": self.field,
            "found": self.found,
            "wanted": self.wanted,
            "message": self.message,
        }


class BadRequest(Refusal):
    """The request is not of the form that is wanted."""


class NotPaired(Refusal):
    """The phone has no session, or one that was revoked."""

    status = 401


class NotAllowed(Refusal):
    """The phone is known, but this is not its to do."""

    status = 403


class NotFound(Refusal):
    """Nothing here goes by that name."""

    status = 404


class WrongAddress(Refusal):
    """The request came in under another name than the installation's own."""

    status = 421


class TooLarge(Refusal):
    """More bytes, pixels or events than are taken at once."""

    status = 413


class NotTaken(Refusal):
    """Well-formed, but the content is one that is never kept."""

    status = 422


class Busy(Refusal):
    """The server has its hands full with requests of this kind."""

    def __init__(self, field: str, found: str, wanted: str):
        super().__init__(field, found, wanted, message("server-busy"))
        self.status = 503


class TooManyTries(Refusal):
    """Slow down: a limit on tries was reached."""

    status = 429

    def __init__(self, field: str, seconds: int):
        super().__init__(
            field,
            message("server-many-tries"),
            message("server-pause", seconds=seconds),
            message("server-wait", seconds=seconds),
        )
        self.seconds = seconds


class NotStored(Refusal):
    """The server's own disk takes nothing, for a reason that a person there can look into."""

    def __init__(self, why: str):
        super().__init__("storage", *map(message, _STORAGE[why]))
        self.status = 507 if why == "full" else 503


# How the server's storage fails -> (found, wanted, message).
_STORAGE = {
    "full": ("server-full-found", "server-full-wanted", "server-full"),
    "shut": ("server-shut-found", "server-shut-wanted", "server-shut"),
    "busy": ("server-database-found", "server-database-wanted", "server-database"),
    "broken": ("server-broken-found", "server-broken-wanted", "server-broken"),
}


def init_app(app: Flask) -> None:
    """Makes every error of the app leave in the one shape."""
    app.register_error_handler(Refusal, _refusal)
    app.register_error_handler(BadInput, lambda error: _answer(400, error.as_dict()))
    app.register_error_handler(CSRFError, _csrf)
    app.register_error_handler(RequestEntityTooLarge, _too_large)
    app.register_error_handler(HTTPException, _http)
    app.register_error_handler(OSError, _storage)
    app.register_error_handler(sqlite3.Error, _storage)
    app.register_error_handler(Exception, _unexpected)


def _refusal(error: Refusal) -> Response:
    response = _answer(error.status, error.as_dict())
    if isinstance(error, TooManyTries):
        response.headers["Retry-After"] = str(error.seconds)
    return response


def _csrf(error: CSRFError) -> Response:
    wanted = "the csrf value from /api/session in the header X-CSRFToken"
    return _answer(400, BadRequest("X-CSRFToken", str(error.description).rstrip("."), wanted).as_dict())


def _too_large(error: RequestEntityTooLarge) -> Response:
    return _answer(413, TooLarge("body", "too many bytes", "a smaller request").as_dict())


def _http(error: HTTPException) -> Response:
    if error.code is None or error.code < 400:
        return error.get_response()  # type: ignore[return-value]  # redirects pass as they are
    if error.code == 404:
        error_404 = NotFound("path", shorten(request.path), "an address of the app")
        return _answer(404, error_404.as_dict())
    response = _answer(
        error.code,
        Refusal("request", error.name, "one that the server takes", error.description).as_dict(),
    )
    for name, value in error.get_headers():
        if name == "Allow":
            response.headers[name] = value
    return response


def _storage(error: OSError | sqlite3.Error) -> Response:
    why = trouble(error)
    if why is None:
        return _unexpected(error)
    log.error("storage: %s", error)
    return _refusal(NotStored(why))


def _unexpected(error: Exception) -> Response:
    log.exception("unexpected error")
    refusal = Refusal(
        "server",
        message("server-own-error"),
        message("server-same-again"),
        message("server-went-wrong"),
    )
    return _answer(500, refusal.as_dict())


def _answer(status: int, error: dict) -> Response:
    return json_answer({"error": spoken().render(error)}, status)
