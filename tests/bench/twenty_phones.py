"""Twenty phones that send without a pause, beside an earlier build: entries a second, time of a sync.

Beside them what a sync costs the server's processor, which says more on a machine that has other work.

    python -m tests.bench.twenty_phones [--beside CHECKOUT] [--phones N] [--seconds S] [--rounds N]

Each phone sends five entries of its own job, fetches what the others sent, and begins anew. The server runs
in a process of its own, on an empty data folder. With `--beside` the same is done in turn by the code of
another checkout, whose own test phones send as it wants them to: these here sign all. Goals stand beside the
figures; nothing is asserted.
"""

import argparse
import json
import os
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

from tests.server.phone import job_opened
from tests.server.real_server import RealPhone
from tests.server.real_server import RealServer

try:
    from tests.server.signed_phone import Key
except ImportError:  # a checkout from before phones had keys
    Key = None

ENTRIES = 5
GOAL_THROUGHPUT, GOAL_SLOWEST = 0.9, 1.2
HERE = Path(__file__).resolve()


class Worker(threading.Thread):
    """A phone that sends until its time is over."""

    def __init__(self, phone: RealPhone, number: int):
        super().__init__()
        self.phone, self.job = phone, f"j{number:012x}"
        self.phone.key = Key() if Key else None
        self.until = 0.0
        self.waits: list[float] = []
        self.phone.record("job_opened", job_opened(), self.job)

    def run(self) -> None:
        cursor = 0
        while time.monotonic() < self.until:
            for _ in range(ENTRIES):
                self.phone.record("walk_checked", {"positions": [], "missed": []}, self.job)
            begun = time.monotonic()
            status, answer = self.phone.sync(cursor)
            assert status == 200, answer
            self.waits.append(time.monotonic() - begun)
            cursor = int(answer["cursor"])


def measured(phones: int, seconds: float) -> dict[str, float]:
    """Returns what the server of the code at hand does: entries a second, and seconds of a sync."""
    with tempfile.TemporaryDirectory() as folder:
        server = RealServer(Path(folder) / "data").start()
        try:
            workers = [Worker(server.phone(f"d{n + 1:016x}"), n) for n in range(phones)]
            begun, used = time.monotonic(), _processor_seconds(server.process.pid)
            for worker in workers:
                worker.until = begun + seconds
                worker.start()
            for worker in workers:
                worker.join()
            spent = time.monotonic() - begun
            processor = _processor_seconds(server.process.pid) - used
        finally:
            server.end()
    waits = [wait for worker in workers for wait in worker.waits]
    return {
        "rate": sum(worker.phone.acknowledged for worker in workers) / spent,
        "median": statistics.median(waits),
        "slowest": statistics.quantiles(waits, n=100)[98],
        "processor": processor / len(waits),
    }


def _processor_seconds(process: int) -> float:
    """Returns what a process has used of the processor since it began."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def by_checkout(root: Path, phones: int, seconds: float) -> dict[str, float]:
    """Returns what the code of a checkout does; this file is run on its modules."""
    # -P: what else lies beside this file is not to be found before the modules of that name.
    command = [sys.executable, "-P", str(HERE), "--figures", "--phones", str(phones)]
    answer = subprocess.run(
        [*command, "--seconds", str(seconds)],
        cwd=root,
        env={**os.environ, "PYTHONPATH": str(root)},
        stdout=subprocess.PIPE,
        text=True,
        check=True,
    )
    figures: dict[str, float] = json.loads(answer.stdout.splitlines()[-1])
    return figures


def main() -> None:
    """Measures and prints."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--beside", type=Path, help="a checkout of an earlier build")
    parser.add_argument("--phones", type=int, default=20)
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--rounds", type=int, default=2)
    parser.add_argument("--figures", action="store_true", help="measure the code at hand once, print JSON")
    asked = parser.parse_args()
    if asked.figures:
        print(json.dumps(measured(asked.phones, asked.seconds)))
        return
    roots = [HERE.parents[2], *([asked.beside.resolve()] if asked.beside else [])]
    rounds = []
    for _ in range(asked.rounds):
        rounds.append([by_checkout(root, asked.phones, asked.seconds) for root in roots])
        for root, figures in zip(roots, rounds[-1], strict=True):
            print(
                f"  {root}: {figures['rate']:6.0f} entries/s; a sync {figures['median'] * 1000:4.0f} ms, "
                f"99th percentile {figures['slowest'] * 1000:4.0f} ms, "
                f"processor {figures['processor'] * 1000:.1f} ms",
                flush=True,
            )
    if asked.beside:
        ratios = {
            name: statistics.median(ours[name] / theirs[name] for ours, theirs in rounds)
            for name in ("rate", "slowest", "processor")
        }
        print(
            f"  ours beside it: {ratios['rate']:.2f} times the entries a second (goal {GOAL_THROUGHPUT}), "
            f"99th percentile {ratios['slowest']:.2f} times (goal {GOAL_SLOWEST}), "
            f"processor a sync {ratios['processor']:.2f} times"
        )


if __name__ == "__main__":
    main()
