"""Verdicts in worlds whose true rates are not the assumed ones, by the rule of today and without it.

The rule asks that a conclusion survives its assumptions; a case with a `doubt` of 1 asks for its
confidence alone. Each car is given to both with the same luck.
A verdict is right when it names every cause that was behind a fault, and no other. Left out, on both sides,
is dirt that is gone and stood beside another of the causes at each fault it was behind: with it and without
it every test reads alike, so that no judge of the same tests could name it. Both shares are printed, and the
last, without such dirt, is judged.
Of 1,000 nominal cars 99.75 % were right (98.1 % with such dirt; claimed 98.3 %) in 1.038 x the minutes; of
200 in each other world 99.3 % and more, and with such dirt 97.1 % and more but for dirt three times as
likely (96.5 %).
"""

import json
import multiprocessing
import random
import statistics
from collections import namedtuple
from functools import cache
from functools import partial

from tests.bench.planner_cars import ROW
from tests.bench.planner_cars import Car
from tests.bench.planner_cars import draw
from tests.bench.planner_policies import View
from tests.bench.planner_policies import follow
from tests.bench.planner_policies import planner
from tests.bench.worlds import WORLDS

# What the case says beside the evidence.
RULES = {"rule": {}, "without": {"doubt": 1}}
LEAST_RIGHT = 0.97
LEAST_RIGHT_NOMINAL = 0.985
MOST_MINUTES = 1.06


def simulate(runs: int, seed: int, what: tuple) -> dict:
    """Return the ends of the cars of one board in one world, by rule."""
    world, board = what
    ends: dict = {rule: [] for rule in RULES}
    for number in range(runs):
        truth = draw(board, "priors", random.Random(f"{seed} {board} {number}"), world)
        # Reached as the layouts of the app have them, so that the like case comes up often.
        truth = truth._replace(reach=ROW * (board // len(ROW)))
        for rule, said in RULES.items():
            car = Car(board, truth)
            car.case.update(said)
            ends[rule].append(follow(car, planned, viewed))
    return ends


class _Case(namedtuple("Case", "case")):
    """A car of which only the evidence is to be seen."""


@cache
def _view(case: str) -> View:
    return View(_Case(json.loads(case)))


@cache
def _move(case: str) -> str:
    return json.dumps(planner(_Case(json.loads(case)), None))


def viewed(car) -> View:
    """Return what is seen of a car; remembered, for like cases come up often."""
    return _view(json.dumps(car.case, sort_keys=True))


def planned(car, view) -> dict:
    """Return the move that the planner puts first; remembered as well."""
    return json.loads(_move(json.dumps(car.case, sort_keys=True)))


def compare_rules(runs: int, seed: int, boards=(4, 8)) -> bool:
    """Print verdicts and minutes, world by world; return whether the goals hold."""
    tasks = [(world, board) for board in boards for world in WORLDS]
    with multiprocessing.Pool() as pool:
        # Worlds of one board together, for much of what the core said comes up again.
        found = pool.map(partial(simulate, runs, seed), tasks, -(-len(WORLDS) // 2))
    print(f"\ntrue rates beside the assumed ones, cars from the priors, boards of {boards}")
    print(f"{'world':16} {'rule':8}  cars  minutes  times  settled % verdicts  right %  but for gone dirt %")
    all_held = True
    for world in WORLDS:
        mine = {rule: [] for rule in RULES}
        for (drawn, _), ends in zip(tasks, found, strict=True):
            for rule in RULES if drawn == world else ():
                mine[rule] += ends[rule]
        all_held = _describe(world, mine) and all_held
    return all_held


def _describe(world, mine: dict) -> bool:
    """Print the lines of one world; return whether its goals hold."""
    wanted = LEAST_RIGHT_NOMINAL if world.changed is None else LEAST_RIGHT
    held = True
    base = statistics.mean(end.minutes for end in mine["without"])
    for rule, ends in mine.items():
        verdicts = [end for end in ends if end.how == "verdict"]
        right = sum(end.right for end in verdicts) / len(verdicts)
        told = sum(end.told for end in verdicts) / len(verdicts)
        settled = 100 * sum(end.how != "open" for end in ends) / len(ends)
        times = statistics.mean(end.minutes for end in ends) / base
        line = f"{world.name:16} {rule:8} {len(ends):5} {times * base:8.2f} {times:6.3f} {settled:10.1f}"
        print(f"{line} {len(verdicts):8} {100 * right:8.2f} {100 * told:15.2f}")
        if rule == "rule":
            held = told >= wanted and (world.changed is not None or times <= MOST_MINUTES)
            if not held:
                print(f"MISSED {world.name}: right >= {100 * wanted:.1f} %, minutes <= {MOST_MINUTES} x")
    return held
