"""The HTTP server: cheroot's workers, parser and gateway behind a connection loop of our own.

What cheroot keeps connections in is made and closed again unused: it reads a request in the thread
that answers it, and shakes hands for TLS in the one that accepts.
"""

import logging
import ssl
from typing import Protocol

from cheroot import wsgi
from flask import Flask

from server.serving.connections.connection import Connection
from server.serving.connections.connection_loop import ConnectionLoop
from server.serving.connections.descriptors import files_allowed
from server.serving.connections.hold import IN_ENVIRON
from server.serving.connections.limits import Limits
from server.serving.connections.request_reader import LargestBody
from server.serving.connections.request_reader import WholeRequest
from server.serving.connections.worker_request import WorkerRequest
from server.web.bodies import larger_bodies

log = logging.getLogger(__name__)

THREADS = 8
_BACKLOG = 128


class Certificate(Protocol):
    """What the server uses for TLS; asked anew for each connection."""

    def context(self) -> ssl.SSLContext:
        """Returns the context for the next connection."""


class HttpServer:
    """Serves an app at an address (host and port) between `prepare` and `stop`."""

    def __init__(
        self,
        address: tuple[str, int],
        app: Flask,
        certificate: Certificate | None = None,
        *,
        limits: Limits | None = None,
    ):
        """With a `certificate` over TLS; routes that take large bodies are those of `bodies.take_larger`."""
        self._server = _Server(address, app, certificate, limits or Limits())

    def prepare(self) -> None:
        """Takes the port; raises OSError where it cannot be had."""
        self._server.prepare()

    def serve(self) -> None:
        """Serves until another thread calls `stop`."""
        self._server.serve()

    def stop(self) -> None:
        """Ends serving; requests that came in whole are answered first, within a few seconds."""
        self._server.stop()

    @property
    def port(self) -> int:
        """Returns the port that was taken, also where 0 asked for any."""
        port: int = self._server.bind_addr[1]
        return port

    def is_empty(self) -> bool:
        """Tells whether nobody is connected."""
        return self._server.is_empty()


class _Server(wsgi.Server):
    """cheroot's server, whose connections are kept in a loop of our own."""

    def __init__(self, address: tuple[str, int], app: Flask, certificate: Certificate | None, limits: Limits):
        super().__init__(address, app, numthreads=THREADS, server_name="Swaptrail")
        self.request_queue_size = _BACKLOG
        self.gateway = _Gateway
        self.timeout = int(limits.idle)  # what cheroot tells clients of HTTP/1.0
        self._certificate = certificate
        self._limits = limits._replace(connections=min(limits.connections, files_allowed(limits.connections)))
        self._largest_body = _largest_body(app, limits)

    def prepare(self) -> None:
        super().prepare()
        self._connections.close()  # type: ignore[attr-defined]  # set by cheroot's prepare
        self._loop = ConnectionLoop(
            self.socket,
            self._hand_on,
            self._largest_body,
            self._limits,
            self._certificate.context if self._certificate else None,
        )

    def serve(self) -> None:
        self._loop.run()

    def stop(self) -> None:
        if not self.ready:
            return
        self._loop.shut()
        self.ready = False
        self.requests.stop(self.shutdown_timeout)
        self._loop.end()

    def is_empty(self) -> bool:
        """Tells whether nobody is connected."""
        return self._loop.is_empty()

    def put_conn(self, handed: WorkerRequest) -> None:
        handed.keep()

    @property
    def can_add_keepalive_connection(self) -> bool:
        return bool(self.ready)

    def error_log(self, msg: str = "", level: int = logging.INFO, traceback: bool = False) -> None:
        log.log(level, msg, exc_info=traceback)

    def _hand_on(self, connection: Connection, whole: WholeRequest) -> None:
        handed = WorkerRequest(
            self,
            whole,
            self._limits.answer_memory_bytes,
            lambda handed, keep: self._loop.take_back(connection, handed, keep),
        )
        handed.remote_addr, handed.remote_port = connection.peer
        handed.ssl_env = {"wsgi.url_scheme": "https", "HTTPS": "on"} if connection.secure else {}
        self.process_conn(handed)


class _Gateway(wsgi.Gateway_10):
    """cheroot's way from a request to the app, which may have its answer kept back."""

    def get_environ(self) -> dict:  # type: ignore[override]  # typed as one that returns nothing
        environ: dict = super().get_environ()
        environ[IN_ENVIRON] = self.req.conn.hold_back
        return environ


def _largest_body(app: Flask, limits: Limits) -> LargestBody:
    usual = app.config.get("MAX_CONTENT_LENGTH") or limits.body_bytes
    larger = larger_bodies(app)
    return lambda method, path: larger.get((method, path), usual)
