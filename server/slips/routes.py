"""What phones at the counter ask of the printer there; the answer never waits for paper."""

import json
from typing import Any

from flask import Blueprint
from flask import Response
from flask import current_app

from server.core.errors import shorten
from server.core.facts.fields import NAME
from server.core.messages import message
from server.queries.projection import projection
from server.slips.slip import of_unit
from server.slips.spool import EXTENSION
from server.slips.spool import Spool
from server.web.answers import json_answer
from server.web.bodies import json_object
from server.web.bodies import text_field
from server.web.database import database
from server.web.errors import BadRequest
from server.web.errors import NotFound
from server.words.spoken import spoken

blueprint = Blueprint("slips", __name__)

_MOST_BYTES = 1024


@blueprint.get("/api/slips")
def standing() -> Response:
    """Tells whether there is a printer, how many slips wait for it, and what is wrong with it."""
    spool = _spool()
    if spool is None:
        return json_answer({"printer": False, "waiting": 0, "trouble": ""})
    return json_answer({"printer": True, "waiting": spool.waiting, "trouble": spool.trouble})


@blueprint.post("/api/slips")
def add() -> Response:
    """Has the slip of a unit's latest decision printed as soon as the printer takes it."""
    unit = text_field(json_object(_MOST_BYTES), "unit", NAME[1], 1)
    spool = _spool()
    if spool is None:
        raise NotFound("printer", "none", "--printer", message("slips-none"))
    view: Any = spoken().render(json.loads(projection().unit(database(), unit=unit)))
    slip = of_unit(view, current_app.config["BASE_ADDRESS"])
    if slip is None:
        raise BadRequest("unit", shorten(unit), message("slips-decided-wanted"))
    if not spool.add(slip):
        raise BadRequest("slips", str(spool.waiting), message("slips-too-many"))
    return standing()


def _spool() -> Spool | None:
    spool: Spool | None = current_app.extensions.get(EXTENSION)
    return spool
