"""How JSON leaves the server."""

import json

from flask import Response


def json_answer(value: object, status: int = 200) -> Response:
    """Returns compact UTF-8 JSON with nothing escaped that need not be.

    MicroPython does not join escaped surrogate pairs, so text must arrive unescaped. Half a pair
    can only be an echo of something refused; it becomes a question mark.
    """
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    return Response(text.encode("utf-8", "replace"), status, mimetype="application/json")
