"""The figures over HTTP: the page in the language of the request, and the same figures as JSON and CSV."""

from datetime import UTC
from datetime import datetime
from typing import Any

from flask import Blueprint
from flask import Response
from flask import current_app
from flask import request

from server.clock import now_ms
from server.core.errors import shorten
from server.core.log import canon
from server.core.messages import message
from server.core.words.words import DAY_MS
from server.lessons.figures import figures
from server.lessons.offer import offer
from server.lessons.page import page
from server.lessons.running import Running
from server.lessons.spans import SPANS
from server.lessons.table import as_csv
from server.lessons.yards_page import yards_card
from server.queries.projection import said
from server.web.answers import json_answer
from server.web.csv_files import csv_answer
from server.web.database import database
from server.web.errors import BadRequest

blueprint = Blueprint("lessons", __name__)

SECONDS = 1.5  # a phone waits no longer for jobs that are worked out for the first time


@blueprint.get("/api/lessons")
def shown() -> Response:
    """Answers with the page over `?span=`, all when left out."""
    span, found = _found()
    told = page(found, span)
    told["offer"] = offer(database(), found)
    told["yards"] = yards_card(found)
    return said(canon.dumps(told))


@blueprint.get("/api/lessons/offer")
def offered() -> Response:
    """Answers with the rates by the yard's own jobs, and what can be taken of them."""
    return said(canon.dumps(offer(database(), _found()[1])))


@blueprint.get("/api/lessons.json")
def as_json() -> Response:
    """Gives the figures as they are: chances in parts per million, minutes in hundredths."""
    response = json_answer(_found()[1])
    response.headers["Content-Disposition"] = f'attachment; filename="{_name("json")}"'
    return response


@blueprint.get("/api/lessons.csv")
def as_table() -> Response:
    """Gives the same figures as a file for a spreadsheet."""
    return csv_answer(as_csv(_found()[1]), _name("csv"))


def _found() -> tuple[str, dict[str, Any]]:
    span = request.args.get("span", "all")
    if span not in SPANS:
        wanted = message("refusals-one-of", choices=", ".join(SPANS))
        raise BadRequest("span", shorten(span), wanted)
    now = now_ms()
    since = now - SPANS[span] * DAY_MS if SPANS[span] else 0
    return span, figures(database(), now, since, SECONDS, _running())


def _running() -> Running:
    held: Running = current_app.extensions.setdefault("lessons", Running())
    return held


def _name(kind: str) -> str:
    return f"lessons-{datetime.now(UTC).date().isoformat()}.{kind}"
