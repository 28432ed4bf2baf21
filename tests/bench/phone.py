"""What a long log costs on a phone: pairing with it, each start, memory.

    python -m tests.bench.phone                      logs of 0, 10,000 and 50,000 entries
    python -m tests.bench.phone --entries 10000      one of them
    python -m tests.bench.phone --times 9            the middle of so many starts (5)

A server holds the log of one device (tests/bench/workload.py). A phone pairs with it: until its list
stands, and until it has everything. Then its browser starts anew without a network: until the list of
all jobs can be tapped, from the snapshot of the run before. Memory is that of the renderer process a
while after the list stood: what is its own (private), and what the system counts for it (resident),
most of which every page of the browser shares. The first start has no snapshot and folds everything; then and
after the pairing it is waited until there is a whole one, for all starts between are from it.
Goals stand beside the figures; nothing is asserted.
"""

import argparse
import json
import os
import statistics
import sys
import tempfile
import time
from contextlib import contextmanager
from pathlib import Path

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.phones.pairing import make_link
from server.storage import DataFolder
from server.web.shell import find_static
from tests.bench.reasoning import spent_ms
from tests.bench.workload import Workload
from tests.browser_support import launch_profile
from tests.browser_support import wait_until
from tests.server.phone import BASE
from tests.server.phone import Phone
from tests.static.app_server import AppServer

BATCH = 200
DEVICE = "d00000000000000aa"
SIZES = (0, 10_000, 50_000)
START_GOAL, PAIRING_GOAL, MEMORY_GOAL_MB = 1.5, 5.0, 120
SETTLED_MS = 6000

_LIST = """(() => {
  if (window !== top || location.protocol !== 'http:') return;
  const look = () => {
    const whole = document.querySelectorAll('#app .job-list a').length >= JOBS;
    const main = document.querySelector('#app .main-button');
    const ready = main && !document.querySelector('#app[inert], #app [inert]');
    if (whole && ready) requestAnimationFrame(() => { window.listed = performance.now(); });
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
})()"""
_HAS_SNAPSHOT = """async (entries) => {
  const all = await indexedDB.databases();
  if (!all.some(({ name }) => name === 'swaptrail-folded')) return false;
  const db = await new Promise((resolve, reject) => {
    const asked = indexedDB.open('swaptrail-folded');
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = reject;
  });
  const kept = await new Promise((resolve) => {
    const asked = db.transaction('head').objectStore('head').get('head');
    asked.onsuccess = () => resolve(asked.result);
  });
  db.close();
  return kept?.position.count >= entries;
}"""
_TAKEN = "() => navigator.serviceWorker.getRegistration().then((r) => Boolean(r?.active))"
_DROP_SNAPSHOT = """() => new Promise((resolve) => {
  const asked = indexedDB.deleteDatabase('swaptrail-folded');
  asked.onsuccess = asked.onerror = () => resolve();
})"""


def fill(data: Path, entries: list) -> None:
    """Put a log on a server as the device that recorded it does."""
    app = create_app(Config(data, BASE))
    phone = Phone(app, DEVICE)
    db = DataFolder(data).open()
    phone.pair_by(make_link(db, BASE, now_ms()))
    db.close()
    phone.ask_session()
    cursor = 0
    for at in range(0, len(entries), BATCH):
        body = {"app": "b", "v": 1, "device": DEVICE, "cursor": cursor, "events": entries[at : at + BATCH]}
        answer = phone.write("POST", "/api/sync", data=json.dumps(body).encode())
        cursor = answer.get_json()["cursor"]


@contextmanager
def phone_on(profile: Path, jobs: int):
    """Start a phone whose page notes when the list of so many jobs can be tapped."""
    context = launch_profile(profile, is_mobile=True, has_touch=True)
    try:
        page = context.pages[0]
        page.add_init_script(_LIST.replace("JOBS", str(jobs)))
        yield page
    finally:
        context.close()


def renderer_memory(profile: Path) -> tuple[int, int]:
    """Return (private, resident) bytes of the largest renderer of the browser that runs on a profile."""
    parents, renderers, roots = {}, [], set()
    for entry in Path("/proc").iterdir():
        if not entry.name.isdigit():
            continue
        try:
            line = (entry / "cmdline").read_bytes().replace(b"\0", b" ").decode(errors="replace")
            parents[entry.name] = (entry / "stat").read_text().rpartition(")")[2].split()[1]
        except OSError:
            continue
        if f"--user-data-dir={profile}" in line and "--type=" not in line:
            roots.add(entry.name)
        if "--type=renderer" in line:
            renderers.append(entry.name)
    return max((_sizes(pid) for pid in renderers if _under(pid, roots, parents)), default=(0, 0))


def _under(pid: str, roots: set, parents: dict) -> bool:
    while pid in parents:
        if pid in roots:
            return True
        pid = parents[pid]
    return False


def _sizes(pid: str) -> tuple[int, int]:
    found = {}
    try:
        for line in Path(f"/proc/{pid}/smaps_rollup").read_text().splitlines()[1:]:
            name, _, rest = line.partition(":")
            found[name] = int(rest.split()[0]) * 1024
    except OSError:
        return 0, 0
    return found["Private_Clean"] + found["Private_Dirty"], found["Rss"]


def measure(entries: int, times: int) -> None:
    """Print the figures of a log of so many entries."""
    work = Workload(DEVICE)
    log = work.entries(entries) if entries else []
    jobs = len({entry["event"]["job"] for entry in log} - {None})
    with tempfile.TemporaryDirectory(prefix="swaptrail-bench-") as folder:
        data, profile = Path(folder) / "data", Path(folder) / "profile"
        if entries:
            fill(data, log)
        server = AppServer(data, find_static())
        try:
            _measured(server, profile, entries, jobs, times)
        finally:
            server.close()


def _measured(server, profile, entries, jobs, times):
    print(f"{entries:,} entries, {jobs} jobs; load {os.getloadavg()[0]:.1f}", flush=True)
    with phone_on(profile, jobs) as page:
        page.goto(server.link())
        page.get_by_label("Your name").fill("Mara")
        begun, spent = time.perf_counter(), spent_ms(os.getpid())
        page.get_by_role("button", name="Pair this phone").tap()
        page.get_by_role("button", name="Open a job").wait_for(timeout=600_000)
        usable = time.perf_counter() - begun
        wait_until(page, "() => window.listed > 0", seconds=600)
        page.locator(".pill", has_text="all sent").wait_for(timeout=600_000)
        whole = time.perf_counter() - begun
        print(f"    pairing to a list {usable:.2f} s", flush=True)
        whole_s = f"{whole:.2f} s (goal {PAIRING_GOAL:.1f} s), {_spent_s(spent):.2f} s of processor"
        print(f"    pairing to the whole list {whole_s}", flush=True)
        wait_until(page, _TAKEN, seconds=120)
        _settle(page, entries)
        _tell_memory("after pairing", profile)
    starts = [_start(server, profile, jobs, entries) for _ in range(times)]
    told = f"{statistics.median(starts):.2f} s, at best {min(starts):.2f} s (goal {START_GOAL:.1f} s)"
    print(f"    start to list {told}", flush=True)
    if entries:
        with phone_on(profile, jobs) as page:
            page.goto(f"{server.base}/api/ping")
            page.evaluate(_DROP_SNAPSHOT)
        first = _start(server, profile, jobs, entries, say="after it")
        print(f"    first start {first:.2f} s", flush=True)


def _settle(page, entries):
    if entries:
        ends = time.monotonic() + 300
        while not page.evaluate(_HAS_SNAPSHOT, entries):  # reads all of it, so it is asked seldom
            if time.monotonic() > ends:
                raise AssertionError("no whole snapshot after 300 seconds")
            page.wait_for_timeout(1000)
    page.wait_for_timeout(SETTLED_MS)


def _start(server, profile, jobs, entries, say=""):
    with phone_on(profile, jobs) as page:
        page.wait_for_timeout(1000)
        page.context.set_offline(True)
        spent = spent_ms(os.getpid())
        page.goto(f"{server.base}/", wait_until="commit")
        wait_until(page, "() => window.listed > 0", seconds=300)
        listed = page.evaluate("window.listed") / 1000
        told = f"start {listed:.2f} s, {_spent_s(spent):.2f} s of processor,"
        begun = time.perf_counter()
        _settle(page, entries)
        if say:
            later = time.perf_counter() - begun - SETTLED_MS / 1000
            print(f"    its snapshot stood {later:.1f} s later", flush=True)
        _tell_memory(say or told, profile)
        return listed


def _spent_s(since: float) -> float:
    """Return seconds of processor time of the browser, which a busy machine stretches less."""
    return (spent_ms(os.getpid()) - since) / 1000


def _tell_memory(when, profile):
    private, resident = renderer_memory(profile)
    megabytes = f"{private / 1e6:.0f} MB private (goal {MEMORY_GOAL_MB}), {resident / 1e6:.0f} MB resident"
    print(f"    {when}: renderer {megabytes}", flush=True)


def main() -> int:
    """Print the figures beside their goals."""
    parser = argparse.ArgumentParser(description="what a long log costs on a phone")
    parser.add_argument("--entries", type=int, action="append", metavar="N")
    parser.add_argument("--times", type=int, default=5, metavar="N")
    asked = parser.parse_args()
    for entries in asked.entries or SIZES:
        measure(entries, asked.times)
    print(f"load of the machine after: {os.getloadavg()[0]:.1f}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
