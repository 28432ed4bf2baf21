"""POST /api/news: what is new to a phone that somebody looks at; kept back until something is.

The answer says how far the log goes and who else is at the job that the phone shows. Where nothing is new to
the phone, it goes out as soon as something happens, or after half a minute: then the phone asks again.
"""

import re

from flask import Blueprint
from flask import Response
from flask import request

from server.core.errors import shorten
from server.log import events
from server.news.board import Place
from server.news.board import board
from server.phones.sessions import require_session
from server.serving.connections.hold import held_back
from server.web.answers import json_answer
from server.web.bodies import json_object
from server.web.bodies import text_field
from server.web.bodies import whole_field
from server.web.database import database
from server.web.errors import BadRequest

blueprint = Blueprint("news", __name__)

NEWS_VERSION = 1
MOST_BYTES = 8 * 1024
MOST_POSITIONS = 24
HOLD_SECONDS = 25.0
ALONE_HOLD_SECONDS = 50.0  # below the minute after which proxies give a connection up
UNHELD_SECONDS = 2  # where nothing can be kept back, the phone asks again after so long
_WINDOW = re.compile(r"[0-9a-f]{8}")


@blueprint.post("/api/news")
def news() -> Response:
    """Tells a phone what is new to it, at once or as soon as something is."""
    session = require_session()
    body = json_object(MOST_BYTES)
    window, place, cursor, stamp = _checked(body)
    here = board()
    turn = here.turn()
    entries = events.last_n(database())
    standing = here.arrive(session, place)
    pause = 0
    if cursor == entries and stamp == standing.stamp:
        alone = here.is_alone(session.id)
        hold = held_back(request.environ, ALONE_HOLD_SECONDS if alone else HOLD_SECONDS)
        if hold:
            here.wait(session, window, place, hold, turn, stamp)
        else:
            pause = UNHELD_SECONDS
    return json_answer(
        {"entries": entries, "others": standing.others, "stamp": standing.stamp, "pause": pause}
    )


def _checked(body: dict) -> tuple[str, Place, int, str]:
    if body.get("v") != NEWS_VERSION:
        raise BadRequest("v", shorten(body.get("v")), f"news version {NEWS_VERSION}")
    window = body.get("window")
    if not isinstance(window, str) or not _WINDOW.fullmatch(window):
        raise BadRequest("window", shorten(window), "8 hex digits")
    cursor = whole_field(body, "cursor")
    return window, _place(body), cursor, text_field(body, "stamp", 16)


def _place(body: dict) -> Place:
    at = body.get("at")
    if at is None:
        return Place()
    if not isinstance(at, dict):
        raise BadRequest("at", shorten(at), 'null or {"job", "doing", "positions"}')
    positions = at.get("positions")
    if (
        not isinstance(positions, list)
        or len(positions) > MOST_POSITIONS
        or not all(isinstance(each, str) and 0 < len(each) <= 64 for each in positions)
    ):
        raise BadRequest("at.positions", shorten(positions), f"at most {MOST_POSITIONS} ids of positions")
    return Place(text_field(at, "job", 64, 1), text_field(at, "doing", 32), tuple(positions))
