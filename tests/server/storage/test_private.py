"""The data folder is its owner's alone; a refused start and a killed process leave nothing behind."""

import fcntl
import hashlib
import os
import signal
import socket
import stat
import subprocess
import sys
import threading
from contextlib import closing

import pytest

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.commands import site as site_command
from server.commands.cli import main
from server.keeping.new_file import written_whole
from server.photos import store as photo_store
from server.refusals import CommandRefused
from server.serving import serve
from server.serving.serve import held_open
from server.storage import DataFolder
from server.storage import parts
from server.storage.own_work import noted
from tests.ports import free_port
from tests.server.phone import BASE
from tests.server.phone import jpeg
from tests.server.real_server import ROOT
from tests.server.real_server import RealServer


def modes(root):
    """Returns what others may do with each file and folder, by its path in the data folder."""
    return {
        str(path.relative_to(root)): stat.S_IMODE(path.stat().st_mode) for path in [root, *root.rglob("*")]
    }


@pytest.fixture
def open_to_all():
    """The widest umask there is."""
    before = os.umask(0)
    yield
    os.umask(before)


def filled(root):
    """Makes a data folder with a key and a photo; returns it while its database is open."""
    folder = DataFolder(root)
    folder.prepare()
    folder.secret_key()
    db = folder.open()
    photo = jpeg()
    photo_store.keep(db, folder.photos, hashlib.sha256(photo).hexdigest(), photo, now_ms())
    return folder, db


def test_a_new_folder_is_its_owners_alone(tmp_path, open_to_all):
    folder, db = filled(tmp_path / "d")
    with closing(db):
        found = modes(folder.root)

    assert {"swaptrail.db", "swaptrail.db-wal", "swaptrail.db-shm", "keys/cookie.key", "photos"} <= set(found)
    assert len([name for name in found if name.endswith(".jpg")]) == 1
    for name, mode in found.items():
        assert mode == (0o700 if (folder.root / name).is_dir() else 0o600), name


def test_a_folder_from_before_is_tightened_at_a_start(tmp_path, open_to_all):
    folder, db = filled(tmp_path / "d")
    with closing(db):
        for path in (folder.root, folder.photos, folder.keys):
            path.chmod(0o755)
        for end in ("", "-wal", "-shm"):
            folder.database.with_name(f"swaptrail.db{end}").chmod(0o644)

        folder.prepare()

        found = modes(folder.root)
    assert [found[name] for name in (".", "photos", "keys")] == [0o700] * 3
    assert [found[f"swaptrail.db{end}"] for end in ("", "-wal", "-shm")] == [0o600] * 3


def test_a_folder_that_all_users_share_stays_theirs(tmp_path):
    shared = tmp_path / "shared"
    shared.mkdir()
    shared.chmod(0o1777)

    DataFolder(shared).prepare()

    assert stat.S_IMODE(shared.stat().st_mode) == 0o1777
    assert stat.S_IMODE((shared / "keys").stat().st_mode) == 0o700


def test_a_restored_folder_is_its_owners_alone(tmp_path, open_to_all, capsys):
    _, db = filled(tmp_path / "d")
    db.close()
    assert main(["backup", str(tmp_path / "b.zip"), "--data", str(tmp_path / "d")]) == 0
    assert stat.S_IMODE((tmp_path / "b.zip").stat().st_mode) == 0o600

    assert main(["restore", str(tmp_path / "b.zip"), "--data", str(tmp_path / "new")]) == 0

    assert {mode & 0o077 for mode in modes(tmp_path / "new").values()} == {0}


# --- a start that is refused


@pytest.fixture
def taken_port():
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        yield str(other.getsockname()[1])


@pytest.mark.parametrize(
    "arguments",
    [
        ["serve", "--port", "TAKEN"],
        ["demo", "--port", "TAKEN"],
        ["serve", "--port", "70000"],
        ["serve", "--host", "127.0.0.1"],
        ["serve", "--host", "shop.example"],
        ["serve", "--return-days", "-1", "--port", "8999"],
        ["labels", "--count", "0", "--out", "x.svg"],
    ],
    ids=" ".join,
)
@pytest.mark.parametrize("there", [True, False], ids=["an empty folder", "no folder"])
def test_a_start_that_is_refused_leaves_nothing(tmp_path, taken_port, arguments, there, capsys):
    data = tmp_path / "a" / "b"
    if there:
        data.mkdir(parents=True)
    arguments = [taken_port if each == "TAKEN" else each for each in arguments]

    assert main([*arguments, "--data", str(data)]) == 2

    assert capsys.readouterr().err.count("\n") == 1
    assert list(tmp_path.rglob("*")) == ([tmp_path / "a", data] if there else [])


def test_a_start_that_is_refused_touches_nothing_that_was_there(tmp_path, taken_port, capsys):
    data = tmp_path / "d"
    create_app(Config(data, BASE))
    (data / "note.txt").write_text("mine")
    before = sorted(data.rglob("*"))

    assert main(["serve", "--data", str(data), "--port", taken_port]) == 2

    assert sorted(data.rglob("*")) == before


_THEIRS = ["while it serves", "after it has ended"]


@pytest.fixture
def another():
    """Serves a data folder by another process, until the end of the test at the latest."""
    started = []

    def start(data, port, when, *emptied):
        server = RealServer(data, port)
        started.append(server.start())
        with closing(DataFolder(data).open()) as db:
            for table in emptied:
                db.conn.execute(f"DELETE FROM {table}")
            db.conn.commit()
        if when == _THEIRS[1]:
            server.end()
        return server

    yield start
    for server in started:
        server.end()


@pytest.mark.parametrize("when", _THEIRS)
def test_a_start_that_is_refused_leaves_what_another_has_made_meanwhile(
    tmp_path, another, monkeypatch, when, capsys
):
    data, port = tmp_path / "d", free_port()
    settled = serve.settled_base

    def made_by_another_first(*arguments):
        another(data, port, when, "pairings")
        made.update(data.rglob("[!.]*"))
        return settled(*arguments)

    made = set()
    monkeypatch.setattr(serve, "settled_base", made_by_another_first)
    arguments = ["serve", "--data", str(data), "--port", str(port), "--return-days", "-1"]

    assert main(arguments) == 2

    names = {path.name for path in data.rglob("*")}
    assert {path.name for path in made if "db-" not in path.name} <= names
    assert {"swaptrail.db", "cookie.key", "photos"} <= names


@pytest.mark.parametrize(
    ("when", "emptied"), [(_THEIRS[0], ["pairings"]), (_THEIRS[1], [])], ids=["in use", "a link was made"]
)
def test_a_start_that_is_refused_leaves_what_another_has_come_to_use(
    tmp_path, another, monkeypatch, when, emptied, capsys
):
    data, port = tmp_path / "d", free_port()

    def refused_after_another_came(*_):
        another(data, port, when, *emptied)
        raise CommandRefused(f"Port {port} is taken.")

    monkeypatch.setattr(serve, "check_port", refused_after_another_came)

    assert main(["serve", "--data", str(data), "--port", str(port)]) == 2

    assert {"swaptrail.db", "cookie.key", "photos"} <= {path.name for path in data.rglob("*")}


def test_a_folder_that_is_taken_back_while_another_begins_on_it_is_made_anew(tmp_path, monkeypatch):
    folder, lock, taken = DataFolder(tmp_path / "d"), fcntl.flock, []

    def take_back_once(descriptor, how):
        if not taken:
            taken.append(folder.keys.rmdir())
            folder.root.rmdir()
        lock(descriptor, how)

    monkeypatch.setattr(fcntl, "flock", take_back_once)
    with noted() as work:
        folder.prepare()

        assert taken
        assert folder.database.is_file()
        assert work.is_alone(folder.keys)


def test_a_refused_command_without_data_leaves_a_folder_of_the_usual_name(tmp_path, monkeypatch, capsys):
    def refused(_):
        code = "from server.storage import DataFolder; DataFolder('data').prepare()"
        subprocess.run(
            [sys.executable, "-c", code],
            cwd=tmp_path,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            check=True,
        )
        raise CommandRefused("No.")

    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(site_command, "run", refused)

    assert main(["site", "--out", "x"]) == 2

    assert (tmp_path / "data/swaptrail.db").is_file()


# --- what a killed process leaves

_BEGUN = """
import os, sys, time
from pathlib import Path
from server.keeping import backup
from server.photos import store as photo_store
from server.keeping import restore
from server.storage import DataFolder, parts

def stop(*_, **__):
    print("begun", flush=True)
    time.sleep(600)

what, root = sys.argv[1], Path(sys.argv[2])
folder = DataFolder(root / "d")
if what == "photo":
    os.fsync = stop
    beside = next(folder.photos.iterdir()).name
    photo_store._write(photo_store.path_of(folder.photos, beside + "ab" * 31), b"x")
elif what == "key":
    folder.kept_key("other.key", stop)
elif what == "backup":
    backup._add_photos = stop
    backup.run(folder.root, root / "b.zip")
elif what == "restore":
    restore.sync_file = stop
    restore.run(root / "new", root / "whole.zip")
elif what == "demo":
    with parts.scratch_folder(root, parts.DEMO) as made:
        (made / "swaptrail.db").write_text("x")
        stop()
"""


@pytest.mark.parametrize("what", ["photo", "key", "backup", "restore", "demo"])
def test_what_a_killed_process_left_goes_at_the_next_start_and_a_living_ones_stays(tmp_path, what, capsys):
    folder, db = filled(tmp_path / "d")
    db.close()
    main(["backup", str(tmp_path / "whole.zip"), "--data", str(folder.root)])
    theirs = [tmp_path / "film.part", tmp_path / ".swaptrail-mine", folder.root / "note.part"]
    for path in theirs:
        path.write_text("somebody else's")
    with held_open(folder):
        pass  # from then on it has its mark
    before = _all(tmp_path)
    process = subprocess.Popen(
        [sys.executable, "-c", _BEGUN, what, str(tmp_path)], cwd=ROOT, stdout=subprocess.PIPE, text=True
    )
    try:
        assert process.stdout.readline() == "begun\n"
        assert _all(tmp_path) > before

        with held_open(folder):
            assert _all(tmp_path) > before, "its writer lives"
        process.send_signal(signal.SIGKILL)
        process.wait()
        assert _all(tmp_path) > before
        with held_open(folder):
            pass
    finally:
        process.kill()
        process.wait()
        process.stdout.close()

    assert _all(tmp_path) == before


def _all(root):
    return {path for path in root.rglob("*") if not path.name.startswith("swaptrail.db-")}


def test_a_command_takes_away_what_one_before_it_left_where_it_writes(tmp_path):
    left = parts.name_for(tmp_path / "r.zip")
    left.write_text("half")

    with written_whole(tmp_path / "s.zip") as part:
        part.write_text("whole")

    assert [path.name for path in tmp_path.iterdir()] == ["s.zip"]


def test_a_part_that_was_taken_for_left_before_it_was_held_is_begun_anew(tmp_path, monkeypatch):
    part = tmp_path / "x.part"
    lock, stolen = fcntl.flock, []

    def steal_once(descriptor, how):
        if not stolen:
            stolen.append(part.unlink())
        lock(descriptor, how)

    monkeypatch.setattr(fcntl, "flock", steal_once)
    with parts.making(part):
        assert part.exists()
        ended = []
        thread = threading.Thread(target=lambda: ended.append(parts.take_away_left([part])))
        thread.start()
        thread.join()
        assert ended == [0]
    assert not part.exists()


def test_links_are_not_followed(tmp_path):
    target = tmp_path / "mine"
    target.write_text("mine")
    link = tmp_path / ".swaptrail-00000000-x.part"
    link.symlink_to(target)

    assert parts.take_away_left(parts.beside(tmp_path)) == 0
    assert target.read_text() == "mine"
