"""Tests until a mix-up is settled, by the app and at least: boards of four, two to four sensors mixed up.

    python -m tests.bench.mixups [--mixed 2 3 4] [--deep 3]

A fault showed at right outer; what came off there and at other positions got mixed up, no label is on. What
is wrong is one of the sensors, the wiring at right outer, or a blockage that the handling took away, with
the chances of the design. A test shows what is wrong and nothing else. `least` goes through every way to
place the sensors before the first and before the second test and takes the best, a third test settles: so it
is no more than the optimum; with `--deep 3` the third is gone through too, and a fourth settles. Where both
say the same, that is the optimum. Settled is what the app calls so. The app goes by minutes, not by tests:
to fit two where they were missing and test twice is often quicker than to take a third one apart.
"""

import argparse
import itertools
import time
from functools import cache

from server.core.evidence import identity_assignments
from server.core.infer import holds
from server.core.infer.figures import parts
from tests.core.mixed_jobs import MixedJob

PLACES = ["rear-right-outer", "rear-right-inner", "rear-left-outer", "rear-left-inner"]
UNITS = ["u0", "u1", "u2", "u3"]
UNIT, CIRCUIT, BLOCKED = 0.05, 0.005, 0.01


def wrongs(mixed: int) -> dict:
    """Return what may be wrong -> its chance."""
    weights = dict.fromkeys(range(mixed), UNIT / mixed) | {"circuit": CIRCUIT, "gone": BLOCKED}
    total = sum(weights.values())
    return {bad: weight / total for bad, weight in weights.items()}


def by_the_app(mixed: int) -> float:
    """Return the mean tests that the app takes."""
    return sum(
        chance * MixedJob(PLACES[:mixed], PLACES[0], bad).settles() for bad, chance in wrongs(mixed).items()
    )


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
        left = self.wrongs if left is None else left
        least = sum(left.values())  # one more test at any rate
        if len(tests) == self.deep:
            return least
        best = float("inf")
        for order in self.orders:
            best = min(best, self._with(tests, order, left))
            if best <= least:
                break
        return best

    def _with(self, tests, order, left) -> float:
        shown = {}
        for bad, chance in left.items():
            shown.setdefault(_shows(bad, order), {})[bad] = chance
        total = sum(left.values())
        for faulted, these in shown.items():
            after = (*tests, (order, faulted))
            if not self.settled(after):
                total += self.mean(after, these)
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
    print("mixed   app  least  ratio    s")
    for mixed in asked.mixed:
        start = time.perf_counter()
        app, least = by_the_app(mixed), Least(mixed, asked.deep).mean()
        print(f"{mixed:5} {app:5.2f} {least:6.2f} {app / least:6.3f} {time.perf_counter() - start:4.0f}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
