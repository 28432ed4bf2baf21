"""Figures between yards over HTTP: one's own as a file, those of others weighed in and taken out."""

from flask import Blueprint
from flask import Flask
from flask import Response

from server.clock import now_ms
from server.core.evidence.assumptions import exact
from server.core.log import canon
from server.core.messages import message
from server.lessons import given
from server.lessons import weighed_in
from server.lessons.given_form import MOST_BYTES
from server.phones.installation import installation_signer
from server.queries.projection import said
from server.refusals import CommandRefused
from server.web.bodies import json_object
from server.web.bodies import larger_bodies
from server.web.bodies import text_field
from server.web.database import database
from server.web.errors import BadRequest

blueprint = Blueprint("lessons_yards", __name__)

_PATH = "/api/lessons/yards"
_MOST_BODY = 2 * MOST_BYTES  # the file as a text in JSON
_MOST_OUT_BYTES = 1024
UNCONFIRMED = "unconfirmed"


def init_app(app: Flask) -> None:
    """Adds the routes; one takes a whole file."""
    larger_bodies(app)["POST", _PATH] = _MOST_BODY
    app.register_blueprint(blueprint)


@blueprint.get(f"{_PATH}/own")
def own() -> Response:
    """Gives the yard's own figures as a file for another yard."""
    try:
        made, _ = given.give(database(), installation_signer(), now_ms())
    except CommandRefused as error:
        raise BadRequest("jobs", "too few", "more closed jobs", error.message) from None
    response = Response(made, mimetype="application/json")
    response.headers["Content-Disposition"] = 'attachment; filename="lessons-for-another-yard.json"'
    return response


@blueprint.post(_PATH)
def weigh_in() -> Response:
    """Lets figures of another yard count: {"file": text, "weight": text}.

    Answers {"outcome": "new" | "replaced" | "weighed_anew", "says"}. Where nobody has confirmed whose seal it
    is, nothing counts: {"outcome": "unconfirmed", "fingerprint", "says"}.
    """
    body = json_object(_MOST_BODY)
    file, typed = text_field(body, "file", MOST_BYTES), text_field(body, "weight", 20)
    try:
        weight = weighed_in.weight_of(typed)
        figures = given.read(file.encode("utf-8", "replace"))
        outcome, yard = weighed_in.weigh_in(database(), figures, weight, installation_signer(), now_ms())
    except weighed_in.Unconfirmed as error:
        told = {"outcome": UNCONFIRMED, "fingerprint": error.fingerprint, "says": error.message}
        return said(canon.dumps(told))
    except CommandRefused as error:
        raise BadRequest("file", "not weighed in", "figures of another yard", error.message) from None
    says = message(
        "lessons-weighed", how=outcome, yard=yard.name, jobs=yard.jobs, weight=exact(weight * 10_000)
    )
    return said(canon.dumps({"outcome": outcome, "says": says}))


@blueprint.post(f"{_PATH}/out")
def take_out() -> Response:
    """Lets the figures of the yard with a fingerprint count no more: {"fingerprint"}."""
    shown = text_field(json_object(_MOST_OUT_BYTES), "fingerprint", 80, 1)
    try:
        yard = weighed_in.take_out(database(), shown)
    except CommandRefused as error:
        raise BadRequest("fingerprint", shown, "a yard whose figures count here", error.message) from None
    return said(canon.dumps({"says": message("lessons-taken-out", yard=yard.name, jobs=yard.jobs)}))
