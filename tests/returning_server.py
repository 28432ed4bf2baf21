"""A server whose data may come back from any moment, and phones that go on with it."""

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
        what = self.dice.choices(
            [self.record, self.exchange, self.lose_reply, self.copy, self.put_back], [40, 50, 8, 6, 4]
        )[0]
        what()

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

    def copy(self):
        """Makes a copy of one of the ways; it may be put back at any later time, or never."""
        number = len(self.copies)
        to = self.root / f"copy-{number}"
        way = self.dice.choice(["database", "folder", "backup"])
        if way == "database":
            with closing(self.folder.open()) as db, closing(sqlite3.connect(to)) as copy:
                db.conn.backup(copy)
        elif way == "folder":
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
            if way == "folder":
                shutil.copytree(copy, self.folder.root)
                rejoin.run(self.folder.root)
            else:
                restore.run(self.folder.root, copy)
        self.returns += 1
        self.start()

    # --- afterwards

    def heal(self, phones):
        """Lets each of these phones send and fetch until nobody has anything left."""
        for _ in range(2):
            for phone in phones:
                for _ in range(MOST_ROUNDS):
                    phone.reply = phone.send(phone.ask())
                    if not phone.take() and not phone.unsent():
                        break
                else:
                    raise AssertionError(f"{phone.device} does not get to the end of sending and fetching")

    def log(self):
        """Returns (device, seq) -> hash of what the server has."""
        with closing(self.folder.open()) as db:
            entries = events.after(db, 0, 100_000, 10**9)
        return {(each["event"]["device"], each["event"]["seq"]): each["hash"] for each in entries}


def held_by(phone):
    """Returns (device, seq) -> hash of what a phone has."""
    return {key: record["entry"]["hash"] for key, record in phone.kept["records"].items()}
