"""A server on an empty data folder, a paired phone that talks to it, and its helpers."""

import gc
import io
import os
from pathlib import Path

import pytest
from PIL import Image

from server.app import Config
from server.app import create_app
from server.core import envelope
from server.pairing import make_link
from server.storage import DataFolder

BASE = "http://localhost:8765"
NOW = 1_790_000_000_000

SMALL_APP = {
    "index.html": '<!doctype html><title>t</title><script type="importmap">{"imports":{}}</script>'
    '<script type="module" src="/app/main.js"></script>',
    "main.js": "export const a = 1;\n",
    "styles/base.css": "body { color: #15191d }\n",
    "sw.js": "const PRECACHE = JSON.parse('__PRECACHE__');\n",
    "manifest.webmanifest": "{}",
    "package.json": "{}",
    "vendor/micropython/micropython.wasm": "not really wasm",
    "vendor/lit-html/LICENSE": "text",
}


@pytest.fixture(scope="session")
def small_static(tmp_path_factory):
    """A phone app of a few files: what the server does with one does not depend on its size."""
    folder = tmp_path_factory.mktemp("static")
    for name, text in SMALL_APP.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder


@pytest.fixture
def app(tmp_path, small_static):
    app = create_app(Config(tmp_path / "data", BASE, small_static))
    app.config["TESTING"] = False  # errors must leave in the one shape here too
    return app


@pytest.fixture
def db(app):
    """The server's own view of the database."""
    db = app.extensions["data_folder"].open()
    yield db
    db.close()


@pytest.fixture
def folder(app) -> DataFolder:
    return app.extensions["data_folder"]


class Phone:
    """A phone as the server sees it: a cookie jar, a CSRF token, a device and its chain."""

    def __init__(self, app, device="d00000000000000aa"):
        self.app = app
        self.client = app.test_client()
        self.device = device
        self.csrf = ""
        self.entries = []

    def get(self, path, **options):
        return self.client.get(path, base_url=BASE, **options)

    def head(self, path):
        return self.client.head(path, base_url=BASE)

    def post(self, path, body=None, **options):
        return self._write("POST", path, json={} if body is None else body, **options)

    def put(self, path, data, **options):
        return self._write("PUT", path, data=data, **options)

    def _write(self, method, path, headers=None, **options):
        headers = {"X-CSRFToken": self.csrf, **(headers or {})}
        return self.client.open(path, method=method, base_url=BASE, headers=headers, **options)

    def ask_session(self):
        session = self.get("/api/session").get_json()
        self.csrf = session["csrf"]
        return session

    def pair_by(self, link, name="Mara"):
        self.ask_session()
        token = link.partition("#")[2]
        return self.post("/api/pair", {"token": token, "device": self.device, "name": name})

    def record(self, kind="walk_checked", data=None, job="j000000000001", device=None):
        """Appends an event to this phone's chain and returns its entry."""
        entry = entry_after(self.entries, device or self.device, kind, data, job)
        self.entries.append(entry)
        return entry

    def sync(self, entries=None, cursor=0, **fields):
        body = {"app": "b1", "v": 1, "device": self.device, "cursor": cursor}
        body["events"] = self.entries if entries is None else entries
        return self.post("/api/sync", {**body, **fields})


def entry_after(entries, device, kind="walk_checked", data=None, job="j000000000001", at=NOW):
    """Returns the next {"event", "hash"} of a device's chain."""
    event = {
        "device": device,
        "seq": len(entries) + 1,
        "prev": entries[-1]["hash"] if entries else "",
        "v": 1,
        "at": at,
        "actor": "Mara",
        "job": job,
        "kind": kind,
        "data": data if data is not None else {"positions": [], "missed": []},
    }
    return {"event": event, "hash": envelope.hash_of(event)}


@pytest.fixture
def new_phone(app, db):
    """Makes paired phones."""

    def make(device="d00000000000000aa", name="Mara"):
        phone = Phone(app, device)
        answer = phone.pair_by(make_link(db, BASE, _now()), name)
        assert answer.status_code == 200, answer.get_data(as_text=True)
        phone.ask_session()
        return phone

    return make


@pytest.fixture
def phone(new_phone):
    return new_phone()


@pytest.fixture
def stranger(app):
    """A phone that was never paired."""
    phone = Phone(app, "d00000000000000ff")
    phone.ask_session()
    return phone


def _now():
    from server.clock import now_ms

    return now_ms()


def jpeg(width=64, height=48, colour=(200, 190, 180), **options) -> bytes:
    """Returns a plain JPEG."""
    file = io.BytesIO()
    Image.new("RGB", (width, height), colour).save(file, "JPEG", **options)
    return file.getvalue()


def assert_refused(answer, status, field):
    """Holds an answer against the one error shape and returns the inside."""
    assert answer.status_code == status, answer.get_data(as_text=True)
    assert answer.mimetype == "application/json"
    body = answer.get_json()
    assert list(body) == ["error"]
    error = body["error"]
    assert set(error) == {"field", "found", "wanted", "message"}
    assert all(isinstance(value, str) for value in error.values())
    assert error["message"]
    assert error["field"] == field
    return error


@pytest.fixture(autouse=True)
def no_connection_left_open():
    """Fails a test that leaves a database connection behind."""
    before = _open_connections()
    yield
    if _open_connections() > before:
        gc.collect()
        assert _open_connections() <= before, "a database connection was left open"


def _open_connections() -> int:
    """Counts open files of the database; nothing to see where the system has no such list."""
    listing = Path("/proc/self/fd")
    if not listing.is_dir():
        return 0
    count = 0
    for entry in listing.iterdir():
        try:
            count += os.readlink(entry).endswith("swaptrail.db")
        except OSError:
            continue
    return count
