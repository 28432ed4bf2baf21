"""The server is killed in the middle of its work: what it has acknowledged is there, once, and whole.

So are commands that write: `restore`, `rejoin`, `take-in`, alone and beside a server that is killed as well.
SWAPTRAIL_LONG=1 kills the server, and each command, a hundred times.
"""

import hashlib
import http.client
import random
import shutil
import signal
import subprocess
import sys
import threading
import time
from contextlib import closing
from contextlib import contextmanager
from contextlib import nullcontext

import pytest

from server.keeping import backup
from server.keeping.verify.data_folder import FOLDER
from server.log import take_in
from server.phones.installation import installation_id
from server.serving.serve import held_open
from server.storage import DataFolder
from tests.long_runs import times
from tests.server.phone import JOB
from tests.server.phone import entry_after
from tests.server.phone import job_opened
from tests.server.phone import jpeg
from tests.server.real_server import ROOT
from tests.server.real_server import RealServer
from tests.server.real_server import as_anybody
from tests.unsent_files import unsent_text

KILLS = times(3, 100)
KILLS_BESIDE = times(1, 34)  # in each of three ways
KILLS_OF_A_COMMAND = times(3, 100)
CUT_OFF = (OSError, http.client.HTTPException)


@pytest.fixture
def server(tmp_path):
    server = RealServer(tmp_path / "data")
    server.start()
    yield server
    server.end()


class Worker:
    """A phone that records and sends until it is cut off."""

    def __init__(self, phone, number, dice):
        self.phone = phone
        self.dice = dice
        self.job = f"j{number:012x}"
        self.taken = threading.Event()
        opened = job_opened()
        opened["vehicle"]["id"] = f"v{number:012x}"
        phone.record("job_opened", opened, self.job)
        self.thread = None

    def begin(self):
        self.taken.clear()
        self.thread = threading.Thread(target=self._work)
        self.thread.start()

    def _work(self):
        try:
            while True:
                self._record()
                assert self.phone.sync()[0] == 200
                self.taken.set()
                for digest in sorted(set(self.phone.photos) - self.phone.photos_confirmed)[:2]:
                    assert self.phone.put_photo(digest)[0] == 200
        except CUT_OFF:
            self.taken.set()

    def _record(self):
        for _ in range(self.dice.randint(1, 40)):
            self.phone.record("cleaned", {"position": "rear-left", "note": str(self.dice.random())}, self.job)
        colour = tuple(self.dice.randrange(256) for _ in range(3))
        picture = jpeg(900, 700, colour)
        digest = hashlib.sha256(picture).hexdigest()
        self.phone.photos[digest] = picture
        data = {"sha256": digest, "mime": "image/jpeg", "bytes": len(picture), "width": 900, "height": 700,
                "shows": "work", "position": "", "unit": ""}  # fmt: skip
        self.phone.record("photo_taken", data, self.job)
        if self.dice.random() < 0.2:
            target = {"device": self.phone.device, "seq": len(self.phone.entries), "reason": "slip"}
            self.phone.record("corrected", target, self.job)


def assert_nothing_lost(folder, phones):
    """Holds what lies on disk, while no server runs, against what each phone was told."""
    assert FOLDER.first_fault(folder.root) is None
    with closing(folder.open()) as db:
        for phone in phones:
            rows = db.conn.execute(
                "SELECT seq, hash FROM events WHERE device = ? ORDER BY seq", [phone.device]
            ).fetchall()
            assert len(rows) >= phone.acknowledged
            sent = [(entry["event"]["seq"], entry["hash"]) for entry in phone.entries]
            assert rows == sent[: len(rows)]
            for digest in phone.photos_confirmed:
                assert db.conn.execute("SELECT 1 FROM photos WHERE sha256 = ?", [digest]).fetchone()
    for file in folder.photos.rglob("*.jpg"):
        assert hashlib.sha256(file.read_bytes()).hexdigest() == file.stem, (
            "half a photo under a whole one's name"
        )


def test_a_server_that_is_asked_to_end_in_the_midst_of_syncs_ends_by_itself_and_loses_nothing(server):
    dice = random.Random("asked to end")
    workers = [Worker(server.phone(f"d{number:016x}"), number, dice) for number in (1, 2)]
    for worker in workers:
        worker.begin()
    for worker in workers:
        assert worker.taken.wait(60)

    server.process.send_signal(signal.SIGTERM)

    assert server.process.wait(60) == 0
    for worker in workers:
        worker.thread.join()
    assert_nothing_lost(DataFolder(server.data), [worker.phone for worker in workers])


def test_what_was_acknowledged_survives_a_kill_at_any_moment(server):
    work_and_kill(server, KILLS, lambda: nullcontext())


def work_and_kill(server, kills, beside):
    """Lets two phones work until the server is killed, often, each time with `beside()` under way."""
    dice = random.Random(20_260_302)
    workers = [Worker(server.phone(f"d{number:016x}"), number, dice) for number in (1, 2)]
    phones = [worker.phone for worker in workers]
    for _ in range(kills):
        for worker in workers:
            worker.begin()
        for worker in workers:
            assert worker.taken.wait(60)
        with beside():
            threading.Event().wait(dice.uniform(0, 0.5))
            server.kill()
        for worker in workers:
            worker.thread.join()
        assert_nothing_lost(DataFolder(server.data), phones)
        server.start()

    for phone in phones:
        while phone.acknowledged < len(phone.entries):
            assert phone.sync()[0] == 200
        for digest in set(phone.photos) - phone.photos_confirmed:
            assert phone.put_photo(digest)[0] == 200
    server.end()
    assert_nothing_lost(DataFolder(server.data), phones)
    assert all(phone.acknowledged == len(phone.entries) > kills for phone in phones)


# --- commands that write

# Ready once all is imported, so that a kill hits the work and not the start of Python.
_COMMAND = """
import sys
from server.commands.cli import main
from server.keeping import rejoin, restore
from server.log import take_in
print("ready", flush=True)
sys.stdin.readline()
sys.exit(main(sys.argv[1:]))
"""


class Command:
    """A command in a process of its own, begun."""

    def __init__(self, *arguments):
        line = [sys.executable, "-c", _COMMAND, *map(str, arguments)]
        self.process = subprocess.Popen(
            line, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, preexec_fn=as_anybody
        )
        assert self.process.stdout.readline() == "ready\n"
        self.process.stdin.write("\n")
        self.process.stdin.flush()

    def killed_after(self, seconds):
        """Kills it then; returns whether it had come to its end, and well."""
        try:
            self.process.wait(seconds)
        except subprocess.TimeoutExpired:
            self.process.kill()
        return self.ended() == 0

    def ended(self):
        """Waits for its end, and returns its status."""
        self.process.communicate()
        return self.process.returncode


def took(*arguments):
    """Returns how long a command takes that nobody kills; it is carried out."""
    command, begun = Command(*arguments), time.monotonic()
    assert command.ended() == 0
    return time.monotonic() - begun


def chain(count, device="d00000000000000ee", pictures=()):
    """Returns entries of a phone that nobody has met yet, and at their end those of pictures."""
    entries = []
    for number in range(count):
        data = {"position": "rear-left", "note": str(number)}
        entries.append(entry_after(entries, device, "cleaned", data, JOB))
    for picture in pictures:
        data = {"sha256": hashlib.sha256(picture).hexdigest(), "mime": "image/jpeg", "bytes": len(picture),
                "width": 900, "height": 700, "shows": "work", "position": "", "unit": ""}  # fmt: skip
        entries.append(entry_after(entries, device, "photo_taken", data, JOB))
    return entries


PICTURES = [jpeg(900, 700, (number * 40, 90, 30)) for number in range(6)]


@pytest.fixture
def phone_file(tmp_path):
    """The file of a phone: some thousand entries and six pictures."""
    file = tmp_path / "swaptrail-unsent.txt"
    file.write_text(unsent_text(chain(1200, pictures=PICTURES), PICTURES))
    return file


def kept(folder):
    """Returns the epoch and the hashes of the log, once the folder was found to be sound."""
    assert FOLDER.first_fault(folder.root) is None
    with closing(folder.open()) as db:
        hashes = [digest for (digest,) in db.conn.execute("SELECT hash FROM events ORDER BY n")]
        return installation_id(db), hashes


@pytest.fixture
def filled(tmp_path, phone_file):
    folder = DataFolder(tmp_path / "filled")
    folder.prepare()
    assert take_in.run(folder.root, phone_file) == 0
    return folder


def test_a_restore_that_is_killed_leaves_a_whole_folder_or_none(filled, tmp_path):
    dice = random.Random(4)
    assert backup.run(filled.root, tmp_path / "b.zip") == 0
    epoch, hashes = kept(filled)
    new = DataFolder(tmp_path / "new")
    arguments = ("restore", tmp_path / "b.zip", "--data", new.root)
    seconds = took(*arguments)
    for _ in range(KILLS_OF_A_COMMAND):
        shutil.rmtree(new.root, ignore_errors=True)
        is_done = Command(*arguments).killed_after(dice.uniform(0, 1.1 * seconds))
        if is_done or new.root.exists():
            restored = kept(new)
            assert restored[0] != epoch
            assert restored[1] == hashes

    shutil.rmtree(new.root, ignore_errors=True)
    assert Command(*arguments).ended() == 0
    assert list(tmp_path.glob(".swaptrail-*")) == []


def test_a_rejoin_that_is_killed_begins_another_epoch_or_none(filled):
    dice = random.Random(5)
    epoch, hashes = kept(filled)
    arguments = ("rejoin", "--data", filled.root)
    seconds = took(*arguments)
    for _ in range(KILLS_OF_A_COMMAND):
        before = kept(filled)[0]
        is_done = Command(*arguments).killed_after(dice.uniform(0, 1.1 * seconds))
        after = kept(filled)
        assert after[1] == hashes
        assert not is_done or after[0] != before
        with held_open(filled):
            assert kept(filled) == after, "what was killed is no alarm"
    assert kept(filled)[0] != epoch


def test_a_take_in_that_is_killed_has_taken_whole_batches_and_goes_on(tmp_path, phone_file):
    dice = random.Random(6)
    wanted = [entry["hash"] for entry in chain(1200, pictures=PICTURES)]
    folder = DataFolder(tmp_path / "first")
    seconds = took_in(folder, phone_file)
    partly = 0
    for number in range(KILLS_OF_A_COMMAND):
        folder = DataFolder(tmp_path / f"data-{number}")
        folder.prepare()
        done = 0
        while done < len(wanted):
            command = Command("take-in", phone_file, "--data", folder.root)
            is_done = command.killed_after(dice.uniform(0.2, 1.1) * seconds)
            _, hashes = kept(folder)
            assert hashes == wanted[: len(hashes)]
            assert len(hashes) >= done
            assert len(hashes) == len(wanted) or len(hashes) % 200 == 0
            assert not is_done or len(hashes) == len(wanted)
            partly += 0 < len(hashes) < len(wanted)
            done = len(hashes)
        assert take_in.run(folder.root, phone_file) == 0
        assert kept(folder)[1] == wanted
        with closing(folder.open()) as db:
            assert db.conn.execute("SELECT count(*) FROM photos").fetchone() == (len(PICTURES),)
        shutil.rmtree(folder.root)


def took_in(folder, phone_file):
    folder.prepare()
    return took("take-in", phone_file, "--data", folder.root)


@pytest.mark.parametrize("what", ["restore", "rejoin", "take-in"])
def test_a_server_killed_beside_a_command_keeps_what_it_took(server, phone_file, filled, tmp_path, what):
    """The command itself goes on, and ends as if there had been no server."""
    backup.run(filled.root, tmp_path / "b.zip")
    restored = tmp_path / "restored"
    arguments = {
        "restore": ("restore", tmp_path / "b.zip", "--data", restored),
        "rejoin": ("rejoin", "--data", server.data),
        "take-in": ("take-in", phone_file, "--data", server.data),
    }[what]

    @contextmanager
    def beside():
        shutil.rmtree(restored, ignore_errors=True)
        command = Command(*arguments)
        yield
        assert command.ended() == 0

    work_and_kill(server, KILLS_BESIDE, beside)
    if what == "take-in":
        wanted = {entry["hash"] for entry in chain(1200, pictures=PICTURES)}
        assert wanted <= set(kept(DataFolder(server.data))[1])
