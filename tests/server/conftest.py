"""A server on an empty data folder and paired phones that talk to it."""

import gc
import os
from contextlib import closing
from pathlib import Path

import pytest

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.commands.cli import main
from server.phones.pairing import make_link
from server.storage import DataFolder
from server.web.database import Connections
from server.web.database import close_waiting
from tests import netns
from tests.server.phone import BASE
from tests.server.phone import Phone

SMALL_APP = {
    "index.html": '<!doctype html><html lang="en"><title>t</title>'
    '<script type="importmap">{"imports":{}}</script>'
    '<script type="module" src="./app/main.js"></script>',
    "plain.html": '<!doctype html><html lang="en"><head></head><script src="./app/plain.js"></script></html>',
    "plain.js": "'use strict';\n",
    "main.js": "export const a = 1;\n",
    "styles/base.css": "body { color: #15191d }\n" * 20,
    "icons/app.svg": "<svg/>",
    "help/en/README.md": "# Help\n",
    "sw.js": "const PRECACHE = JSON.parse('__PRECACHE__');\n",
    "manifest.webmanifest": "{}",
    "package.json": "{}",
    "node_modules/idb/index.js": "export {};",
    "vendor/micropython/micropython.wasm": "not really wasm",
    "vendor/lit-html/LICENSE": "text",
}


@pytest.fixture
def machines():
    """Two machines in a network of their own."""
    if netns.missing():
        # Never silent: the end of the report counts them and says why (tests/conftest.py).
        pytest.skip(f"{netns.LEFT_OUT}: {netns.missing()}")
    with netns.TwoMachines() as two:
        yield two


@pytest.fixture
def small_static(tmp_path):
    """A phone app of a few files: what the server does with one does not depend on its size."""
    return write_app(tmp_path / "static")


def write_app(folder):
    """Write that app into a folder; return the folder."""
    for name, text in SMALL_APP.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder


@pytest.fixture
def app(tmp_path, small_static):
    app = create_app(Config(tmp_path / "data", BASE, small_static))
    yield app
    close_waiting(app)


@pytest.fixture
def fresh(tmp_path) -> DataFolder:
    """A data folder with nothing in it that no app serves."""
    folder = DataFolder(tmp_path / "fresh")
    folder.prepare()
    return folder


@pytest.fixture
def folder(app) -> DataFolder:
    return app.extensions["data_folder"]


@pytest.fixture
def db(folder):
    """The test's own connection to the server's database."""
    with closing(folder.open()) as db:
        yield db


@pytest.fixture
def said(capsys):
    """Runs a command; returns (its status, all that it printed)."""

    def run(*arguments):
        capsys.readouterr()
        status = main([str(argument) for argument in arguments])
        out, err = capsys.readouterr()
        return status, out + err

    return run


@pytest.fixture
def let_in(db):
    """Pairs a phone in a name and a role; returns it."""

    def pair(phone, name, role):
        answer = phone.pair_by(make_link(db, BASE, now_ms(), role=role), name)
        assert answer.status_code == 200, answer.get_data(as_text=True)
        phone.ask_session()
        return phone

    return pair


@pytest.fixture
def new_phone(app, let_in):
    """Makes paired phones."""

    def make(device="d00000000000000aa", name="Mara", role="bench"):
        return let_in(Phone(app, device), name, role)

    return make


@pytest.fixture
def phone(new_phone):
    return new_phone()


@pytest.fixture
def counter(new_phone):
    """A phone at the parts counter."""
    return new_phone("d00000000000000cc", "Jo", "counter")


@pytest.fixture
def stranger(app):
    """A phone that was never paired."""
    phone = Phone(app, "d00000000000000ff")
    phone.ask_session()
    return phone


@pytest.fixture(autouse=True)
def no_connection_left_open():
    """Fails a test that leaves a database connection behind."""
    before = _open_databases()
    yield
    if _open_databases() > before:
        gc.collect()
        # What waits for the next request of a server that several tests share is not left behind.
        for each in [each for each in gc.get_objects() if isinstance(each, Connections)]:
            each.close()
    assert _open_databases() <= before, "a database connection was left open"


def _open_databases() -> int:
    """Counts open database files; nothing to count where the system keeps no such list."""
    listing = Path("/proc/self/fd")
    if not listing.is_dir():
        return 0
    return sum(_points_to(entry).endswith("swaptrail.db") for entry in listing.iterdir())


def _points_to(entry: Path) -> str:
    try:
        return os.readlink(entry)
    except OSError:  # closed while looking
        return ""
