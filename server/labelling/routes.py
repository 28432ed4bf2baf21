"""What the print screen asks: how a layout comes out, new labels as files, and what became of each."""

import base64

from flask import Blueprint
from flask import Response
from flask import current_app
from flask import request

from server.clock import now_ms
from server.core.codes import labels
from server.core.errors import BadInput
from server.core.messages import message
from server.core.printing.advice import plan as planned
from server.core.printing.advice import refuse_unreadable
from server.core.printing.face import ANY_CODE
from server.core.printing.face import Face
from server.core.printing.layout import OPTIONS
from server.core.printing.layout import Layout
from server.core.printing.layout import layout_of
from server.core.printing.layout import one_label
from server.core.printing.scan_distance import USUAL_CM
from server.core.printing.scan_distance import checked_distance
from server.labelling import store
from server.labelling.files import FORMATS
from server.labelling.files import drawn
from server.labelling.files import format_of
from server.labelling.files import page_count
from server.labelling.states import batch_options
from server.labelling.states import batches
from server.labelling.states import labels_of
from server.labelling.symbol import face_for
from server.web.answers import json_answer
from server.web.bodies import json_object
from server.web.bodies import text_field
from server.web.database import database
from server.words.spoken import spoken
from server.words.spoken import text

blueprint = Blueprint("labelling", __name__, url_prefix="/api/labels")

MOST_BYTES = 64 * 1024
MOST_SVG_PAGES = 20  # each is a file of its own, to be saved by hand


@blueprint.get("")
def every_batch() -> Response:
    """Lists the batches with what became of their labels."""
    lines = [
        {
            "id": batch.id,
            "made_at": batch.made_at,
            "layout": text(layout_of(batch.options).words),
            "counts": batch.counts,
            "printed": batch.printed,
            "finished": batch.finished,
        }
        for batch in batches(database())
    ]
    return json_answer({"batches": lines})


@blueprint.get("/<row:batch>")
def one_batch(batch: int) -> Response:
    """Answers with the labels of a batch, each with its state."""
    db = database()
    options = batch_options(db, batch)
    lines = [{**label._asdict(), "shown": labels.shown(label.code)} for label in labels_of(db, batch)]
    return json_answer({"id": batch, "layout": text(layout_of(options).words), "labels": lines})


@blueprint.get("/plan")
def plan() -> Response:
    """Says what comes out of a layout, and what will be hard to read.

    A layout that does not work is an answer here, not an error: somebody is typing its measures.
    """
    try:
        distance = checked_distance(request.args.get("distance", str(USUAL_CM)))
        layout, face = _layout_and_face(dict(request.args), distance)
    except BadInput as error:
        return json_answer({"fault": text(error.message())})
    try:
        refuse_unreadable(layout, face, request.args.get("force") == "yes")
    except BadInput as error:
        return json_answer({"fault": text(error.message()), "may_force": True})
    said = {"fault": "", **planned(layout, face, distance), "most": store.MOST_LABELS}
    return json_answer(spoken().render(said))


@blueprint.get("/preview.svg")
def preview() -> Response:
    """Draws a page, or with `?one=1` one label; its code is none that is ever issued."""
    distance = checked_distance(request.args.get("distance", str(USUAL_CM)))
    layout, face = _layout_and_face(dict(request.args), distance)
    if request.args.get("one"):
        layout = one_label(layout)
    (picture,) = drawn([ANY_CODE] * layout.labels, _base(), layout, face, "svg", "")
    return Response(picture, mimetype=FORMATS["svg"])


@blueprint.post("")
def make() -> Response:
    """Makes a batch of new labels and answers with its files; the batch is on record before they are."""
    body = json_object(MOST_BYTES)
    count = body.get("count")
    if not isinstance(count, int) or isinstance(count, bool):
        raise BadInput("count", count, message("server-range", least=1, most=store.MOST_LABELS))
    options = _options(body)
    distance, form = _distance(body), _format(body, count, options)
    layout, face = _layout_and_face(options, distance)
    refuse_unreadable(layout, face, body.get("force") == "yes")
    return _files(store.issue(database(), count, _base(), options, now_ms()), layout, face, form)


@blueprint.post("/<row:batch>/again")
def again(batch: int) -> Response:
    """Writes the labels of a batch that are on no sensor once more, in its layout."""
    body = json_object(MOST_BYTES)
    db = database()
    options = batch_options(db, batch)
    form = _format(body, len(labels_of(db, batch)), options)
    layout, face = _layout_and_face(options, _distance(body))
    return _files(store.again(db, batch, now_ms()), layout, face, form)


@blueprint.post("/<row:batch>/void")
def void(batch: int) -> Response:
    """Takes labels that are on no sensor out of use: some by code, or all that are left."""
    body = json_object(MOST_BYTES)
    codes = body.get("codes")
    if not isinstance(codes, list) or not all(isinstance(code, str) for code in codes):
        raise BadInput("codes", codes, message("server-codes"))
    db = database()
    batch_options(db, batch)
    gone = store.void(db, batch, codes, text_field(body, "reason", 200), now_ms())
    return json_answer({"void": gone})


def _files(printing: store.Printing, layout: Layout, face: Face, form: str) -> Response:
    title = f"Labels, batch {printing.batch}"
    contents = list(drawn(printing.codes, _base(), layout, face, form, title))
    store.done(database(), printing.id, now_ms())
    names = [f"labels-{printing.batch}.{form}"]
    names += [f"labels-{printing.batch}-{number}.{form}" for number in range(2, len(contents) + 1)]
    files = [
        {"name": name, "mime": FORMATS[form], "base64": base64.b64encode(content).decode()}
        for name, content in zip(names, contents, strict=True)
    ]
    return json_answer({"batch": printing.batch, "labels": len(printing.codes), "files": files})


def _options(body: dict) -> dict[str, str]:
    """Returns the options of the layout that a body holds."""
    options = {name: body[name] for name in OPTIONS if body.get(name)}
    for name, value in options.items():
        if not isinstance(value, str):
            raise BadInput(name, value, "text")
    return options


def _layout_and_face(options: dict[str, str], distance: int) -> tuple[Layout, Face]:
    layout = layout_of(options)
    return layout, face_for(layout, _base(), distance)


def _distance(body: dict) -> int:
    return checked_distance(str(body.get("distance", USUAL_CM)))


def _format(body: dict, count: int, options: dict[str, str]) -> str:
    form = format_of(str(body.get("format", "pdf")))
    if form == "svg" and page_count(count, layout_of(options)) > MOST_SVG_PAGES:
        raise BadInput("format", form, message("server-pdf-for-more", pages=MOST_SVG_PAGES))
    return form


def _base() -> str:
    base: str = current_app.config["BASE_ADDRESS"]
    return base
