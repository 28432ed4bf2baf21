"""Cars for the planner's bench: who is faulty in truth, what a test shows, what a move costs.

Shares no code with the planner. The chances are those of the design, section 5.
"""

import random
from collections import namedtuple

from tests.bench.worlds import NOMINAL
from tests.bench.worlds import World
from tests.bench.worlds import true_chance
from tests.bench.worlds import true_rates

# Wiring is found and mended in so many minutes (common practice, no source), wherever it is.
REPAIR = 20.0
# A round of checks of a circuit costs what the chain of checks of the app's sensors does: all of them where
# all is good, and on average over the chain where it finds the fault (tests/core/test_harness.py).
MINUTES = {"pull": 0.5, "plug": 0.2, "fit": 0.5, "test": 1.0, "clean": 1.0, "listen": 0.5, "part": 60.0,
           "meter": 51.0, "meter_found": 10.3}  # fmt: skip
# How surely a present cause keeps a unit from ticking, and how often one that works goes unheard.
SILENCES = {"unit": 0.7, "circuit": 0.5, "feed": 0.95, "control": 0.95}
TICK_FALSE = 0.03
KINDS = ["single", "double", "wiring", "blocked", "comes and goes"]
# One job in five from the priors has a fault that comes and goes (our assumption, no source).
COMES_AND_GOES = 0.2
BOARDS = {
    4: [("rear", 4)],
    6: [("rear", 6)],
    8: [("rear", 4), ("front", 4)],
    12: [("rear", 4), ("front", 4), ("side", 4)],
}
# To push a unit home that hung on its wire for the tests.
SEAT = MINUTES["fit"] - MINUTES["plug"]
# Minutes to get at a position: quick behind a clip, slow behind a bumper cover.
REACH = [1, 2, 3, 4, 6]
# Those of a row of four in the layouts of the app: outer ones are easier.
ROW = [2, 3, 3, 2]

# `shows` is what the case assumes; what is true of it, and of all other rates, `world` says.
Truth = namedtuple("Truth", ("kind", "present", "reach", "shows", "spares", "seed", "world"))


class Car:
    """One car with its faults; the case it holds is all that a policy may look at."""

    def __init__(self, board: int, truth: Truth):
        """Put a unit into each position."""
        self.group = {}
        for group, size in BOARDS[board]:
            for n in range(size):
                self.group[f"{group}-{n}"] = group
        self.places = list(self.group)
        self.reach = dict(zip(self.places, truth.reach, strict=True))
        self.fitted = {place: f"u{n:02}" for n, place in enumerate(self.places)}
        self.truth = truth
        self.present = set(truth.present)
        self.rates = {"shows": truth.shows, "false_alarm": 0.002, "meter_sees": 0.95, "meter_false": 0.02}
        self.true_rates = true_rates(truth.world, truth.shows)
        self.hanging: frozenset = frozenset()
        self.may_block = dict.fromkeys(self.places, True)
        # What was behind each reading that was bad.
        self.behind_faults: list[frozenset] = []
        self.mended = set()  # what was present until it was repaired
        self.minutes = 0.0
        self.tests = 0
        self.wrong_buys = 0
        self.dice = random.Random(truth.seed)
        units = [{"id": unit, "part": "P1"} for unit in self.fitted.values()]
        units += [{"id": f"s{n}", "part": "P1", "prior": prior} for n, prior in enumerate(truth.spares)]
        self.case = {
            "positions": [
                {"id": place, "group": self.group[place], "reach_minutes": self.reach[place]}
                for place in self.places
            ],
            "units": units,
            "tests": [],
            "meter": [],
            "rates": self.rates,
            "minutes": MINUTES,
        }

    def parents(self, place: str) -> set:
        """Return the causes that act on a position now."""
        found = {f"circuit:{place}", f"feed:{self.group[place]}", "control", f"unit:{self.fitted[place]}"}
        return found | {f"blocked:{place}"} if self.may_block[place] else found

    def suspects(self) -> set:
        """Return the causes that were behind any bad reading."""
        return set().union(*self.behind_faults)

    def live(self) -> set:
        """Return the causes that would act in a test made now."""
        return set().union(*[self.parents(place) for place in self.places])

    def test(self, cleaned=(), unplugged=(), repaired=()):
        """Run the self-test and add it to the case."""
        # One throw a position and test, whatever was done before: all policies meet the same luck.
        faulted = self.shown(random.Random(self.truth.seed * 1000 + len(self.case["tests"])), unplugged)
        for place in faulted:
            self.behind_faults.append(frozenset(self._behind(place, unplugged)))
        self.case["tests"].append(
            {
                "fitted": dict(self.fitted),
                "faulted": faulted,
                "cleaned": list(cleaned),
                "unplugged": list(unplugged),
                "repaired": list(repaired),
            }
        )
        return faulted

    def _measure(self, move: dict) -> None:
        """Go through the checks of a circuit; nothing else is changed."""
        cause = f"circuit:{move['position']}"
        chance = self.rates["meter_sees" if cause in self.present else "meter_false"]
        found = self.dice.random() < chance
        self.minutes += minutes_of(move, self.reach, self.hanging, float(found))
        self.case["meter"].append({"position": move["position"], "reads": "bad" if found else "good"})
        if found:
            self.behind_faults.append(frozenset([cause]))

    def _listen(self, place: str) -> None:
        """Hear what the unit does that sits there; nothing was changed since the last test."""
        ticks = 1 - TICK_FALSE
        for cause in self.parents(place) & self.present:
            kind = cause.partition(":")[0].partition("#")[0]
            ticks *= 1 - SILENCES.get(kind, 0)
        heard = "ticks" if self.dice.random() < ticks else "silent"
        self.case["tests"][-1].setdefault("listen", {})[place] = heard
        if heard == "silent":
            heard_of = [cause for cause in self.parents(place) if not cause.startswith("blocked")]
            self.behind_faults.append(frozenset(heard_of))

    def shown(self, luck: random.Random, unplugged=()) -> list:
        """Return the positions at which a fault shows now, with this luck."""
        faulted = []
        for place in self.places:
            k = len(self._behind(place, unplugged) & self.present) + (1 if place in unplugged else 0)
            clean = (1 - self.true_rates["false_alarm"]) * (1 - self.true_rates["shows"]) ** k
            if luck.random() >= clean:
                faulted.append(place)
        return faulted

    def _behind(self, place: str, unplugged) -> set:
        gone = {f"unit:{self.fitted[place]}", f"blocked:{place}"} if place in unplugged else set()
        return self.parents(place) - gone

    def do(self, move: dict):
        """Carry out a move, pay for it and test."""
        if move["move"] == "meter":
            self._measure(move)
            return
        self.minutes += minutes_of(move, self.reach, self.hanging)
        self.hanging = hung_by(move, self.hanging)
        self.case["now"] = {"hanging": sorted(self.hanging)}
        if move["move"] == "listen":
            self._listen(move["position"])
            return
        if move["move"] == "replace":
            for place in move["fitted"]:
                if f"unit:{self.fitted[place]}" not in self.present:
                    self.wrong_buys += 1
        for place, unit in move.get("fitted", {}).items():
            known = unit in [entry["id"] for entry in self.case["units"]]
            if not known:
                self.case["units"].append({"id": unit, "part": "P1"})
                if self.dice.random() < self.true_rates["unit"]:
                    self.present.add(f"unit:{unit}")
            if self.fitted[place] != unit:
                self.may_block[place] = False
            self.fitted[place] = unit
        cleaned = cleaned_by(move)
        for place in cleaned:
            self.may_block[place] = False
        repaired = repaired_by(move)
        self.mended |= self.present.intersection(repaired)
        self.present.difference_update(repaired)
        self.tests += 1
        self.test(cleaned, [move["position"]] if move["move"] == "unplug" else [], repaired)


def hung_by(move: dict, hanging) -> frozenset:
    """Return where a unit hangs once a move is made: for a test it does, a new part is pushed home."""
    touched = move.get("fitted", {})
    return frozenset(hanging).difference(touched).union(touched if move["move"] == "exchange" else ())


def cleaned_by(move: dict) -> list:
    """Return the positions that a move cleans."""
    if move["move"] != "clean":
        return []
    return move.get("positions") or [move["position"]]


def repaired_by(move: dict) -> list:
    """Return the causes that a move repairs, whichever generation of them it names."""
    return [move["cause"].partition("#")[0]] if move["move"] == "repair" else []


def minutes_of(move: dict, reach: dict, hanging=frozenset(), found: float = 0.0) -> float:
    """Return what a move takes: each touched position once, and the test; checks find a fault that often.

    A position at which a unit hangs stays open, so that nothing is to be reached there. The face of a sensor
    lies outside: it is wiped with nothing opened.
    """
    reach = {place: 0 if place in hanging else reach[place] for place in reach}
    if move["move"] == "retest":
        return MINUTES["test"]
    if move["move"] == "repair":
        return REPAIR + MINUTES["test"]
    if move["move"] == "listen":
        return MINUTES["listen"]
    if move["move"] == "meter":
        all_good = MINUTES["meter"]
        return reach[move["position"]] + all_good + found * (MINUTES["meter_found"] - all_good)
    if move["move"] == "clean":
        return MINUTES["clean"] * len(cleaned_by(move)) + MINUTES["test"]
    if move["move"] == "unplug":
        return reach[move["position"]] + MINUTES["pull"] + MINUTES["test"]
    fit = MINUTES["plug"] if move["move"] == "exchange" else MINUTES["fit"]
    each = [reach[place] + MINUTES["pull"] + fit for place in move["fitted"]]
    return sum(each) + MINUTES["test"]


def to_mend(car: Car) -> float:
    """Return what mending takes that is still wrong: each repair, and each faulty unit that is fitted."""
    left = REPAIR * sum(not cause.startswith(("unit", "blocked")) for cause in car.present)
    for place, unit in car.fitted.items():
        if f"unit:{unit}" in car.present:
            left += car.reach[place] + MINUTES["pull"] + MINUTES["fit"]
    return left


def draw(board: int, mix: str, random_: random.Random, world: World = NOMINAL) -> Truth:
    """Draw what is wrong with a car whose first test shows a fault."""
    while True:
        truth = _draw(board, mix, random_, world)
        if Car(board, truth).test():
            return truth


def _draw(board: int, mix: str, random_: random.Random, world: World) -> Truth:
    places = [f"{group}-{n}" for group, size in BOARDS[board] for n in range(size)]
    reach = [random_.choice(REACH) for _ in places]
    seed = random_.randrange(1 << 30)
    if mix == "priors":
        present = causes_drawn(board, random_, world)
        shows = 0.5 if random_.random() < COMES_AND_GOES else 0.95
        return Truth("drawn", frozenset(present), reach, shows, [], seed, world)
    units = [f"unit:u{n:02}" for n in range(len(places))]
    kind = random_.choice(KINDS)
    present = random_.sample(units, {"single": 1, "double": 2, "comes and goes": 1}.get(kind, 0))
    if kind in ("wiring", "blocked"):
        cause = "circuit" if kind == "wiring" else "blocked"
        present = [f"{cause}:{random_.choice(places)}"]
        if random_.random() < 0.5:
            present.append(random_.choice(units))
    shows = 0.5 if kind == "comes and goes" else 0.95
    return Truth(kind, frozenset(present), reach, shows, [], seed, world)


def causes_drawn(board: int, random_: random.Random, world: World, spares=()) -> list:
    """Return the causes present in a car by the true rates; `spares` are the assumed chances that one is bad.

    It throws as often in every world, so that the same dice give like cars.
    """
    rates = true_rates(world)
    places = [f"{group}-{n}" for group, size in BOARDS[board] for n in range(size)]
    present = [f"unit:u{n:02}" for n in range(len(places)) if random_.random() < rates["unit"]]
    for place in places:
        present += [f"{k}:{place}" for k in ("circuit", "blocked") if random_.random() < rates[k]]
    present += [f"feed:{g}" for g, _ in BOARDS[board] if random_.random() < rates["feed"]]
    present += ["control"] if random_.random() < rates["control"] else []
    for n, prior in enumerate(spares):
        present += [f"unit:s{n}"] if random_.random() < true_chance(world, "unit", prior) else []
    return present
