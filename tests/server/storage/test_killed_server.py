"""The server is killed in the middle of its work: what it has acknowledged is there, once, and whole.

SWAPTRAIL_LONG=1 kills it fifty times.
"""

import hashlib
import http.client
import random
import threading
from contextlib import closing

import pytest

from server.keeping.verify.data_folder import FOLDER
from server.storage import DataFolder
from tests.long_runs import times
from tests.server.phone import job_opened
from tests.server.phone import jpeg
from tests.server.real_server import RealServer

KILLS = times(5, 50)
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


def test_what_was_acknowledged_survives_a_kill_at_any_moment(server):
    dice = random.Random(20_260_302)
    workers = [Worker(server.phone(f"d{number:016x}"), number, dice) for number in (1, 2)]
    phones = [worker.phone for worker in workers]
    for _ in range(KILLS):
        for worker in workers:
            worker.begin()
        for worker in workers:
            assert worker.taken.wait(60)
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
    assert all(phone.acknowledged == len(phone.entries) > KILLS for phone in phones)
