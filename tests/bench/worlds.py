"""Worlds whose true rates are not the assumed ones: those of one class tripled or cut to a third."""

from collections import namedtuple

from server.core.infer.case import RATES

# A miss is a fault that a test does not show.
CLASSES = ["unit", "circuit", "blocked", "feed", "control", "miss", "false_alarm"]
FACTORS = [3.0, 1 / 3]
ASSUMED = {kind: RATES[kind] for kind in [*CLASSES, "shows"] if kind != "miss"}

# The odds of `changed`, a class or None, are `factor` times the assumed ones.
World = namedtuple("World", ("name", "changed", "factor"))

NOMINAL = World("nominal", None, 1.0)
WRONG = [World(f"{kind} {'x3' if f > 1 else '/3'}", kind, f) for kind in CLASSES for f in FACTORS]
WORLDS = [NOMINAL, *WRONG]


def odds_times(chance: float, factor: float) -> float:
    """Return the chance with its odds multiplied."""
    return chance * factor / (1 - chance + chance * factor)


def true_chance(world: World, kind: str, assumed: float) -> float:
    """Return the true chance of what a class of rates stands for, given the assumed one."""
    return odds_times(assumed, world.factor) if kind == world.changed else assumed


def true_rates(world: World, shows: float = ASSUMED["shows"]) -> dict:
    """Return the rates of a world, for a fault that is assumed to show with the chance `shows`."""
    found = {kind: true_chance(world, kind, ASSUMED[kind]) for kind in CLASSES if kind != "miss"}
    return found | {"shows": 1 - true_chance(world, "miss", 1 - shows)}
