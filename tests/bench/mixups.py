"""Tests and minutes until a mix-up is settled, by the app and at least, on boards of four.

    python -m tests.bench.mixups [--mixed 2 3 4] [--deep 3]

A fault showed at right outer; what came off there and at other positions got mixed up, no label is on. What
is wrong is one of the sensors, the wiring at right outer, or a blockage that the handling took away, with
the chances of the design. A test shows what is wrong and nothing else. `least` goes through every way to
place the sensors before the first and before the second test and takes the best, a third test settles: so it
is no more than the optimum; with `--deep 3` the third is gone through too, and a fourth settles. Where both
say the same, that is the optimum. Settled is what the app calls so. The app goes by minutes, not by tests:
to fit two where they were missing and test twice is often quicker than to take a third one apart. So the
second half of the table has the minutes of work, by the core's own figures, and the least of those. Checks of
the wiring, at which only the app may look, count for their minutes.
"""

import argparse
import itertools
import time
from functools import cache

from server.core.evidence import identity_assignments
from server.core.infer import holds
from server.core.infer.case import MINUTES
from server.core.infer.figures import parts
from tests.core.mixed_jobs import MixedJob

PLACES = ["rear-right-outer", "rear-right-inner", "rear-left-outer", "rear-left-inner"]
UNITS = ["u0", "u1", "u2", "u3"]
UNIT, CIRCUIT, BLOCKED = 0.05, 0.005, 0.01
_OPENED = {place: 2.0 if "outer" in place else 3.0 for place in PLACES}  # as the layout has it
_CLOSED = (False,) * len(PLACES)
# What a step takes besides tests and fitting; the checks of one circuit together.
_BESIDES = {"wiring.measure": MINUTES["meter"], "clean": MINUTES["clean"]}


class Bench:
    """What sits where, which positions are open, and the minutes that were spent until now."""

    def __init__(self, fitted: tuple, is_open=_CLOSED):
        """Start with units by position, None where there is none."""
        self.fitted, self.is_open = fitted, is_open

    def minutes(self, order: tuple) -> float:
        """Return what it takes to have the units in this order, and to test."""
        taken = MINUTES["test"]
        for place, unit, now, is_open in zip(PLACES, order, self.fitted, self.is_open, strict=True):
            if unit != now:
                taken += MINUTES["plug"] + (0 if is_open else _OPENED[place])
                taken += MINUTES["pull"] if now else 0
        return taken

    def after(self, order: tuple) -> "Bench":
        """Return the bench with the units in this order."""
        pairs = zip(order, self.fitted, self.is_open, strict=True)
        return Bench(order, tuple(is_open or unit != now for unit, now, is_open in pairs))


class TimedJob(MixedJob):
    """A job that counts the minutes of its work."""

    def __init__(self, mixed: list, bad):
        """Come to the first fitting after the mix-up."""
        super().__init__(mixed, PLACES[0], bad)
        self.minutes = 0.0
        self.bench = Bench(self._fitted())

    def _fitted(self) -> tuple:
        at = self.job.core("state")["vehicles"]["v1"]["holds"]
        return tuple(at.get(place) for place in PLACES)

    def _does(self, view):
        step = view["step"]
        if step["form"] == "test":
            fitted = self._fitted()
            self.minutes += self.bench.minutes(fitted)
            self.bench = self.bench.after(fitted)
        elif self.steps[-1:] != [step["id"]]:
            self.minutes += _BESIDES.get(step["id"], 0.0)
        super()._does(view)


def wrongs(mixed: int) -> dict:
    """Return what may be wrong -> its chance."""
    weights = dict.fromkeys(range(mixed), UNIT / mixed) | {"circuit": CIRCUIT, "gone": BLOCKED}
    total = sum(weights.values())
    return {bad: weight / total for bad, weight in weights.items()}


def by_the_app(mixed: int) -> tuple[float, float]:
    """Return the mean (tests, minutes) that the app takes."""
    tests = minutes = 0.0
    for bad, chance in wrongs(mixed).items():
        job = TimedJob(PLACES[:mixed], bad)
        tests += chance * job.settles()
        minutes += chance * job.minutes
    return tests, minutes


class Least:
    """The least mean tests, over all ways to place the sensors."""

    def __init__(self, mixed: int, deep: int):
        """Know the case as it stood when `mixed` sensors got mixed up; `deep` tests are gone through."""
        self.deep = deep
        self.bodies = [f"b{n}" for n in range(mixed)]
        named = itertools.permutations(UNITS[:mixed])
        self.ways = [[dict(zip(self.bodies, order, strict=True))] for order in named]
        self.orders = list(itertools.permutations(self.bodies + UNITS[mixed:]))
        self.wrongs = wrongs(mixed)

    @cache  # noqa: B019
    def settled(self, tests: tuple) -> bool:
        """Tell whether the app would call it settled after these tests, (order, what was faulted) each."""
        first = {"fitted": dict(zip(PLACES, UNITS, strict=True)), "faulted": [PLACES[0]]}
        done = [{"fitted": dict(zip(PLACES, order, strict=True)), "faulted": list(f)} for order, f in tests]
        case = {
            "positions": [{"id": place, "group": "rear"} for place in PLACES],
            "units": [{"id": unit} for unit in UNITS + self.bodies],
            "tests": [{"cleaned": [], **test} for test in [first, *done]],
        }
        told = identity_assignments.reasoned(case, self.ways, plan=False)
        return told["verdict"] is not None or holds.is_clear(told, parts(0.95))

    def mean(self, tests=(), left=None) -> float:
        """Return the least mean number of tests from here on, of what may still be wrong."""
        return self._least(tests, self.wrongs if left is None else left, None)

    def minutes(self) -> float:
        """Return the least mean number of minutes."""
        empty = [None] * len(self.bodies)
        return self._least((), self.wrongs, Bench((*empty, *UNITS[len(self.bodies) :])))

    def _least(self, tests: tuple, left: dict, bench: Bench | None) -> float:
        """Return the least of what is left to do: tests, or minutes where there is a bench."""
        likely = sum(left.values())
        if len(tests) == self.deep:
            return likely * (MINUTES["test"] if bench else 1)  # one more test at any rate
        best = float("inf")
        costs = [(bench.minutes(order) if bench else 1, order) for order in self.orders]
        for cost, order in sorted(costs):
            if best <= cost * likely:
                break
            after = bench.after(order) if bench else None
            best = min(best, cost * likely + self._then(tests, order, left, after))
        return best

    def _then(self, tests: tuple, order: tuple, left: dict, bench: Bench | None) -> float:
        shown = {}
        for bad, chance in left.items():
            shown.setdefault(_shows(bad, order), {})[bad] = chance
        total = 0.0
        for faulted, these in shown.items():
            after = (*tests, (order, faulted))
            if not self.settled(after):
                total += self._least(after, these, bench)
        return total


def _shows(bad, order) -> tuple:
    """Return where a test shows a fault, with the sensors in this order."""
    if bad == "gone":
        return ()
    return (PLACES[0] if bad == "circuit" else PLACES[order.index(f"b{bad}")],)


def main() -> int:
    """Print the table."""
    wanted = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    wanted.add_argument("--mixed", type=int, nargs="+", choices=[2, 3, 4], default=[2, 3, 4])
    wanted.add_argument("--deep", type=int, choices=[2, 3], default=2)
    asked = wanted.parse_args()
    print("        tests               minutes")
    print("mixed   app  least  ratio    app  least  ratio    s")
    for mixed in asked.mixed:
        start = time.perf_counter()
        least = Least(mixed, asked.deep)
        tests, minutes = by_the_app(mixed)
        fewest, quickest = least.mean(), least.minutes()
        told = f"{tests:5.2f} {fewest:6.2f} {tests / fewest:6.3f}  {minutes:5.2f} {quickest:6.2f}"
        print(f"{mixed:5} {told} {minutes / quickest:6.3f} {time.perf_counter() - start:4.0f}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
