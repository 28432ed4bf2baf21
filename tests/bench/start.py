"""How soon the app can be used: the first visit over weak lines, and each start without a network.

    python -m tests.bench.start                    on a wheel, built here
    python -m tests.bench.start --checkout         on the files as they lie in static/
    python -m tests.bench.start --times 9          the middle of so many tries (5)

The first visit is a stranger's, at the front page. It is usable once the screen stands and its main button
can be tapped. The start without a network is that of a paired phone, at a job of the demo, its browser
started anew each time: content is the first paint with words of the job, usable is when its step can be
tapped. Bytes are those of the line, head lines included. Goals stand beside the figures; nothing is asserted.
"""

import argparse
import os
import socket
import statistics
import sys
import tempfile
import threading
from contextlib import contextmanager
from pathlib import Path

from cheroot import wsgi

import demo_db
from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.phones.pairing import make_link
from server.storage import DataFolder
from server.web.shell import find_static
from tests.bench.weak_line import Line
from tests.bench.weak_line import WeakLine
from tests.browser_support import launch_profile
from tests.browser_support import wait_until

FREE = Line(0.0, 1e9)
LINES = (
    (Line(0.150, 1.6e6), 4.0),
    (Line(0.300, 0.7e6), 8.0),
)
# (how much slower the processor is, goal for content, goal for usable), in seconds
STARTS = ((1, 0.25, 0.7), (4, 0.5, 1.2))
MOST_BYTES, MOST_REQUESTS = 900_000, 40

# Looks at each frame; what holds before a frame is on the screen with it.
_WATCH = """(() => {
  if (window !== top || location.protocol !== 'http:') return;
  const seen = window.seen = {};
  const tests = {
    content: () => document.querySelector('#app main')?.innerText.trim().length > 40,
    usable: () => document.querySelector('#app [data-step], #app .main-button') &&
      !document.querySelector('#app [inert], #app[inert], .main-button[disabled]'),
  };
  const look = () => {
    for (const [name, holds] of Object.entries(tests)) {
      if (seen[name] === undefined && holds()) {
        seen[name] = -1;
        requestAnimationFrame(() => { seen[name] = performance.now(); });
      }
    }
    if (!(seen.usable > 0)) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
})()"""
_USABLE = "() => window.seen?.usable > 0 && window.seen.content > 0"
_TAKEN = "() => navigator.serviceWorker.getRegistration().then((r) => Boolean(r?.active))"


class Counted:
    """The app on a port of its own behind a line."""

    def __init__(self, data: Path, static: Path, line: Line = FREE):
        """Serve; `base` is the address at this end of the line."""
        front, back = _free_port(), _free_port()
        self.base = f"http://localhost:{front}"
        self.data = data
        self.requests: list[str] = []
        self._app = create_app(Config(data, self.base, static))
        self._server = wsgi.Server(("127.0.0.1", back), self._answer, numthreads=12)
        self._server.prepare()
        threading.Thread(target=self._server.serve, daemon=True).start()
        self.line = WeakLine(front, back, line)

    def close(self) -> None:
        """Go off the line."""
        self.line.close()
        self._server.stop()

    def link(self) -> str:
        """Return a pairing link."""
        db = DataFolder(self.data).open()
        try:
            return make_link(db, self.base, now_ms())
        finally:
            db.close()

    def _answer(self, environ, start_response):
        self.requests.append(environ["PATH_INFO"])
        return self._app(environ, start_response)


@contextmanager
def serving(static: Path, line: Line = FREE, *, demo: bool = False):
    """Serve an app, for the demo scenario or for a data folder without anything in it."""
    with tempfile.TemporaryDirectory(prefix="swaptrail-bench-") as folder:
        data = Path(folder)
        server = Counted(data, static, line)
        if demo:
            demo_db.build(data, server.base)
        try:
            yield server
        finally:
            server.close()


@contextmanager
def phone(profile: Path, slower: int = 1):
    """Start a browser as a phone; its page notes when it can be used."""
    context = launch_profile(profile, is_mobile=True, has_touch=True)
    try:
        page = context.pages[0]
        page.add_init_script(_WATCH)
        if slower > 1:
            context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": slower})
        yield page
    finally:
        context.close()


def first_visit(static: Path, line: Line) -> tuple[float, float, int, int]:
    """Return seconds to content and to usable; bytes and requests until the app is on the phone."""
    with serving(static, line) as server, tempfile.TemporaryDirectory() as profile:
        with phone(Path(profile)) as page:
            page.goto(server.base, wait_until="commit", timeout=120_000)
            wait_until(page, _USABLE, seconds=120)
            content, usable = page.evaluate("[seen.content, seen.usable]")
            wait_until(page, _TAKEN, seconds=120)
            page.wait_for_timeout(500)
        return content / 1000, usable / 1000, server.line.down_bytes, len(server.requests)


def starts(static: Path, times: int) -> dict[int, list[tuple[float, float]]]:
    """Return content and usable of each start of a job without a network, by slowness."""
    taken: dict[int, list[tuple[float, float]]] = {slower: [] for slower, _, _ in STARTS}
    with serving(static, demo=True) as server, tempfile.TemporaryDirectory() as folder:
        profile = Path(folder)
        with phone(profile) as page:
            page.goto(server.link())
            page.get_by_label("Your name").fill("Mara")
            page.get_by_role("button", name="Pair this phone").tap()
            page.locator(".pill", has_text="all sent").wait_for(timeout=60_000)
            wait_until(page, _TAKEN, seconds=60)
            page.locator("a.list-row[href*='#/job/']").first.tap()
            page.locator("[data-step]").wait_for()
            page.wait_for_timeout(1500)
            address = page.url
        for _ in range(times):
            for slower in taken:
                with phone(profile, slower) as page:
                    page.wait_for_timeout(1000)
                    page.context.set_offline(True)
                    page.goto(address, wait_until="commit")
                    wait_until(page, _USABLE, seconds=30)
                    content, usable = page.evaluate("[seen.content, seen.usable]")
                    taken[slower].append((content / 1000, usable / 1000))
    return taken


def main() -> int:
    """Print the figures beside their goals."""
    parser = argparse.ArgumentParser(description="how soon the app can be used")
    parser.add_argument("--checkout", action="store_true", help="the files of static/, not a wheel")
    parser.add_argument("--times", type=int, default=5, metavar="N")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory(prefix="swaptrail-wheel-") as folder:
        static = find_static() if asked.checkout else _built(Path(folder))
        print(f"load of the machine before: {os.getloadavg()[0]:.1f}", flush=True)
        _, _, size, requests = first_visit(static, FREE)
        print(
            f"first visit: {size:,} bytes (goal {MOST_BYTES:,}), {requests} requests (goal {MOST_REQUESTS})"
        )
        for line, goal in LINES:
            tries = [first_visit(static, line)[:2] for _ in range(asked.times)]
            where = f"at {line.round_trip_s * 1000:.0f} ms and {line.bits_per_s / 1e6:.1f} Mbit/s"
            print(f"first visit {where}: usable {_told([u for _, u in tries], goal)}", flush=True)
        for slower, of in starts(static, asked.times).items():
            _, content, usable = next(start for start in STARTS if start[0] == slower)
            print(f"start without a network, processor {slower} times slower:")
            print(f"    content {_told([c for c, _ in of], content)}")
            print(f"    usable  {_told([u for _, u in of], usable)}", flush=True)
        print(f"load of the machine after: {os.getloadavg()[0]:.1f}")
    return 0


def _built(folder: Path) -> Path:
    from tests.wheels import built

    return built().app


def _told(seconds: list[float], goal: float) -> str:
    middle, best = statistics.median(seconds), min(seconds)
    return f"{middle:.2f} s, at best {best:.2f} s (goal {goal:.2f} s)"


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


if __name__ == "__main__":
    sys.exit(main())
