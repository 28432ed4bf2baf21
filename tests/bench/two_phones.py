"""How soon a phone shows what another one records, and what fifty phones that wait for it cost the server.

    python -m tests.bench.two_phones [--entries N]          two real browsers on one job
    python -m tests.bench.two_phones --phones 50 [--seconds N] [--jobs N] [--every N]

Two browsers: from the tap on one phone to the words on the other, by the clock of their machine. Phones
without a browser: a server in this process; each phone asks for news as the app does, syncs when there are,
and records an entry now and then. What is counted: requests a second, workers that are busy, how long an
entry takes to the phones at its job and to the others. `--clock` has them sync by the clock instead, as
before there was news. Figures, never asserted.
"""

import argparse
import http.client
import random
import statistics
import tempfile
import threading
import time
from contextlib import closing
from contextlib import contextmanager
from pathlib import Path

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.phones.pairing import make_link
from server.serving.connections import HttpServer
from server.serving.connections.server import THREADS
from server.storage import DataFolder
from tests.browser.mechanic import Mechanic
from tests.browser.phone import Phone
from tests.browser.test_main_job import new_link
from tests.browser_support import ROOT
from tests.browser_support import start_server
from tests.browser_support import wait_until
from tests.ports import free_port
from tests.server.conftest import SMALL_APP
from tests.server.phone import job_opened
from tests.server.real_server import RealPhone

GOAL_SECONDS = 3.0
LEAST_PAUSE = 0.3  # seconds between two questions for news, as in the app
CALM = 60.0  # seconds between two syncs without news, half as much more or less
_HEAD = ".card h2"
_LISTEN = """(head) => {
  window.shownAt = [];
  let before = document.querySelector(head).textContent;
  new MutationObserver(() => {
    const now = document.querySelector(head)?.textContent ?? before;
    if (now !== before) { before = now; window.shownAt.push(Date.now()); }
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
}"""
_TAPS = """() => {
  window.tappedAt = [];
  addEventListener('click', () => window.tappedAt.push(Date.now()), true);
}"""


def told(name: str, seconds: list[float]) -> str:
    """Return the median and the worst of some times."""
    if not seconds:
        return f"{name:28} none"
    ordered = sorted(seconds)
    ninth = ordered[len(ordered) * 9 // 10]
    return (
        f"{name:28} median {statistics.median(ordered):6.2f} s, nine of ten {ninth:6.2f} s, "
        f"worst {ordered[-1]:6.2f} s of {len(ordered)}"
    )


def two_browsers(entries: int) -> None:
    """Print how long an entry takes from one phone to the screen of the other."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        server = start_server(folder / "data", free_port(), ROOT)
        mara = ben = None
        try:
            mara = Phone(folder / "mara", server.base)
            mara.visit(server.link)
            mara.page.locator(".pill").tap()
            link = new_link(mara)
            ben = Phone(folder / "ben", server.base)
            ben.visit(link, name="Ben")
            mara.page.goto(server.base)
            Mechanic(mara).opens_a_job()
            ben.see("Blue estate")
            address = mara.page.url + "/assumptions"
            for phone in (mara, ben):
                phone.page.goto(address)
                phone.page.locator(_HEAD).first.wait_for()
            ben.page.evaluate(_LISTEN, _HEAD)
            mara.page.evaluate(_TAPS)
            for number in range(entries):
                mara.page.locator(".card .small-button").first.tap()
                wait_until(ben.page, "(n) => window.shownAt.length > n", number, seconds=120)
                mara.page.wait_for_timeout(random.Random(number).randrange(300, 2500))
            tapped = mara.page.evaluate("window.tappedAt")
            shown = ben.page.evaluate("window.shownAt")
        finally:
            for phone in (mara, ben):
                if phone:
                    phone.close()
            server.stop()
    took = [(seen - tap) / 1000 for tap, seen in zip(tapped, shown, strict=True)]
    print(told("from tap to the other screen", took), f"(goal: {GOAL_SECONDS:.0f} s)")


class Figures:
    """What is counted while the phones are at it; safe for their threads."""

    def __init__(self):
        self.lock = threading.Lock()
        self.recorded: dict[str, tuple[float, str]] = {}
        self.at_job: list[float] = []
        self.elsewhere: list[float] = []
        self.requests = {"/api/news": 0, "/api/sync": 0}
        self.busy: list[int] = []

    def asked(self, path: str) -> None:
        """Count a request."""
        with self.lock:
            self.requests[path] += 1

    def seen(self, digest: str, job: str) -> None:
        """Note that a phone at `job` has an entry."""
        with self.lock:
            if digest in self.recorded:
                at, whose = self.recorded[digest]
                (self.at_job if whose == job else self.elsewhere).append(time.monotonic() - at)


class Looker:
    """A phone at a job, without a browser: asks, syncs, records."""

    def __init__(self, phone: RealPhone, number: int, job: str, figures: Figures, every: float):
        self.phone, self.number, self.job, self.figures, self.every = phone, number, job, figures, every
        self.cursor = 0
        self.lock = threading.Lock()  # one sync at a time, as in the app
        self.dice = random.Random(number)

    def sync(self) -> None:
        """Send what is new here, and fetch."""
        with self.lock:
            more = True
            while more:
                self.figures.asked("/api/sync")
                _, answer = self.phone.sync(self.cursor)
                self.cursor, more = answer["cursor"], answer["more"]
                for each in answer["events"]:
                    if each["event"]["device"] != self.phone.device:
                        self.figures.seen(each["hash"], self.job)

    def record(self) -> None:
        """Record an entry at the job and send it."""
        with self.lock:
            self.phone.record("walk_checked", {"positions": [], "missed": []}, self.job)
            with self.figures.lock:
                self.figures.recorded[self.phone.entries[-1]["hash"]] = (time.monotonic(), self.job)
        self.sync()

    def listen(self, until: float) -> None:
        """Ask for news until then."""
        stamp, window = "", f"{self.number:08x}"
        asked = 0.0
        while time.monotonic() < until:
            time.sleep(max(0.0, asked + LEAST_PAUSE - time.monotonic()))
            asked = time.monotonic()
            self.figures.asked("/api/news")
            at = {"job": self.job, "doing": "test", "positions": []}
            question = {"v": 1, "window": window, "at": at, "cursor": self.cursor, "stamp": stamp}
            try:
                _, reply = self.phone.send("POST", "/api/news", question)
            except (OSError, http.client.HTTPException):
                return  # the server has ended
            stamp = reply["stamp"]
            if reply["entries"] > self.cursor:
                self.sync()
            time.sleep(reply["pause"])

    def by_the_clock(self, until: float) -> None:
        """Sync every minute or so until then."""
        while (wait := CALM * (0.5 + self.dice.random())) + time.monotonic() < until:
            time.sleep(wait)
            self.sync()

    def works(self, until: float) -> None:
        """Record now and then until then."""
        while (wait := self.every * (0.5 + self.dice.random())) + time.monotonic() < until:
            time.sleep(wait)
            self.record()


@contextmanager
def served(folder: Path):
    """Serve a small app in this process; give the server and its port."""
    for name, text in SMALL_APP.items():
        (folder / "static" / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / "static" / name).write_text(text)
    port = free_port()
    app = create_app(Config(folder / "data", f"http://localhost:{port}", folder / "static"))
    server = HttpServer(("127.0.0.1", port), app)
    server.prepare()
    thread = threading.Thread(target=server.serve)
    thread.start()
    try:
        yield server, port
    finally:
        server.stop()
        thread.join()


def paired(folder: Path, port: int, number: int) -> RealPhone:
    """Return a paired phone."""
    phone = RealPhone(port, f"d{number + 1:016x}")
    with closing(DataFolder(folder / "data").open()) as db:
        token = make_link(db, f"http://localhost:{port}", now_ms()).partition("#")[2]
    phone.ask_session()
    phone.send("POST", "/api/pair", {"token": token, "device": phone.device, "name": f"Phone {number}"})
    phone.ask_session()
    return phone


def many_phones(count: int, seconds: float, jobs: int, every: float, clock: bool) -> None:
    """Print what `count` phones at `jobs` jobs cost, each of which records an entry every so many seconds."""
    figures = Figures()
    with tempfile.TemporaryDirectory() as name, served(Path(name)) as (server, port):
        lookers = [
            Looker(paired(Path(name), port, n), n, f"j{n % jobs:012x}", figures, every) for n in range(count)
        ]
        for looker in lookers[:jobs]:
            looker.phone.record("job_opened", job_opened(), looker.job)
            looker.sync()
        for looker in lookers:
            looker.sync()
        figures.requests = dict.fromkeys(figures.requests, 0)
        begun, worked = time.monotonic(), time.process_time()
        until = begun + seconds
        threads = [
            threading.Thread(target=what, args=(until,), daemon=True)
            for looker in lookers
            for what in (looker.by_the_clock if clock else looker.listen, looker.works)
        ]
        for thread in threads:
            thread.start()
        workers = server._server.requests
        while time.monotonic() < until:
            figures.busy.append(THREADS - workers.idle)
            time.sleep(0.02)
        spent = (time.process_time() - worked) / (time.monotonic() - begun)
        print(f"{count} phones at {jobs} jobs, each an entry every {every:.0f} s, for {seconds:.0f} s")
        for path, number in figures.requests.items():
            print(f"{path:28} {number / seconds:6.1f} a second")
        busy = statistics.mean(figures.busy)
        print(f"{'workers busy':28} {busy:6.2f} on average, most {max(figures.busy)} of {THREADS}")
        print(f"{'processor':28} {spent:6.0%}, the phones' own share included")
        print(told("an entry to its job", figures.at_job))
        print(told("an entry to the others", figures.elsewhere))


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--entries", type=int, default=30)
    parser.add_argument("--phones", type=int, default=0)
    parser.add_argument("--jobs", type=int, default=25)
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--every", type=float, default=20)
    parser.add_argument("--clock", action="store_true")
    asked = parser.parse_args()
    if asked.phones:
        many_phones(asked.phones, asked.seconds, asked.jobs, asked.every, asked.clock)
    else:
        two_browsers(asked.entries)


if __name__ == "__main__":
    main()
