"""The real app on a free port of this process, with a hand on the line to the phone.

A test can let replies get lost, answer in the server's place, or swap files of the app, and can look at
every request that came in.
"""

import functools
import io
import json
import re
import threading
import time
from collections import namedtuple
from collections.abc import Callable
from pathlib import Path

from cheroot import wsgi

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.phones.pairing import make_link
from server.storage import DataFolder
from server.web import shell
from server.web.core_files import core_files
from tests.ports import free_port
from tests.wheels import part
from tests.wheels import served_app

# The same bytes are packed once in a process: most of what a start takes, and each test starts the app anew.
shell._packed = functools.cache(shell._packed)

Request = namedtuple("Request", ["method", "path", "destination"])

# What this server answers by itself.
_Ours = namedtuple("_Ours", ["headers", "body"])
_OF_THE_BODY = {"Content-Length", "ETag", "Vary"}

# Answers in place of the app, or None to let it answer: (environ, app) -> (status, type, body) | None
Fault = Callable[[dict, Callable], tuple[str, str, bytes] | None]

# In the folder of all builds or of one; `place.js` in them works out from it where the app lies.
_PARTS = re.compile(r"/app/(?:[0-9a-f]{16}/)?((?:scan-)?parts\.js)")
#: The app's page without its start. Below /api/, where no service worker answers in its place.
BARE_PAGE = "/api/bare-page"
_START = re.compile(rb'<script type="module".*?</script>|<link rel="(?:modulepreload|preload)"[^>]*>')


class AppServer:
    """One data folder, served at one address until `close`."""

    def __init__(self, data: Path, static: Path | None = None, port: int | None = None) -> None:
        """Start serving; `port` only to take up an address again."""
        self.data = data
        self.static = static or served_app()
        self.port = port or free_port()
        self.base = f"http://localhost:{self.port}"
        self.requests: list[Request] = []
        self.fault: Fault | None = None
        self._server: wsgi.Server | None = None
        self.start()

    def start(self) -> None:
        """Serve what is in the folders now; a later call picks up changed files as a new build."""
        self.app = create_app(Config(self.data, self.base, self.static))
        self._server = wsgi.Server(("localhost", self.port), self._answer, numthreads=6)
        self._server.prepare()
        self._thread = threading.Thread(target=self._server.serve, daemon=True)
        self._thread.start()

    def close(self) -> None:
        """Go off the line."""
        self._server.stop()
        self._thread.join()

    def link(self, role: str = "bench") -> str:
        """Return a fresh pairing link."""
        db = self.database()
        try:
            return make_link(db, self.base, now_ms(), role=role)
        finally:
            db.close()

    def token(self) -> str:
        """Return the token of a fresh pairing link."""
        return self.link().partition("#")[2]

    def database(self):
        """Return the server's own view of its data; close it after use."""
        return DataFolder(self.data).open()

    def rows(self, query: str) -> list[tuple]:
        """Return what the server's database answers."""
        db = self.database()
        try:
            return db.conn.execute(query).fetchall()
        finally:
            db.close()

    def paths(self) -> list[str]:
        """Return the paths asked for so far."""
        return [request.path for request in self.requests]

    def _answer(self, environ, start_response):
        ours = _for_tests(environ, self.app)
        if ours:
            start_response("200 OK", ours.headers)
            return [ours.body]
        destination = environ.get("HTTP_SEC_FETCH_DEST", "")
        self.requests.append(Request(environ["REQUEST_METHOD"], environ["PATH_INFO"], destination))
        instead = self.fault(environ, self.app) if self.fault else None
        if instead is None:
            return self.app(environ, start_response)
        status, content_type, body = instead
        start_response(status, [("Content-Type", content_type), ("Content-Length", str(len(body)))])
        return [body]


def _for_tests(environ, app) -> "_Ours | None":
    """Hand out what the app itself does not have: the page without its start, and joined modules."""
    asked = _PARTS.fullmatch(environ["PATH_INFO"])
    if asked:
        return _Ours([("Content-Type", "text/javascript")], part(asked[1]))
    if environ["PATH_INFO"] != BARE_PAGE:
        return None
    headers: list[tuple[str, str]] = []
    page = answer_of(app, {**environ, "PATH_INFO": "/"}, headers)
    return _Ours([each for each in headers if each[0] not in _OF_THE_BODY], _START.sub(b"", page))


def core_with(host_source: str) -> Fault:
    """Put another host in front of the core on the phone, to see the worker hang or fail."""

    def fault(environ, app):
        if not environ["PATH_INFO"].endswith("/core.json"):
            return None
        files = {**core_files(), "server/core/host.py": host_source}
        return "200 OK", "application/json", json.dumps({"files": files}).encode()

    return fault


def lose_replies(path: str, times: int) -> Fault:
    """Let the app do its work, then answer with a gateway's error, so many times."""
    left = [times]

    def fault(environ, app):
        if environ["PATH_INFO"] != path or not left[0]:
            return None
        left[0] -= 1
        answer_of(app, environ)
        return "504 Gateway Timeout", "text/html", b"<h1>gateway timeout</h1>"

    return fault


def cut_short(environ, app):
    """Break off each answer to a sync in the middle."""
    if environ["PATH_INFO"] != "/api/sync":
        return None
    whole = answer_of(app, environ)
    return "200 OK", "application/json", whole[: len(whole) // 2]


def stumble(environ, app):
    """Answer each sync with a fault, before anything of it is kept."""
    if environ["PATH_INFO"] != "/api/sync":
        return None
    return "500 Internal Server Error", "text/html", b"<h1>Internal Server Error</h1>"


def deliver_twice(environ, app):
    """Let each sync reach the app twice; the phone hears the second answer."""
    if environ["PATH_INFO"] != "/api/sync":
        return None
    body = _body(environ)
    answer_of(app, {**environ, "wsgi.input": io.BytesIO(body)})
    return "200 OK", "application/json", answer_of(app, {**environ, "wsgi.input": io.BytesIO(body)})


def late_until_paired(server: AppServer, seconds: float = 1) -> Fault:
    """Hold back the first question who is asking until a phone was paired, or for some time."""
    asked = []

    def fault(environ, app):
        if environ["PATH_INFO"] == "/api/session":
            asked.append(environ)
            ends = time.monotonic() + (seconds if len(asked) == 1 else 0)
            while time.monotonic() < ends and not server.rows("SELECT id FROM sessions"):
                time.sleep(0.02)

    return fault


def overtaken() -> Fault:
    """Let the first sync arrive only after the second, when the phone has long given it up."""
    sent: list[dict] = []

    def fault(environ, app):
        if environ["PATH_INFO"] != "/api/sync" or len(sent) == 2:
            return None
        sent.append({**environ, "wsgi.input": io.BytesIO(_body(environ))})
        if len(sent) == 1:
            return "504 Gateway Timeout", "text/html", b"<h1>gateway timeout</h1>"
        answer = answer_of(app, sent[1])
        answer_of(app, sent[0])
        return "200 OK", "application/json", answer

    return fault


def confirm_another_photo(environ, app):
    """Confirm a photo by a hash that is not its own."""
    if environ["REQUEST_METHOD"] != "PUT":
        return None
    return "200 OK", "application/json", json.dumps({"sha256": "0" * 64, "stored": True}).encode()


def change_reply(path: str, found: bytes, put: bytes) -> Fault:
    """Change bytes of the app's reply on the way."""

    def fault(environ, app):
        if environ["PATH_INFO"] != path:
            return None
        return "200 OK", "application/json", answer_of(app, environ).replace(found, put)

    return fault


def only_downwards(environ, app):
    """Take nothing in, but give out what there is."""
    if environ["PATH_INFO"] == "/api/sync":
        _send_no_events(environ)


def _body(environ) -> bytes:
    """Read what was sent; it can be read once."""
    return environ["wsgi.input"].read(int(environ["CONTENT_LENGTH"]))


def _send_no_events(environ):
    body = json.loads(_body(environ))
    text = json.dumps({**body, "events": []}).encode()
    environ["wsgi.input"] = io.BytesIO(text)
    environ["CONTENT_LENGTH"] = str(len(text))


def sign_in_page(environ, app):
    """Answer everything as the sign-in page of a network does: 200 and HTML."""
    if not environ["PATH_INFO"].startswith("/api/"):
        return None
    return "200 OK", "text/html", b"<!doctype html><h1>Welcome to this network</h1>"


def answer_of(app, environ, sent: list[tuple[str, str]] | None = None) -> bytes:
    """Run the app and return what it answered; its headers are added to `sent`."""
    body = io.BytesIO()

    def start(status, headers, exc_info=None):
        (sent if sent is not None else []).extend(headers)
        return body.write

    plain = {key: value for key, value in environ.items() if key != "HTTP_ACCEPT_ENCODING"}
    answered = app(plain, start)
    try:
        for part in answered:
            body.write(part)
    finally:
        answered.close()
    return body.getvalue()
