"""What the parts counter asks: the day list, what waits, a search, and the decisions as a CSV file."""

import json
import re
from datetime import UTC
from datetime import datetime
from datetime import timedelta
from datetime import timezone
from typing import Any

from flask import Blueprint
from flask import Response
from flask import request

from server.core.errors import shorten
from server.core.words.words import DAY_MS
from server.queries.decisions_csv import decisions_csv
from server.queries.projection import projection
from server.queries.projection import said
from server.web.csv_files import csv_answer
from server.web.database import database
from server.web.errors import BadRequest
from server.words.spoken import spoken

blueprint = Blueprint("returns", __name__)

MOST_DAYS = 400  # in one list
MOST_TEXT = 200
_MOST_OFFSET = 16 * 60
# A day before the year 10000, which dates of the standard library do not reach, whatever the time zone.
_LAST_MS = 253_402_214_400_000


@blueprint.get("/api/returns")
def decided() -> Response:
    """Lists what was decided from `?from=` to before `?to=`, both in milliseconds UTC."""
    return said(projection().decided(database(), *_span()))


@blueprint.get("/api/returns/waiting")
def waiting() -> Response:
    """Lists what is received or held and not decided."""
    return said(projection().waiting(database()))


@blueprint.get("/api/returns.csv")
def as_csv() -> Response:
    """Gives the same decisions as a file; `?offset=` is the clerk's time zone in minutes east of UTC."""
    start, end = _span()
    offset = _whole("offset", "0", -_MOST_OFFSET, _MOST_OFFSET)
    zone = timezone(timedelta(minutes=offset))
    answer: Any = spoken().render(json.loads(projection().decided(database(), start, end)))
    day = datetime.fromtimestamp(start / 1000, UTC).astimezone(zone).date().isoformat()
    return csv_answer(decisions_csv(answer["lines"], zone), f"returns-{day}.csv")


@blueprint.get("/api/search")
def search() -> Response:
    """Lists the units of whose words one begins with each word of `?text=`."""
    text = request.args.get("text", "")
    if len(text) > MOST_TEXT:
        raise BadRequest("text", shorten(text), f"text of at most {MOST_TEXT} characters")
    return said(projection().find(database(), text))


def _span() -> tuple[int, int]:
    start = _whole("from", None, 0, _LAST_MS - 1)
    end = _whole("to", None, start + 1, _LAST_MS)
    if end - start > MOST_DAYS * DAY_MS:
        raise BadRequest("to", f"{(end - start) // DAY_MS} days", f"at most {MOST_DAYS} days at once")
    return start, end


def _whole(name: str, default: str | None, least: int, most: int) -> int:
    text = request.args.get(name, default)
    if text is None or not re.fullmatch(r"-?[0-9]{1,16}", text) or not least <= int(text) <= most:
        raise BadRequest(name, shorten(text), f"a whole number from {least} to {most}")
    return int(text)
