"""What simulated yards learn beside their truth, and how long figures take.

    python -m tests.bench.lessons                        the shares after 50 and 200 jobs, twelve worlds
    python -m tests.bench.lessons --yards 200 --jobs 50  so many yards a world; whether the bounds cover
    python -m tests.bench.lessons --time 1000            the server: figures, one job more, the page

A world's truth has one class of causes three times as often as the default, or a third. The learned share is
held against the truth as both stand after the sum is made the default's, which no job can tell. Figures,
never asserted; 90 % bounds cover truth in about nine of ten yards where there is enough of a class to count.
"""

import argparse
import sys
import tempfile
import time
from contextlib import closing
from itertools import pairwise
from pathlib import Path

from demo_db.yard import Truth
from server import folded
from server.clock import now_ms
from server.core.facts.fold import Fold
from server.core.infer.variations import CLASSES
from server.core.state.job import known_job
from server.lessons import composed
from server.lessons import contribution
from server.lessons import shares
from server.lessons.figures import composed as composed_of
from server.lessons.figures import figures
from server.lessons.offer import offer
from server.lessons.page import page
from server.lessons.running import Running
from server.lessons.sums import causes_of
from server.log import events
from server.storage import DataFolder
from tests.bench.worlds import NOMINAL
from tests.bench.worlds import WORLDS
from tests.bench.worlds import World
from tests.bench.worlds import true_rates
from tests.made_up_yard import Yard

ONE_MORE = 9  # jobs that close one by one, for a busy machine does not show with one


def contributions(yard: Yard) -> list[dict]:
    """Return what each job of a yard contributes, by the core alone."""
    found = []
    by_job: dict[str, list] = {}
    for entry in yard.entries:
        by_job.setdefault(entry["event"]["job"], []).append(entry["event"])
    for job, own in by_job.items():
        fold = Fold()
        fold.reset(own)
        found.append(contribution.of_job(known_job(fold.state, job)))
    return found


def truth_of(world: World) -> Truth:
    """Return the rates of a world as a yard takes them."""
    rates = true_rates(world)
    return Truth(**{name: rates[name] for name in Truth._fields})


def aimed_at(truth: Truth) -> dict[str, float]:
    """Return the true rates of the classes with the sum of the defaults: all that can be learned."""
    return dict(
        zip(CLASSES, shares.scaled([composed.odds(getattr(truth, name)) for name in CLASSES]), strict=True)
    )


def learn(world: World, yards: int, jobs: int) -> dict[str, list[shares.Share]]:
    """Return class -> what each yard of a world learns of it."""
    found: dict[str, list[shares.Share]] = {name: [] for name in CLASSES}
    for number in range(yards):
        made = contributions(Yard(f"{world.name} {number}", jobs, truth_of(world)))
        said = [composed_of(causes_of(job)) for job in made if not job["why"]]
        for name, share in shares.learned(said).items():
            found[name].append(share)
    return found


def print_world(world: World, yards: int, jobs: int) -> None:
    """Print a world's truth, what is learned in the middle, and how often the bounds cover."""
    aim, found = aimed_at(truth_of(world)), learn(world, yards, jobs)
    cells = []
    for name in CLASSES:
        middle = sorted(share.value for share in found[name])[yards // 2]
        cover = sum(share.low <= aim[name] <= share.high for share in found[name]) / yards
        cells.append(f"{name} {aim[name] * 100:6.3f} {middle * 100:6.3f} {cover * 100:4.0f}%")
    print(f"{world.name:14} {jobs:4} jobs | " + " | ".join(cells), flush=True)


def print_times(jobs: int) -> None:
    """Print how long the server takes with so many jobs, by the wall clock and by the processor."""
    yard = Yard("time", jobs + ONE_MORE)
    starts = [n for n, entry in enumerate(yard.entries) if entry["event"]["kind"] == "job_opened"][jobs:]
    folder = DataFolder(Path(tempfile.mkdtemp()))
    folder.prepare()
    with closing(folder.open()) as db:
        for start in range(0, starts[0], 2000):
            events.receive(db, yard.entries[start : min(start + 2000, starts[0])], None, 1)
        running = Running()

        def look() -> dict:
            return figures(db, now_ms(), running=running)

        timed("the state of their entries", lambda: folded.catch_up(db))
        timed(f"{jobs} jobs worked out for the first time", look)
        found = timed("figures once they are", look)
        timed("the same by a command", lambda: figures(db, now_ms()))
        timed("page and offer made of them", lambda: (page(found, "all"), offer(db, found)))
        for start, end in pairwise([*starts, len(yard.entries)]):
            events.receive(db, yard.entries[start:end], None, 1)
            again = timed("one job more, all figures", look)
        timed("the same once more", look)
        assert again["closed"] == jobs + ONE_MORE


def timed(what: str, work):
    """Do some work and print how long it took; return what came of it."""
    wall, processor = time.perf_counter(), time.process_time()
    found = work()
    wall, processor = time.perf_counter() - wall, time.process_time() - processor
    print(f"{what:40} {wall * 1000:8.1f} ms wall {processor * 1000:8.1f} ms processor", flush=True)
    return found


def main() -> int:
    """Print what is asked for."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--yards", type=int, default=20, metavar="N")
    parser.add_argument("--jobs", type=int, nargs="*", default=[50, 200], metavar="N")
    parser.add_argument("--world", default="", metavar="NAME")
    parser.add_argument("--time", type=int, default=0, metavar="JOBS")
    asked = parser.parse_args()
    if asked.time:
        print_times(asked.time)
        return 0
    print("truth %, learned % in the middle, yards whose bounds cover; sums are the default's")
    worlds = [world for world in WORLDS if world is NOMINAL or world.changed in CLASSES]
    for world in worlds:
        if asked.world in ("", world.name):
            for jobs in asked.jobs:
                print_world(world, asked.yards, jobs)
    return 0


if __name__ == "__main__":
    sys.exit(main())
