"""The HTTP server: cheroot's, with TLS in front where there is a certificate."""

import ssl
from typing import Protocol

from cheroot import wsgi
from cheroot.ssl.builtin import BuiltinSSLAdapter
from flask import Flask

THREADS = 8
LARGEST_HEADERS = 64 * 1024


class Certificate(Protocol):
    """What a door serves TLS with; asked anew for each connection."""

    def context(self) -> ssl.SSLContext:
        """Returns the context for the next connection."""


class Door:
    """Serves an app at an address (host and port) between `prepare` and `stop`."""

    def __init__(self, address: tuple[str, int], app: Flask, certificate: Certificate | None = None):
        self._server = wsgi.Server(address, app, numthreads=THREADS)
        self._server.max_request_header_size = LARGEST_HEADERS
        if certificate is not None:
            self._server.ssl_adapter = _Lazy(certificate)

    def prepare(self) -> None:
        """Takes the port; raises OSError where it cannot be had."""
        self._server.prepare()

    def serve(self) -> None:
        """Serves until another thread calls `stop`."""
        self._server.serve()

    def stop(self) -> None:
        """Ends serving; what is being answered is answered first."""
        self._server.stop()


class _Lazy(BuiltinSSLAdapter):
    """Shakes hands with the first read, for the thread that accepts must not wait for a client."""

    def __init__(self, certificate: Certificate):
        self._certificate = certificate

    def bind(self, sock):
        """Returns the listening socket as it is."""
        return sock

    def wrap(self, sock):
        """Returns the connection under TLS, and what the app is told of that."""
        under_tls = self._certificate.context().wrap_socket(
            sock, server_side=True, do_handshake_on_connect=False
        )
        return under_tls, {"wsgi.url_scheme": "https", "HTTPS": "on"}
