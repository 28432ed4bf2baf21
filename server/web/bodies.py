"""How JSON comes in: bounded, and refused in plain words when it is none."""

import json

import orjson
from flask import Flask
from flask import request

from server.core.errors import shorten
from server.web.errors import BadRequest
from server.web.errors import TooLarge


def larger_bodies(app: Flask) -> dict[tuple[str, str], int]:
    """Returns the routes, as (method, path), that take more than the app's usual limit, and how much.

    The HTTP server asks before it lets a body in; the app asks again.
    """
    limits: dict[tuple[str, str], int] = app.extensions.setdefault("larger_bodies", {})
    return limits


def init_app(app: Flask) -> None:
    """Raises the limit of such routes; called before the check for forgery, which opens the body."""
    larger = larger_bodies(app)

    @app.before_request
    def _larger() -> None:
        limit = larger.get((request.method, request.path))
        if limit is not None:
            request.max_content_length = limit


def json_object(limit: int) -> dict:
    """Returns the request's JSON object, whatever Content-Type it came with."""
    # The CSRF check has opened the stream by now, so a limit set on the request comes too late.
    data = request.get_data(cache=False)
    if len(data) > limit:
        raise TooLarge("body", f"{len(data)} bytes", f"at most {limit} bytes")
    try:
        value = _read(data)
    except (ValueError, RecursionError):
        start = data[:40].decode("utf-8", "replace")
        raise BadRequest("body", shorten(start), "a JSON object") from None
    if not isinstance(value, dict):
        raise BadRequest("body", shorten(value), "a JSON object")
    return value


def _read(data: bytes) -> object:
    """Reads JSON by a fast reader; half a character in one text makes it refuse all, so then by json."""
    try:
        return orjson.loads(data)
    except orjson.JSONDecodeError:
        return json.loads(data)


def text_field(body: dict, name: str, most: int, least: int = 0) -> str:
    """Returns a text field of a body within its length limits; half a character is no text."""
    value = body.get(name)
    if not isinstance(value, str) or not least <= len(value) <= most or not is_whole(value):
        raise BadRequest(name, shorten(value), f"text of {least} to {most} characters")
    return value


def whole_field(body: dict, name: str) -> int:
    """Returns a whole number of a body, from 0 and as large as every host can hold exactly."""
    value = body.get(name)
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value < 2**53:
        raise BadRequest(name, shorten(value), "a whole number from 0")
    return value


def is_whole(text: str) -> bool:
    """Tells whether a text can be written as UTF-8: JSON may hold one half of a surrogate pair."""
    try:
        text.encode()
    except UnicodeEncodeError:
        return False
    return True
