"""Whole jobs through the guide by somebody truthful: how they end, their steps, what is called bad in vain.

    python -m tests.bench.truthful [--jobs 10] [--board rear-4 ...] [--kind "one unit" ...] [--stories]

So many jobs of each kind on each board. What is wrong is drawn, each answer follows from it, and of what is
proposed the first is done (tests/core/truthful.py). Tests show a present fault as often as the kind says.
Printed are the steps in the middle and at most, the tests, and how many jobs left a fault, called something
good bad, had a part bought for a good one, asked for a repair of what is sound, or did not end.

405 jobs (130 on rear-4, 197 on rear-6, coils and wheels, 78 on eight and twelve positions; ten drawn ones,
around-12 and loudspeakers hardly): all ended closed, no fault was left, no good part bought, nothing sound
repaired. One called something good bad for a while: two were fitted crosswise unseen, so that a fault that
went along was told as one that stayed; the wiring was found sound, and the next exchange set it right.
Steps in the middle: one unit 21, two 30, a circuit 24, a unit and a circuit 40, a bad spare 42.
"""

import argparse
import random
import statistics
from collections import namedtuple

from server.core.parts import sorts
from tests.core.true_car import TrueCar
from tests.core.truthful import Lost
from tests.core.truthful import Mechanic
from tests.core.walker import quick_core

OWN = "own"  # ten positions that somebody drew
BOARDS = ("rear-4", "rear-6", "both-8", OWN, "both-12", "around-12",
          "ignition-coil/row-4", "wheel-sender/wheels-4", "door-speaker/doors-4")  # fmt: skip

# "A" and "B" are two positions, "G" the group of the first; of several ways one is drawn.
Kind = namedtuple("Kind", ("ways", "habits", "car"))
ONE = (("unit:A",), ("circuit:A",))
KINDS = {
    "one unit": Kind((("unit:A",),), {}, {}),
    "two units": Kind((("unit:A", "unit:B"),), {}, {}),
    "circuit": Kind((("circuit:A",),), {}, {}),
    "unit and circuit": Kind((("unit:A", "circuit:B"), ("unit:A", "circuit:A")), {}, {}),
    "dirt": Kind((("blocked:A",),), {"sees dirt": 0.7}, {}),
    "shared": Kind((("feed:G",), ("control",)), {}, {}),
    "nothing": Kind(((),), {}, {}),
    "tests miss": Kind((*ONE, ("blocked:A",)), {"provokes": "loom"}, {"shows": 0.95}),
    "comes and goes": Kind(ONE, {"knows": True, "provokes": "loom"}, {"shows": 0.5}),
    "warm": Kind((("circuit:A",),), {"knows": True, "provokes": "heat"}, {"warm": True}),
    "bad spare": Kind((("unit:A",),), {"spare": "bad"}, {}),
    "good spare": Kind(ONE, {"spare": "good"}, {}),
    "new may be bad": Kind((("unit:A",),), {"new is bad": 0.3}, {}),
    "other number": Kind((("unit:A",),), {"other number": 1}, {}),
    "not heard": Kind(ONE, {"unheard": 0.3}, {}),
    "wrong way round": Kind((("unit:A",),), {"turned": 0.6}, {}),
    "mixed up": Kind((*ONE, ("unit:A", "unit:B")), {"mixes": 0.7}, {}),
    "fitted crosswise": Kind(ONE, {"swaps": 1}, {}),
    "another day": Kind(ONE, {"rests": 0.15}, {}),
}


def layouts() -> dict:
    """Return the positions of each board."""
    core = quick_core()
    found = {each["id"]: each["positions"] for each in core("layouts")}
    drawn = [{"name": f"place {n}", "group": "rear" if n < 5 else "front", "reach_minutes": 2 + n % 3,
              "x": 100 + 160 * (n % 5), "y": 990 if n < 5 else 10, "part": "", "pins": ""}
             for n in range(10)]  # fmt: skip
    return found | {OWN: core("drawn_positions", sort="parking-sensor", positions=drawn)}


def draw(board: str, positions: list, kind: Kind, seed: str) -> Mechanic | None:
    """Return a mechanic before a car of a kind, None where the sort of part has no such fault."""
    dice, sort = random.Random(seed), sorts.by_layout(board)
    first, second = dice.sample([each["id"] for each in positions], 2)
    group = next(each["group"] for each in positions if each["id"] == first)
    ways = [way for way in kind.ways if not [each for each in way if each.partition(":")[0] in sort.without]]
    if not ways:
        return None
    named = {"A": first, "B": second, "G": group}
    faults = []
    for each in dice.choice(ways):
        what, colon, where = each.partition(":")
        faults.append(what + colon + named.get(where, where))
    car = TrueCar(positions, sort, faults, seed=seed, **kind.car)
    mechanic = Mechanic(car, board, positions, kind.habits)
    if "spare" in kind.habits:
        mechanic.spare(bad=kind.habits["spare"] == "bad")
    return mechanic


def ends(mechanic: Mechanic) -> list[str]:
    """Do the job; return what was not as it should be."""
    try:
        mechanic.work()
    except Lost:
        return ["no end"]
    wrong = [] if mechanic.car.is_sound() else ["left"]
    wrong += ["called bad"] if mechanic.wrongly else []
    wrong += ["good part"] if "for a good one" in mechanic.bought else []
    wrong += ["sound repaired"] if mechanic.not_honest else []
    return wrong + (["twice"] if mechanic.twice else [])


def main() -> None:
    """Print a line for each kind and board."""
    wanted = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    wanted.add_argument("--jobs", type=int, default=10, help="jobs a kind and board")
    wanted.add_argument("--board", nargs="+", choices=BOARDS, default=BOARDS)
    wanted.add_argument("--kind", nargs="+", choices=sorted(KINDS), default=list(KINDS))
    wanted.add_argument("--stories", action="store_true", help="tell the jobs that went wrong")
    asked = wanted.parse_args()
    places, total, wrong_in_all = layouts(), 0, []
    for board in asked.board:
        for name in asked.kind:
            done, wrong = [], []
            for number in range(asked.jobs):
                mechanic = draw(board, places[board], KINDS[name], f"{board} {name} {number}")
                if mechanic is None:
                    continue
                found = ends(mechanic)
                done.append(mechanic)
                wrong += found
                if found and asked.stories:
                    print(f"\n{found} {mechanic.wrongly} {mechanic.not_honest}\n{mechanic.told()}\n")
            if done:
                total, wrong_in_all = total + len(done), wrong_in_all + wrong
                print(_line(board, name, done, wrong), flush=True)
    print(f"\n{total} jobs: {_counted(wrong_in_all)}")


def _line(board: str, name: str, done: list, wrong: list) -> str:
    steps = [each.steps for each in done]
    tests = statistics.mean(each.tests for each in done)
    middle = f"{statistics.median(steps):5.0f} {max(steps):4} {tests:6.1f}"
    return f"{board:22} {name:18} {len(done):4} {middle}  {_counted(wrong)}"


def _counted(wrong: list) -> str:
    return ", ".join(f"{each} {wrong.count(each)}" for each in sorted(set(wrong))) or "all as they should be"


if __name__ == "__main__":
    main()
