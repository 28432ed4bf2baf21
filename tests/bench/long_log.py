"""What an old correction costs with a long log, and whether questions take longer than with a short one.

    python -m tests.bench.long_log [--short N] [--long N] [--keep DIR]

An entry near the beginning of a log of 1,000,000 is taken back, then one is put right, by a phone over
HTTP; meanwhile another phone syncs again and again, and then the job is looked at. All of it on the clock:
a phone that waits for the write lock uses no processor. Job and unit are then asked for with both logs, in
turn, in processor time. With `--keep` the two data folders are made once, and copied for each run; without
it they are made anew (minutes). Goals stand beside the figures; nothing is asserted.
"""

import argparse
import itertools
import json
import random
import shutil
import statistics
import tempfile
import threading
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
from tests.bench.sync import BASE
from tests.bench.sync import DEVICE
from tests.bench.sync import Clock
from tests.bench.sync import filled
from tests.server.phone import Phone
from tests.server.phone import entry_after

GOAL_S, GOAL_RATIO = 1.0, 1.5
EARLY = 60
QUESTIONS = 60


def prepared(root: Path, count: int) -> Path:
    """Returns a data folder with a log of `count` entries, made unless it is there."""
    if not (root / "whole").exists():
        shutil.rmtree(root, ignore_errors=True)
        filled(root, count)
        with closing(DataFolder(root).open()) as db:
            db.conn.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        (root / "whole").touch()
    return root


def copied(root: Path, scratch: Path) -> Path:
    """Returns a copy of a data folder, in step with the log."""
    copy = scratch / root.name
    shutil.copytree(root, copy)
    DataFolder(copy).prepare()
    with closing(DataFolder(copy).open()) as db:
        catch_up(db)
    return copy


def phone_at(app, root: Path, device: str) -> Phone:
    """Returns a paired phone of a server on a data folder."""
    phone = Phone(app, device)
    with closing(DataFolder(root).open()) as db:
        phone.pair_by(make_link(db, BASE, now_ms()))
    phone.ask_session()
    return phone


class Other(threading.Thread):
    """Another phone, which sends an entry again and again until it is told to stop."""

    def __init__(self, phone: Phone, cursor: int):
        super().__init__()
        self.waits: list[float] = []
        self._phone, self._cursor, self._over = phone, cursor, threading.Event()

    def run(self) -> None:
        phone, last = self._phone, []
        for seq in itertools.count(1):
            last = [entry_after(last, phone.device, job=None, kind="part_noted", seq=seq,
                                data={"unit": "u000000000001", "part": "PS-1", "serial": ""})]  # fmt: skip
            begun = time.perf_counter()
            answer = phone.sync(last, self._cursor)
            self.waits.append(time.perf_counter() - begun)
            assert answer.status_code == 200, answer.data
            if self._over.is_set():
                return

    def stop(self) -> None:
        self._over.set()
        self.join()


def old_correction(root: Path) -> None:
    """Prints what it costs to take an early entry back, and to put one right."""
    app = create_app(Config(root, BASE))
    phone = phone_at(app, root, DEVICE)
    with closing(DataFolder(root).open()) as db:
        early = [
            json.loads(body)
            for (body,) in db.conn.execute(
                "SELECT body FROM events WHERE n >= ? AND kind IN ('looked', 'unit_fitted') "
                "ORDER BY n LIMIT 40",
                [EARLY],
            )
        ]
    fitted = next(event for event in early if event["kind"] == "unit_fitted")
    looked = next(event for event in early if event["kind"] == "looked")
    slip = {"device": DEVICE, "reason": "a slip"}
    said = {"kind": "looked", "data": {"positions": [], "note": "mud"}}
    for number, (what, event, kind, data) in enumerate(
        (
            ("taken back", fitted, "corrected", {**slip, "seq": fitted["seq"]}),
            ("put right", looked, "put_right", {**slip, "seq": looked["seq"], "entry": said}),
        )
    ):
        with closing(DataFolder(root).open()) as db:
            head, last = events.head(db, DEVICE), events.last_n(db)
        entry = entry_after(
            [{"hash": head.hash}], DEVICE, kind=kind, data=data, job=event["job"], seq=head.seq + 1
        )
        other = Other(phone_at(app, root, f"d00000000000000b{number}"), last)
        other.start()
        took = []
        for ask in (
            lambda entry=entry, last=last: phone.sync([entry], last),
            lambda event=event: phone.get(f"/api/jobs/{event['job']}"),
            lambda event=event: phone.get(f"/api/jobs/{event['job']}"),
        ):
            begun = time.perf_counter()
            answer = ask()
            took.append(time.perf_counter() - begun)
            assert answer.status_code == 200, answer.data
        other.stop()
        print(
            f"  entry {event['seq']} {what}: sync {took[0]:.2f} s, next look at the job {took[1]:.2f} s, one "
            f"more {took[2]:.2f} s; another phone's syncs meanwhile {len(other.waits)}, median "
            f"{statistics.median(other.waits) * 1000:.0f} ms, longest {max(other.waits):.2f} s; "
            f"goal {GOAL_S} s",
            flush=True,
        )


def look_up(roots: list[Path], counts: list[int]) -> None:
    """Prints how long a job and a unit take to open with a short and with a long log, asked in turn."""
    dice = random.Random(7)
    phones = [phone_at(create_app(Config(root, BASE)), root, "d00000000000000c1") for root in roots]
    names = []
    for root in roots:
        with closing(DataFolder(root).open()) as db:
            jobs = [job for (job,) in db.conn.execute("SELECT job FROM job_list WHERE closed ORDER BY job")]
            units = [unit for (unit,) in db.conn.execute("SELECT DISTINCT unit FROM event_units")]
        names.append({"jobs": jobs, "units": units})
    taken: dict[str, tuple[list[float], list[float]]] = {"jobs": ([], []), "units": ([], [])}
    for _ in range(QUESTIONS):
        for what, times in taken.items():
            for which, phone in enumerate(phones):
                with Clock() as clock:
                    answer = phone.get(f"/api/{what}/{dice.choice(names[which][what])}")
                assert answer.status_code == 200, answer.data
                times[which].append(clock.cpu * 1000)
    for what, name in (("jobs", "job open"), ("units", "unit look-up")):
        before, after = (statistics.median(each) for each in taken[what])
        print(
            f"  {name:13} {before:7.2f} ms with {counts[0]:,}, {after:7.2f} ms with {counts[1]:,}: "
            f"{after / before:.2f} times; goal {GOAL_RATIO}"
        )


def main() -> None:
    """Measures and prints."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--short", type=int, default=10_000)
    parser.add_argument("--long", type=int, default=1_000_000)
    parser.add_argument("--keep", type=Path, help="where the two data folders are kept")
    asked_for = parser.parse_args()
    counts = [asked_for.short, asked_for.long]
    with tempfile.TemporaryDirectory() as scratch:
        keep = asked_for.keep or Path(scratch) / "made"
        roots = [copied(prepared(keep / str(count), count), Path(scratch)) for count in counts]
        print("questions")
        look_up(roots, counts)
        print("an old correction")
        old_correction(roots[1])


if __name__ == "__main__":
    main()
