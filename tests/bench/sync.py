"""How much of SQLite's own speed is left in a sync, and whether a long log makes answers slow.

    python -m tests.bench.sync [--events N] [--long N] [--short N]

Throughput: the backlog of one phone (10,000 entries) goes through POST /api/sync in batches of 200,
and the same rows go into the same tables by plain INSERTs, one transaction a batch, with the same
settings. Look-up: the same questions to a server with a short and with a long log (1,000,000). All
times are processor time of this process, so that other work on the machine does not count, and
beside it the time on the clock, which has the waiting for the disk in it.
"""

import argparse
import json
import random
import statistics
import tempfile
import time
from contextlib import closing
from pathlib import Path

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.folded import catch_up
from server.log import events
from server.phones.pairing import make_link
from server.storage import DataFolder
from server.storage import writing
from tests.bench.workload import Workload
from tests.server.phone import BASE
from tests.server.phone import Phone

BATCH = 200
GOAL_THROUGHPUT, GOAL_LOOK_UP = 0.25, 1.5
DEVICE = "d00000000000000aa"
TABLES = ("events", "event_units", "event_photos", "photos_wanted")
QUESTIONS = 60


class Clock:
    """Processor time and time on the clock of what is done inside."""

    def __enter__(self):
        self._begun = (time.process_time(), time.perf_counter())
        return self

    def __exit__(self, *error):
        self.cpu = time.process_time() - self._begun[0]
        self.wall = time.perf_counter() - self._begun[1]


def synced(root: Path, entries: list) -> Clock:
    """Sends a backlog as a phone does, and returns how long the server was at work."""
    app = create_app(Config(root, BASE))
    phone = Phone(app, DEVICE)
    with closing(DataFolder(root).open()) as db:
        phone.pair_by(make_link(db, BASE, now_ms()))
    phone.ask_session()
    batches = [entries[at : at + BATCH] for at in range(0, len(entries), BATCH)]
    bodies = [json.dumps({"app": "b", "v": 1, "device": DEVICE, "events": batch}) for batch in batches]
    with closing(DataFolder(root).open()) as held, Clock() as clock:  # held open as `serve` does
        held.conn.execute("SELECT 1 FROM events").fetchone()
        cursor = 0
        for body in bodies:
            data = body[:-1] + f',"cursor":{cursor}}}'
            answer = phone.write("POST", "/api/sync", data=data.encode())
            assert answer.status_code == 200, answer.data
            cursor = int(answer.data.rpartition(b'"cursor":')[2].partition(b",")[0])
    assert cursor == len(entries)
    return clock


def inserted(root: Path, other: Path) -> Clock:
    """Puts the rows of the log in `other` into an empty database, and returns how long that took."""
    folder = DataFolder(root)
    folder.prepare()
    with closing(DataFolder(other).open()) as db:
        rows = {table: db.conn.execute(f"SELECT * FROM {table}").fetchall() for table in TABLES}
        devices = db.conn.execute("SELECT device, first_seen, last_seen FROM devices").fetchall()
    place = {"events": 0, "event_units": 1, "event_photos": 1, "photos_wanted": 1}  # of the number
    last = len(rows["events"])
    batches = [
        [(table, [row for row in rows[table] if at < row[place[table]] <= at + BATCH]) for table in TABLES]
        for at in range(0, last, BATCH)
    ]
    with closing(folder.open()) as db:
        db.conn.executemany("INSERT INTO devices (device, first_seen, last_seen) VALUES (?, ?, ?)", devices)
        db.conn.commit()
        with Clock() as clock:
            for batch in batches:
                with writing(db):
                    for table, part in batch:
                        marks = ", ".join("?" * len(part[0])) if part else ""
                        db.conn.executemany(f"INSERT INTO {table} VALUES ({marks})", part)
    return clock


def throughput(count: int) -> None:
    """Prints the throughput of a sync beside that of plain inserts."""
    entries = Workload(DEVICE).entries(count)
    ratios = []
    with tempfile.TemporaryDirectory() as scratch:
        for turn in range(3):
            ours = synced(Path(scratch) / f"sync{turn}", entries)
            plain = inserted(Path(scratch) / f"plain{turn}", Path(scratch) / f"sync{turn}")
            ratios.append((plain.wall / ours.wall, plain.cpu / ours.cpu))
            for name, took in (("sync", ours), ("plain inserts", plain)):
                rate = f"{count / took.wall:8.0f} entries/s"
                print(f"  {name:13} {rate} ({took.cpu:.2f} s processor, {took.wall:.2f} s clock)")
    clock, cpu = (statistics.median(ratio[which] for ratio in ratios) for which in (0, 1))
    print(f"  ratio {clock:.2f} on the clock, {cpu:.2f} in processor time; goal {GOAL_THROUGHPUT}")


def filled(root: Path, count: int) -> Workload:
    """Makes a data folder with a log of `count` entries, folded."""
    folder = DataFolder(root)
    folder.prepare()
    work = Workload(DEVICE)
    with closing(folder.open()) as db, Clock() as clock:
        db.conn.execute("PRAGMA synchronous = OFF")
        left = count
        while left > 0:
            events.receive(db, work.entries(min(left, 2000)), None, 1)
            left -= 2000
        catch_up(db)
    size = folder.database.stat().st_size / 1e6
    print(f"  {count} entries, {len(work.jobs)} jobs: {clock.cpu:.0f} s to make, {size:.0f} MB")
    return work


def phone_at(root: Path) -> Phone:
    """Returns a paired phone of a server on a data folder."""
    phone = Phone(create_app(Config(root, BASE)), DEVICE)
    with closing(DataFolder(root).open()) as db:
        phone.pair_by(make_link(db, BASE, now_ms()))
    return phone


def look_up(short: int, long: int) -> None:
    """Prints how long questions over HTTP take with a short and with a long log, asked in turn."""
    dice = random.Random(7)
    taken: dict[str, tuple[list[float], list[float]]] = {}
    with tempfile.TemporaryDirectory() as scratch:
        roots = [Path(scratch) / name for name in ("short", "long")]
        works = [filled(root, count) for root, count in zip(roots, (short, long), strict=True)]
        phones = [phone_at(root) for root in roots]
        for turn in range(QUESTIONS):
            for which, (phone, work) in enumerate(zip(phones, works, strict=True)):
                for name, path in (
                    ("job open", f"/api/jobs/{dice.choice(work.jobs[: -work.open_jobs])}"),
                    ("unit look-up", f"/api/units/{dice.choice(work.units)}"),
                    ("list of jobs", f"/api/jobs?from={turn}"),
                ):
                    with Clock() as clock:
                        answer = phone.get(path)
                    assert answer.status_code == 200, answer.data
                    taken.setdefault(name, ([], []))[which].append(clock.cpu * 1000)
    for name, times in taken.items():
        before, after = (statistics.median(each) for each in times)
        print(
            f"  {name:13} {before:7.2f} ms with {short}, {after:7.2f} ms with {long}: "
            f"{after / before:.2f} times; goal {GOAL_LOOK_UP}"
        )


def main() -> None:
    """Measures and prints."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--events", type=int, default=10_000, help="entries of the backlog")
    parser.add_argument("--short", type=int, default=10_000)
    parser.add_argument("--long", type=int, default=1_000_000)
    asked_for = parser.parse_args()
    print("throughput")
    throughput(asked_for.events)
    print("look-up")
    look_up(asked_for.short, asked_for.long)


if __name__ == "__main__":
    main()
