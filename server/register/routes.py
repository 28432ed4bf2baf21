"""What phones at the counter ask of the register, through their own server; nobody waits long for it.

Where the register is not reached, every answer is `"asked": false`, and the counter's own record decides.
"""

from flask import Blueprint
from flask import Response

from server.core.errors import shorten
from server.core.log import canon
from server.core.messages import message
from server.queries.projection import projection
from server.queries.projection import said
from server.register import outbox
from server.register.chain import current_chain
from server.register.chain import reached
from server.register.entries import MOST_KEY
from server.register.entries import MOST_PART
from server.register.entries import MOST_UNIT
from server.register.entries import Contradiction
from server.register.entries import Entry
from server.register.entries import is_key
from server.web.answers import json_answer
from server.web.bodies import is_whole
from server.web.bodies import json_object
from server.web.bodies import text_field
from server.web.database import database
from server.web.errors import BadRequest

blueprint = Blueprint("register", __name__)

MOST_BYTES = 16 * 1024
MOST_KEYS = 32


@blueprint.get("/api/register")
def standing() -> Response:
    """Tells how this counter stands with the others: what is not entered yet, and what contradicts."""
    chain = current_chain()
    return said(
        canon.dumps(
            {
                "asked": chain is not None and chain.link.is_reached,
                "waiting": outbox.waiting(database()) if chain else 0,
                "contradictions": [_contradiction(each) for each in (chain.contradictions if chain else [])],
            }
        )
    )


@blueprint.post("/api/register/ask")
def ask() -> Response:
    """Says what other counters have under the keys of a return."""
    body = json_object(MOST_BYTES)
    keys, part = _keys(body), text_field(body, "part", MOST_PART)
    return _answer(reached(lambda chain: chain.others(keys, part)))


@blueprint.post("/api/register/claim")
def claim() -> Response:
    """Begins to accept a return: the part is this counter's where nothing is found."""
    body = json_object(MOST_BYTES)
    keys, part, unit = (
        _keys(body),
        text_field(body, "part", MOST_PART),
        text_field(body, "unit", MOST_UNIT, 1),
    )
    return _answer(reached(lambda chain: chain.claim(keys, unit, part)))


@blueprint.post("/api/register/release")
def release() -> Response:
    """Gives back a part whose acceptance did not come on record after all."""
    unit = text_field(json_object(MOST_BYTES), "unit", MOST_UNIT, 1)
    reached(lambda chain: chain.release(unit))
    return json_answer({})


def _answer(found: list[Entry] | None) -> Response:
    entries = [
        {"place": each.place, "decision": each.decision, "settled": each.settled, "at": each.at}
        for each in found or []
    ]
    return json_answer({"asked": found is not None, "found": entries})


def _contradiction(each: Contradiction) -> dict:
    entered = projection().entered(database(), each.unit, "")
    about = {
        "code": entered["shown"] if entered else each.unit,
        "place": each.place,
        "decision": each.decision,
    }
    return {
        "unit": each.unit,
        "title": message("register-contradiction-title", **about),
        "sentence": message("register-contradiction", **about),
        "at": each.at,
    }


def _keys(body: dict) -> list[str]:
    keys = body.get("keys")
    if (
        not isinstance(keys, list)
        or not 0 < len(keys) <= MOST_KEYS
        or not all(isinstance(each, str) and is_whole(each) and is_key(each) for each in keys)
    ):
        raise BadRequest("keys", shorten(keys), f"1 to {MOST_KEYS} keys of at most {MOST_KEY} characters")
    return keys
