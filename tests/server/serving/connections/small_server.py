"""A small app behind a server on loopback."""

import hashlib
import threading
from contextlib import contextmanager

from flask import Flask
from flask import Response
from flask import request

from server.serving.connections import HttpServer
from server.serving.connections.limits import Limits
from server.web.bodies import larger_bodies

USUAL = 100_000
LARGE = 3_000_000
BLOB = bytes(range(256)) * 40_000  # ten million bytes


def small_app() -> Flask:
    """An app that tells what came in."""
    app = Flask("small", static_folder=None, template_folder=None)
    app.config["MAX_CONTENT_LENGTH"] = USUAL
    larger_bodies(app)["POST", "/large"] = LARGE

    @app.route("/", methods=["GET", "POST", "PUT"])
    @app.route("/large", methods=["POST"])
    def told() -> dict:
        request.max_content_length = LARGE
        data = request.get_data()
        return {
            "method": request.method,
            "bytes": len(data),
            "sha256": hashlib.sha256(data).hexdigest(),
            "secure": request.is_secure,
            "from": request.remote_addr,
            "headers": dict(request.headers),
            "query": request.query_string.decode(),
        }

    @app.get("/blob")
    def blob() -> Response:
        return Response(BLOB)

    @app.get("/pieces")
    def pieces() -> Response:
        return Response(piece for piece in (b"a" * 1000, b"", b"b" * 1000))

    @app.get("/fails")
    def fails() -> Response:
        raise RuntimeError("a fault of the test")

    return app


@contextmanager
def opened(app=None, certificate=None, **limits):
    """Serves an app on loopback; gives the server."""
    server = HttpServer(("127.0.0.1", 0), app or small_app(), certificate, limits=Limits(**limits))
    server.prepare()
    serving = threading.Thread(target=server.serve)
    serving.start()
    try:
        yield server
    finally:
        server.stop()
        serving.join(20)
        assert not serving.is_alive()
