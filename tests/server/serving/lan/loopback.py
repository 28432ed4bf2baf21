"""An installation of a network, served by this process on loopback, its clock in a test's hand."""

import itertools
import ssl
from contextlib import ExitStack
from contextlib import closing
from datetime import datetime

from cryptography import x509
from cryptography.hazmat.primitives.serialization import Encoding

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.phones.pairing import make_link
from server.serving.connections import CertificateFiles
from server.serving.connections import HttpServer
from server.serving.lan.address import Planned
from server.serving.lan.authority import kept_authority
from server.serving.lan.renewal import FILE
from server.serving.lan.renewal import Renewal
from server.serving.lan.serve_lan import open_server
from server.serving.lan.trust_page import check
from server.serving.lan.trust_page import create_trust_page
from server.storage import DataFolder

HOST = "yard.local"


class LoopbackYard:
    """App and trust page, until `close`; `now` is the clock that certificates are made by."""

    def __init__(self, data, port, now: datetime):
        """Serve with the certificate that is right at `now`."""
        self.now = now
        self.folder = DataFolder(data)
        self.folder.prepare()
        self.planned = Planned(HOST, port, port + 1)
        self.base = self.planned.base
        self.page = f"http://127.0.0.1:{port + 1}/"
        self.authority = kept_authority(self.folder, HOST, now)
        self.renewal = Renewal(self.authority, self.folder.keys / FILE, [], lambda: self.now)
        self.app = create_app(Config(data, self.base))
        self.app.config["TRUST_PAGE"] = f"{self.planned.page}/"
        self.app.register_blueprint(check)
        page = create_trust_page(self.base, self.planned.page, self.authority)
        self._running = ExitStack()
        self._running.enter_context(open_server(HttpServer(("127.0.0.1", port + 1), page)))
        self._https = None
        # A look at every connection, where the server looks once in a second.
        self.good = CertificateFiles(
            self.renewal.path, self.renewal.path, clock=itertools.count(0, 2).__next__
        )
        self.serve(self.good)

    def serve(self, certificate):
        """Serve the app with this certificate from now on; every connection from before is cut."""
        if self._https:
            self._https.__exit__(None, None, None)
        self._https = open_server(HttpServer(("127.0.0.1", self.planned.port), self.app, certificate))
        self._https.__enter__()

    def close(self):
        """Go off the line."""
        self._https.__exit__(None, None, None)
        self._running.close()

    def link(self):
        """Return a fresh pairing link."""
        with closing(self.folder.open()) as db:
            return make_link(db, self.base, now_ms())

    def shown(self):
        """Return the certificate that a new connection is shown."""
        pem = ssl.get_server_certificate(("127.0.0.1", self.planned.port))
        return x509.load_pem_x509_certificate(pem.encode())

    def write_authority(self, path):
        """Write the authority's certificate as PEM; return where."""
        path.write_bytes(self.authority.certificate.public_bytes(Encoding.PEM))
        return path


class Fixed:
    """One pair of certificate and key, whatever may be wrong with it."""

    def __init__(self, leaf, path):
        """Write the pair beside the others and load it."""
        path.write_bytes(leaf.pem())
        self._context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
        self._context.load_cert_chain(path)

    def context(self):
        """Return its context."""
        return self._context
