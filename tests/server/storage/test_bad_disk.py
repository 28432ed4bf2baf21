"""A disk that is full, and a data folder that cannot be written: the server says so, goes on giving
answers, and takes everything once it can again. Nothing is lost in between."""

import hashlib
import resource
import subprocess
import sys
from contextlib import closing

import pytest

from server.commands.cli import main
from server.keeping.verify.data_folder import FOLDER
from server.storage import DataFolder
from tests.server.phone import job_opened
from tests.server.phone import jpeg
from tests.server.real_server import RealServer
from tests.server.real_server import as_anybody

JOB = "j000000000001"
NOTE = "long enough to need a page of its own now and then " * 20


class TmpfsDisk:
    """A small file system in memory, where the tests may mount one."""

    full_status = (507,)

    def __init__(self, folder):
        folder.mkdir()
        self.folder = folder
        subprocess.run(
            ["mount", "-t", "tmpfs", "-o", "size=6m", "tmpfs", folder], check=True, capture_output=True
        )
        self.ballast = folder / "ballast"

    def limit(self):
        as_anybody()

    def fill(self, server):
        with self.ballast.open("wb", buffering=0) as file:
            try:
                while True:
                    file.write(b"0" * 4096)
            except OSError:
                pass

    def free(self, server):
        self.ballast.unlink()

    def close(self):
        subprocess.run(["umount", self.folder], check=True, capture_output=True)


class LimitedDisk:
    """Where nothing can be mounted: a limit on how long a file may get, which the same calls hit.

    SQLite tells ENOSPC from all other errors of a write, so here the database says it is broken.
    """

    full_status = (507, 503)

    def __init__(self, folder):
        folder.mkdir()
        self.folder = folder

    def limit(self):
        as_anybody()

    def fill(self, server):
        resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE, (4096, resource.RLIM_INFINITY))

    def free(self, server):
        unlimited = (resource.RLIM_INFINITY, resource.RLIM_INFINITY)
        resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE, unlimited)

    def close(self):
        pass


def small_disk(folder):
    try:
        return TmpfsDisk(folder)
    except (OSError, subprocess.CalledProcessError):
        return LimitedDisk(folder.with_name("limited"))


@pytest.fixture(params=[small_disk, LimitedDisk], ids=["small disk", "limited files"])
def disk(request, tmp_path):
    disk = request.param(tmp_path / "disk")
    yield disk
    disk.close()


@pytest.fixture
def phone_at():
    """Makes a server on a folder with a phone that has sent a job and a photo."""
    servers = []

    def make(folder):
        server = RealServer(folder).start()
        servers.append(server)
        phone = server.phone("d00000000000000aa")
        phone.record("job_opened", job_opened(), JOB)
        assert phone.sync()[0] == 200
        assert put(phone, jpeg())[0] == 200
        return server, phone

    yield make
    for server in servers:
        server.end()


def put(phone, picture):
    digest = hashlib.sha256(picture).hexdigest()
    phone.photos[digest] = picture
    return phone.put_photo(digest)


def clean(phone, count):
    for _ in range(count):
        phone.record("cleaned", {"position": "rear-left", "note": NOTE}, JOB)


def assert_says(answer, statuses, *words):
    status, body = answer
    assert status in statuses, body
    assert list(body) == ["error"]
    assert set(body["error"]) == {"field", "found", "wanted", "message"}
    assert body["error"]["field"] == "storage"
    assert any(word in body["error"]["message"] for word in words), body
    assert "safe" in body["error"]["message"]


def assert_still_reads(phone):
    digest = next(iter(phone.photos_confirmed))
    assert phone.send("GET", f"/api/photos/{digest}")[0] == 200
    assert phone.send("GET", f"/api/jobs/{JOB}")[1]["id"] == JOB
    assert [job["id"] for job in phone.send("GET", "/api/jobs")[1]] == [JOB]
    assert phone.send("GET", "/api/units/v00000000000a.rear-left")[0] == 200
    assert phone.send("GET", "/api/session")[1]["paired"]


def assert_goes_on(server, phone):
    """Everything held back arrives, in one log without a fault."""
    while phone.acknowledged < len(phone.entries):
        assert phone.sync()[0] == 200
    for digest in set(phone.photos) - phone.photos_confirmed:
        assert phone.put_photo(digest)[0] == 200
    assert len(phone.send("GET", f"/api/jobs/{JOB}")[1]["history"]) == len(phone.entries)
    server.end()
    assert FOLDER.first_fault(server.data) is None
    with closing(DataFolder(server.data).open()) as db:
        assert db.table("events").count == len(phone.entries)


@pytest.mark.parametrize("backlog", [20, 150], ids=["state in step", "state behind"])
def test_a_full_disk_is_said_and_nothing_is_lost(disk, phone_at, backlog):
    server, phone = phone_at(disk.folder / "data")
    clean(phone, backlog)
    assert phone.sync()[0] == 200
    disk.fill(server)

    answers = []
    for _ in range(3):
        clean(phone, 150)
        answers.append(phone.sync())
    refused = [answer for answer in answers if answer[0] != 200]

    assert refused, "the disk is not full"
    for answer in refused:
        assert_says(answer, disk.full_status, "disk")
    assert_says(put(phone, jpeg(900, 700, quality=95)), disk.full_status, "disk")
    assert_still_reads(phone)
    assert len(phone.send("GET", f"/api/jobs/{JOB}")[1]["history"]) == phone.acknowledged
    leftovers = [file for file in DataFolder(server.data).photos.rglob("*") if file.suffix == ".part"]
    assert leftovers == []

    disk.free(server)
    assert_goes_on(server, phone)


def shut(folder):
    """Takes the right to write from everything in a folder; returns how to give it back."""
    modes = {path: path.stat().st_mode for path in [folder, *folder.rglob("*")]}
    for path, mode in modes.items():
        path.chmod(mode & ~0o222)
    return lambda: [path.chmod(mode) for path, mode in modes.items()]


def test_a_folder_that_cannot_be_written_is_said_and_nothing_is_lost(tmp_path, phone_at):
    server, phone = phone_at(tmp_path / "data")
    clean(phone, 20)
    give_back = shut(server.data)
    try:
        assert_says(phone.sync(), [503], "cannot write")
        assert_says(put(phone, jpeg(900, 700)), [503], "cannot write")
        assert_still_reads(phone)
    finally:
        give_back()

    assert_goes_on(server, phone)


@pytest.mark.parametrize("command", ["serve", "labels", "rebuild"])
def test_a_command_on_such_a_folder_says_so_in_one_line(tmp_path, command):
    DataFolder(tmp_path / "data").prepare()
    main(["labels", "--count", "1", "--out", str(tmp_path / "x.svg"), "--data", str(tmp_path / "data")])
    more = ["--count", "1", "--out", str(tmp_path / "y.svg")] if command == "labels" else []
    give_back = shut(tmp_path / "data")
    try:
        answer = subprocess.run(
            [sys.executable, "-m", "server.commands.cli", command, "--data", tmp_path / "data", *more],
            capture_output=True,
            text=True,
            timeout=60,
            preexec_fn=as_anybody,
        )
    finally:
        give_back()

    assert answer.returncode == 2
    assert answer.stderr.startswith("swaptrail: ")
    assert answer.stderr.count("\n") == 1
    assert "reading alone" in answer.stderr


def with_short_files():
    """Lets no file grow past its first page: what a full disk refuses, this does."""
    as_anybody()
    resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096))


@pytest.mark.parametrize("command", ["rebuild", "rejoin"])
def test_a_command_whose_disk_is_full_says_so_in_one_line_and_leaves_what_was_there(phone, folder, command):
    phone.record("job_opened", job_opened())
    for number in range(30):
        phone.record("cleaned", {"position": "rear-left", "note": str(number)})
    before = phone.synced()

    answer = subprocess.run(
        [sys.executable, "-m", "server.commands.cli", command, "--data", folder.root],
        capture_output=True,
        text=True,
        timeout=60,
        preexec_fn=with_short_files,
    )

    assert (answer.returncode, answer.stderr.count("\n")) == (2, 1), answer.stderr
    assert answer.stderr.startswith("swaptrail: ")
    assert FOLDER.first_fault(folder.root) is None
    assert phone.synced([])["installation"] == before["installation"]
    assert phone.synced([])["events"] == before["events"]
    assert main([command, "--data", str(folder.root)]) == 0
