"""What many slow clients cost an honest phone: its sync beside them, and without them.

    python -m tests.bench.slow_clients [--clients N] [--syncs N] [--plain]

A server of its own on loopback, over TLS unless --plain. The clients run in a process of their own:
each drips the head of a request, a byte at a time, and comes again when it is put out. The phone opens a
new connection for each sync, shakes hands, sends entries and reads the answer. Times on the clock.
"""

import argparse
import http.client
import multiprocessing
import os
import signal
import statistics
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from contextlib import suppress
from pathlib import Path

from server.clock import now_ms
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.server.certificates import make_pair
from tests.server.phone import JOB
from tests.server.real_server import ROOT
from tests.server.real_server import RealPhone
from tests.server.real_server import free_port
from tests.server.serving.connections.client import GET
from tests.server.serving.connections.client import Client
from tests.server.serving.connections.client import trusting

GOAL = 2.0
ENTRIES = 5


class SecurePhone(RealPhone):
    """A phone that comes over TLS, unless it trusts no file."""

    cafile: Path | None = None

    def connection(self):
        if self.cafile is None:
            return super().connection()
        context = trusting(self.cafile)
        return http.client.HTTPSConnection("localhost", self.port, timeout=30, context=context)


def served(folder: Path, port: int, secure: bool) -> tuple[subprocess.Popen, Path | None]:
    """Starts a server and waits until it answers; returns it and what to trust."""
    own = make_pair(folder)
    way = ["--cert", own.cert, "--key", own.key, "--bind", "127.0.0.1"] if secure else []
    command = [
        sys.executable,
        "-m",
        "server.commands.cli",
        "serve",
        "--host",
        "localhost",
        "--port",
        str(port),
    ]
    process = subprocess.Popen(
        [*command, "--data", folder / "shop", *way], cwd=ROOT, stdout=subprocess.PIPE, text=True
    )
    assert process.stdout
    for line in process.stdout:
        if "Ctrl-C ends it" in line:
            break
    return process, own.cert if secure else None


def paired(folder: Path, port: int, cafile: Path | None) -> RealPhone:
    """Returns a paired phone."""
    phone = SecurePhone(port, "d00000000000000aa")
    phone.cafile = cafile
    scheme = "https" if cafile else "http"
    with closing(DataFolder(folder / "shop").open()) as db:
        token = make_link(db, f"{scheme}://localhost:{port}", now_ms()).partition("#")[2]
    phone.ask_session()
    status, answer = phone.send("POST", "/api/pair", {"token": token, "device": phone.device, "name": "Mara"})
    assert status == 200, answer
    phone.ask_session()
    return phone


def syncs(phone: RealPhone, number: int) -> list[float]:
    """Returns how long each of so many syncs took, in seconds."""
    took = []
    for _ in range(number):
        for _ in range(ENTRIES):
            phone.record("walk_checked", {"positions": [], "missed": []}, JOB)
        begun = time.perf_counter()
        status, answer = phone.sync(cursor=10**6)
        took.append(time.perf_counter() - begun)
        assert status == 200, answer
    return took


def drip(port: int, cafile: Path | None, number: int, pause: float) -> None:
    """Drips from so many connections at once, without end; elsewhere than the server, so it yields to it."""
    os.nice(19)
    clients: list = [None] * number
    at = 0
    while True:
        for index in range(number):
            try:
                clients[index] = clients[index] or Client(port, cafile)
                clients[index].send(GET[at % 20 : at % 20 + 1])
            except OSError:
                with suppress(OSError, AttributeError):
                    clients[index].close()
                clients[index] = None
        at += 1
        time.sleep(pause)


def cpu_of(process: int) -> float:
    """Returns the seconds that a process has worked (proc(5), fields 14 and 15)."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def main() -> None:
    """Prints the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--clients", type=int, default=200)
    parser.add_argument("--syncs", type=int, default=60)
    parser.add_argument("--pause", type=float, default=0.1, help="seconds between two bytes")
    parser.add_argument("--plain", action="store_true")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder, port = Path(name), free_port()
        process, cafile = served(folder, port, not asked.plain)
        dripping = multiprocessing.get_context("spawn").Process(
            target=drip, args=(port, cafile, asked.clients, asked.pause), daemon=True
        )
        try:
            phone = paired(folder, port, cafile)
            syncs(phone, 10)
            quiet = syncs(phone, asked.syncs)
            dripping.start()
            time.sleep(5)
            begun, worked = time.monotonic(), cpu_of(process.pid)
            beside = syncs(phone, asked.syncs)
            share = (cpu_of(process.pid) - worked) / (time.monotonic() - begun)
            dripping.kill()
            after = syncs(phone, asked.syncs)
        finally:
            dripping.kill()
            process.send_signal(signal.SIGTERM)
            process.wait(timeout=30)
    for words, took in (("quiet", quiet), ("beside them", beside), ("quiet again", after)):
        print(
            f"{words:12} median {1000 * statistics.median(took):7.1f} ms, "
            f"worst {1000 * max(took):7.1f} ms of {len(took)} syncs"
        )
    print(f"the server was at work {share:.0%} of that time, the phone's syncs included")
    ratio = statistics.median(beside) / statistics.median(quiet + after)
    print(f"{asked.clients} dripping clients: {ratio:.2f} times the quiet time (goal: at most {GOAL:.0f})")


if __name__ == "__main__":
    main()
