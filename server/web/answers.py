"""How JSON leaves the server."""

import json

from flask import Response


def json_answer(value: object, status: int = 200, written: dict[str, str] | None = None) -> Response:
    """Returns compact UTF-8 JSON with nothing escaped that need not be.

    MicroPython does not join escaped surrogate pairs, so text must arrive unescaped. Half a pair
    can only be an echo of something refused; it becomes a question mark. `written` is further
    fields of an object, as JSON text.
    """
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    if written:
        text = text[:-1] + "".join(f',"{name}":{part}' for name, part in written.items()) + "}"
    return Response(text.encode("utf-8", "replace"), status, mimetype="application/json")
