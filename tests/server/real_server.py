"""The real server in a process of its own, and a phone that talks to it over the network."""

import ctypes
import http.client
import http.cookies
import json
import os
import signal
import socket
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path

from server.clock import now_ms
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.ports import free_port
from tests.server.phone import entry_after

ROOT = Path(__file__).resolve().parents[2]
_PR_CAPBSET_DROP, _CAP_DAC_OVERRIDE = 24, 1


class RealServer:
    """`swaptrail serve` on a data folder; may be killed and started again."""

    def __init__(self, data, port=None):
        self.data = Path(data)
        self.port = port or free_port()
        self.process = None

    def start(self, limit=None):
        """Starts it and waits until it answers; `limit` is set in the process before it begins."""
        self.process = subprocess.Popen(
            [
                sys.executable,
                "-m",
                "server.commands.cli",
                "serve",
                "--data",
                self.data,
                "--port",
                str(self.port),
            ],
            cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            preexec_fn=limit or as_anybody,
        )
        until = time.monotonic() + 60
        while time.monotonic() < until and self.process.poll() is None:
            try:
                socket.create_connection(("127.0.0.1", self.port), timeout=1).close()
            except OSError:
                time.sleep(0.02)
            else:
                return self
        raise AssertionError(f"the server did not start, status {self.process.poll()}")

    def kill(self):
        """Ends it at once, in the middle of whatever it does."""
        self.process.kill()
        self.process.wait()

    def end(self):
        """Ends it as Ctrl-C does."""
        if self.process and self.process.poll() is None:
            self.process.send_signal(signal.SIGINT)
            try:
                self.process.wait(timeout=20)
            finally:
                self.process.kill()
                self.process.wait()

    def phone(self, device):
        """Makes a paired phone."""
        with closing(DataFolder(self.data).open()) as db:
            link = make_link(db, f"http://localhost:{self.port}", now_ms())
        phone = RealPhone(self.port, device)
        phone.ask_session()
        body = {"token": link.partition("#")[2], "device": device, "name": "Mara"}
        status, answer = phone.send("POST", "/api/pair", body)
        assert status == 200, answer
        phone.ask_session()
        return phone


def as_anybody():
    """Takes from root, where the tests run as root, the right to write what it may not."""
    ctypes.CDLL(None).prctl(_PR_CAPBSET_DROP, _CAP_DAC_OVERRIDE, 0, 0, 0)


class RealPhone:
    """A cookie, a CSRF token, a chain of entries, and what the server has acknowledged of it."""

    def __init__(self, port, device):
        self.port = port
        self.device = device
        self.cookie = self.csrf = ""
        self.key = None  # of tests.server.signed_phone: it signs what it sends with that
        self.entries = []
        self.acknowledged = 0
        self.photos = {}
        self.photos_confirmed = set()

    def send(self, method, path, body=None):
        """Returns (status, JSON or bytes); raises OSError or HTTPException when cut off."""
        data = body if isinstance(body, bytes | None) else json.dumps(body).encode()
        headers = {"Cookie": self.cookie, "X-CSRFToken": self.csrf, "Host": f"localhost:{self.port}"}
        with closing(self.connection()) as connection:
            connection.request(method, path, data, headers)
            answer = connection.getresponse()
            content = answer.read()
            for name, value in http.cookies.SimpleCookie(answer.getheader("Set-Cookie") or "").items():
                self.cookie = f"{name}={value.value}"
            is_json = answer.getheader("Content-Type") == "application/json"
            return answer.status, json.loads(content) if is_json and content else content

    def connection(self):
        """Returns a new connection, not opened yet."""
        return http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)

    def ask_session(self):
        self.csrf = self.send("GET", "/api/session")[1]["csrf"]

    def record(self, kind, data, job):
        self.entries.append(entry_after(self.entries, self.device, kind, data, job))

    def sync(self, cursor=0):
        """Sends what is not acknowledged, 200 at most; returns (status, answer)."""
        batch = self.entries[self.acknowledged : self.acknowledged + 200]
        body = {"app": "b", "v": 1, "device": self.device, "cursor": cursor, "events": batch}
        if self.key and batch:
            head = self.key.head(self.device, batch[-1]["event"]["seq"], batch[-1]["hash"])
            body |= {"key": self.key.public, "certificates": [], "signed_heads": [head]}
        status, answer = self.send("POST", "/api/sync", body)
        if status == 200:
            assert answer["refused"] == []
            self.acknowledged = max(self.acknowledged, answer["heads"][self.device]["seq"])
        return status, answer

    def put_photo(self, digest):
        status, answer = self.send("PUT", f"/api/photos/{digest}", self.photos[digest])
        if status == 200:
            assert answer == {"sha256": digest, "stored": True}
            self.photos_confirmed.add(digest)
        return status, answer
