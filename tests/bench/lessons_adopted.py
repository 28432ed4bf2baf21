"""Minutes and right verdicts by the default rates, and by those that a yard has learned and taken.

    python -m tests.bench.lessons_adopted [--cars N] [--jobs N] [--board N] [--world NAME]

In each world several yards learn from so many jobs (`lessons_yards`), and take what they are offered, rates
and doubts. Then the same cars, drawn by the truth of the world, are worked on by the planner with each.
"""

import argparse
import random
import statistics
import sys

from server.lessons.offer import taken_of
from tests.bench.lessons import learned
from tests.bench.lessons import truth_of
from tests.bench.lessons_yards import jobs_of
from tests.bench.planner_cars import ROW
from tests.bench.planner_cars import Car
from tests.bench.planner_cars import draw
from tests.bench.planner_policies import follow
from tests.bench.planner_worlds import planned
from tests.bench.planner_worlds import viewed
from tests.bench.worlds import WORLDS
from tests.bench.worlds import World

YARDS = 4


def taken(world: World, number: int, jobs: int) -> dict:
    """Return what a case says for a yard that has taken what it learned."""
    rates = list(learned(jobs_of(f"{world.name} {number}", jobs, truth_of(world))).values())
    data = taken_of(rates)
    said = {name: ppm / 1_000_000 for name, ppm in data["rates_ppm"].items()}
    doubts = {name: min(max(factor / 100, 1.5), 3.0) for name, factor in data["doubts_x100"].items()}
    return {"rates": said, "doubt": doubts}


def work(world: World, board: int, cars: int, said: list[dict]) -> list:
    """Return the ends of the cars of a world; a car goes to the yards in turn, by what each case says."""
    ends = []
    for number in range(cars):
        truth = draw(board, "priors", random.Random(f"adopted {board} {number}"), world)
        car = Car(board, truth._replace(reach=ROW * (board // len(ROW))))
        mine = said[number % len(said)]
        own = {"shows": 0.5} if truth.shows == 0.5 else {}  # a fault that comes and goes has its own rate
        car.case["rates"] = {**car.case["rates"], **mine.get("rates", {}), **own}
        if "doubt" in mine:
            car.case["doubt"] = mine["doubt"]
        ends.append(follow(car, planned, viewed))
    return ends


def print_ends(name: str, what: str, ends: list) -> None:
    """Print a line."""
    verdicts = [end for end in ends if end.how == "verdict"]
    right = 100 * sum(end.told for end in verdicts) / max(1, len(verdicts))
    minutes = statistics.mean(end.minutes for end in ends)
    settled = 100 * sum(end.how != "open" for end in ends) / len(ends)
    print(f"{name:16} {what:8} {len(ends):4} cars {minutes:8.2f} min {settled:6.1f} % settled "
          f"{len(verdicts):4} verdicts {right:6.1f} % right", flush=True)  # fmt: skip


def main() -> int:
    """Print two lines a world."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--cars", type=int, default=60, metavar="N")
    parser.add_argument("--jobs", type=int, default=200, metavar="N")
    parser.add_argument("--board", type=int, default=4, metavar="N")
    parser.add_argument("--world", default="", metavar="NAME")
    asked = parser.parse_args()
    for world in WORLDS:
        if asked.world not in ("", world.name):
            continue
        print_ends(world.name, "default", work(world, asked.board, asked.cars, [{}]))
        yards = [taken(world, number, asked.jobs) for number in range(YARDS)]
        print_ends(world.name, "learned", work(world, asked.board, asked.cars, yards))
    return 0


if __name__ == "__main__":
    sys.exit(main())
