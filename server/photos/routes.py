"""PUT, HEAD and GET /api/photos/<sha256>: photos travel apart from the events that name them.

Below it, /small: the same photo small enough for every phone to keep.
"""

import re

from flask import Blueprint
from flask import Response
from flask import request

from server.clock import now_ms
from server.photos import lost
from server.photos import store as photo_store
from server.photos.small import small_version
from server.web.answers import json_answer
from server.web.database import data_folder
from server.web.database import database
from server.web.errors import BadRequest
from server.web.errors import NotFound

blueprint = Blueprint("photos", __name__)

_DIGEST = re.compile(r"[0-9a-f]{64}")


@blueprint.put("/api/photos/<digest>")
def put(digest: str) -> Response:
    """Stores a photo; answers only once it is safe on disk."""
    _check_digest(digest)
    data = request.get_data(cache=False)
    photo_store.keep(database(), data_folder().photos, digest, data, now_ms())
    return json_answer({"sha256": digest, "stored": True})


@blueprint.get("/api/photos/<digest>")
def get(digest: str) -> Response:
    """Sends a photo, or for HEAD only confirms it; either way its bytes are checked first."""
    data = _whole(digest)
    if data is None:
        raise NotFound("photo", digest, "a photo that is stored here")
    return Response(data, mimetype="image/jpeg")


@blueprint.get("/api/photos/<digest>/small")
def small(digest: str) -> Response:
    """Sends a small version of a photo, made now: each phone asks for it once and keeps it.

    A photo may come long after the entry that names it, so its absence is no fault: the answer is empty then.
    """
    data = _whole(digest)
    if data is None:
        return Response(status=204)
    return Response(small_version(data), mimetype="image/jpeg")


def _whole(digest: str) -> bytes | None:
    """Returns a photo's bytes; None where it is not here, which is noted if it should be."""
    _check_digest(digest)
    photos = data_folder().photos
    data = photo_store.whole(photos, digest)
    if data is None:
        lost.look(database(), photos, digest, now_ms())
    return data


def _check_digest(digest: str) -> None:
    if not _DIGEST.fullmatch(digest):
        raise BadRequest("sha256", digest, "64 lower-case hex digits")
