"""A server whose data may come back from any moment, and phones that go on with it."""

import json
import random
import shutil
import sqlite3
from contextlib import ExitStack
from contextlib import closing

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.keeping import backup
from server.keeping import rejoin
from server.keeping import restore
from server.log import events
from server.phones.installation import installation_id
from server.phones.pairing import make_link
from server.serving.serve import held_open
from server.storage import DataFolder
from tests.model_phone import ModelPhone
from tests.server.conftest import SMALL_APP
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.server.phone import job_opened

JOB = "j000000000001"
PHONES = 3
MOST_ROUNDS = 400


class ReturningServer:
    """A data folder that is served, ended, copied and put back, and three paired phones."""

    def __init__(self, root, seed):
        self.root = root
        self.dice = random.Random(seed)
        for name, text in SMALL_APP.items():
            (root / "static" / name).parent.mkdir(parents=True, exist_ok=True)
            (root / "static" / name).write_text(text)
        self.folder = DataFolder(root / "data")
        self.copies = []
        self.returns = 0
        self.has_come_back = False
        self.phones = []
        self._serving = ExitStack()
        self.start()
        with closing(self.folder.open()) as db:
            for number in range(1, PHONES + 1):
                paired = Phone(self.app, f"d{number:016x}")
                assert paired.pair_by(make_link(db, BASE, now_ms())).status_code == 200
                self.phones.append(ModelPhone(number, paired.client))
        self.phones[0].record("job_opened", job_opened(), JOB)

    # --- the server

    def start(self):
        self.app = create_app(Config(self.folder.root, BASE, self.root / "static"))
        self._serving.enter_context(held_open(self.folder))
        for phone in self.phones:
            cookies = phone.client._cookies
            phone.client = self.app.test_client()
            phone.client._cookies = cookies

    def end(self):
        self._serving.close()

    # --- what may happen

    def step(self):
        may_happen = {
            self.record: 40,
            self.exchange: 50,
            self.lose_reply: 8,
            self.lie: 8,
            self.copy: 6,
            self.put_back: 4,
        }
        what = self.dice.choices(list(may_happen), list(may_happen.values()))[0]
        before = self.epoch()
        what()
        if what != self.put_back and self.epoch() != before:
            # One for each time that the data came back, and no further one.
            assert self.has_come_back
            self.has_come_back = False

    def epoch(self):
        with closing(self.folder.open()) as db:
            return installation_id(db)

    def record(self):
        phone = self.dice.choice(self.phones)
        phone.record("cleaned", {"position": "rear-left", "note": str(self.dice.random())}, JOB)

    def exchange(self):
        phone = self.dice.choice(self.phones)
        for _ in range(self.dice.randint(1, 4)):
            phone.reply = phone.send(phone.ask())
            phone.take()

    def lose_reply(self):
        phone = self.dice.choice(self.phones)
        assert phone.send(phone.ask()) is not None

    def lie(self):
        """A paired phone says that it has seen a log that never was, as far as it can."""
        phone = self.dice.choice(self.phones)
        asked = json.loads(phone.ask())
        before = self.epoch()
        asked["cursor"] += self.dice.choice([0, 1, 1000])
        asked["seen"] |= self.dice.choice(
            [
                {"epoch": before, "hash": self.dice.randbytes(32).hex()},
                {"epoch": before, "received_at": self.dice.randrange(now_ms())},
                {"epoch": before, "hash": "", "signature": ""},
                {"epoch": before, "signature": self.dice.randbytes(64).hex()},
            ]
        )
        assert phone.send(json.dumps(asked))["installation"] == before

    def copy(self):
        """Makes a copy of one of the ways; it may be put back at any later time, or never."""
        number = len(self.copies)
        to = self.root / f"copy-{number}"
        way = self.dice.choice(["database", "folder", "unsaid", "backup"])
        if way == "database":
            with closing(self.folder.open()) as db, closing(sqlite3.connect(to)) as copy:
                db.conn.backup(copy)
        elif way in {"folder", "unsaid"}:
            shutil.copytree(self.folder.root, to)
        else:
            backup.run(self.folder.root, to)
        self.copies.append((way, to))

    def put_back(self):
        if not self.copies:
            return
        way, copy = self.dice.choice(self.copies)
        self.end()
        if way == "database":
            for file in self.folder.root.glob("swaptrail.db*"):
                file.unlink()
            shutil.copy(copy, self.folder.database)
        else:
            shutil.rmtree(self.folder.root)
            if way in {"folder", "unsaid"}:
                shutil.copytree(copy, self.folder.root)
                if way == "folder":
                    rejoin.run(self.folder.root)
            else:
                restore.run(self.folder.root, copy)
        self.returns += 1
        self.has_come_back = True
        self.start()

    # --- afterwards

    def heal(self, phones):
        """Lets each of these phones send and fetch until nobody has anything left."""
        for _ in range(2):
            for phone in phones:
                phone.sync_all(MOST_ROUNDS)

    def log(self):
        """Returns (device, seq) -> hash of what the server has."""
        with closing(self.folder.open()) as db:
            entries = events.after(db, 0, 100_000, 10**9)
        return {(each["event"]["device"], each["event"]["seq"]): each["hash"] for each in entries}


def held_by(phone):
    """Returns (device, seq) -> hash of what a phone has."""
    return {key: record["entry"]["hash"] for key, record in phone.kept["records"].items()}
