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
_SHOP_MOST = 80  # characters, as the phone's field takes them


@blueprint.get("/api/slips")
def standing() -> Response:
    """Tells of the printer, if there is one: its trouble, what waits for it, what for a person's word."""
    spool = _spool()
    if spool is None:
        return json_answer({"printer": False, "waiting": 0, "trouble": "", "aside": []})
    aside = [
        {"heading": each.slip.heading, "shown": each.slip.shown, "at": each.asked_at, "begun": each.begun}
        for each in spool.aside
    ]
    return json_answer({"printer": True, "waiting": spool.waiting, "trouble": spool.trouble, "aside": aside})


@blueprint.post("/api/slips")
def add() -> Response:
    """Has the slip of a unit's latest decision printed, under the shop's name, when the printer takes it."""
    asked = {"shop": "", **json_object(_MOST_BYTES)}
    unit, shop = text_field(asked, "unit", NAME[1], 1), text_field(asked, "shop", _SHOP_MOST)
    spool = _printing()
    view: Any = spoken().render(json.loads(projection().unit(database(), unit=unit)))
    found = of_unit(view, current_app.config["BASE_ADDRESS"], shop)
    if found is None:
        raise BadRequest("unit", shorten(unit), message("slips-decided-wanted"))
    if not spool.add(*found):
        raise BadRequest("slips", str(spool.waiting), message("slips-too-many"))
    return standing()


@blueprint.post("/api/slips/aside")
def settle() -> Response:
    """Prints those slips that wait for a person's word, or leaves them."""
    prints = json_object(_MOST_BYTES).get("print")
    if not isinstance(prints, bool):
        raise BadRequest("print", shorten(prints), "true, false")
    _printing().settle(prints=prints)
    return standing()


def _printing() -> Spool:
    spool = _spool()
    if spool is None:
        raise NotFound("printer", "none", "--printer", message("slips-none"))
    return spool


def _spool() -> Spool | None:
    spool: Spool | None = current_app.extensions.get(EXTENSION)
    return spool
