"""Where a fault in a circuit is found: 1,000 harnesses with noisy readings, our order beside two others.

Each harness has one fault, as often as the chain says; then, to see what a wrong chain costs, its shares are
up to three times wrong. Readings are as noisy as the chain says; where a round names nothing, a second one
may follow. Beside our order: one check after the other from the sensor to the control unit, and whatever
tells most a minute (one step ahead).

    python -m tests.bench.harness [--harnesses 1000] [--wrong 3]
"""

import argparse
import random

from server.core.harness import order
from server.core.harness.chain import Segment
from server.core.parts.parking_wiring import HARNESS

CHAIN, REACH = HARNESS.chain, HARNESS.reach
# From the sensor to the control unit, as a hand comes along.
FROM_THE_SENSOR = (
    "seated", "pins", "wiggle", "supply", "ground-drop", "elsewhere", "wiggle-wire", "wire", "half", "splice",
    "wiggle-line", "loom", "continuity", "to-ground", "to-supply", "neighbour", "control-plug", "channels",
)  # fmt: skip
INDEX = {probe.id: n for n, probe in enumerate(CHAIN.probes)}


def ours():
    """Return our order, which remembers what it chose after the same readings."""
    kept = {}

    def choose(weights, left, unmade, opened):
        key = (tuple(weights), tuple(unmade), opened)
        if key not in kept:
            kept[key] = order.best(CHAIN, weights, unmade, opened, REACH)
        return kept[key]

    return choose


def in_order(weights, left, unmade, opened):
    return next(INDEX[name] for name in FROM_THE_SENSOR if INDEX[name] in left)


def one_ahead(weights, left, unmade, opened):
    return order._ranked(CHAIN, weights, left, opened, REACH)[0]


def unread(chain, weights, reads, warm=False) -> list:
    """Return the checks, by index, that are not read yet and worth making, all warm or none."""
    return chain.worthwhile(weights, chain.unmade(reads, warm))


def sees(probe, segment: Segment, kind: str) -> bool:
    return segment.id in probe.segments and (not probe.kinds or kind in probe.kinds)


def found(rng: random.Random, wrong: float, choose, rounds: int) -> tuple:
    """Return (segment named or None, true segment, checks, minutes) of one harness, in so many rounds."""
    faults = [(segment, kind) for segment in CHAIN.segments for kind in sorted(segment.faults)]
    shares = [segment.faults[kind] * wrong ** rng.uniform(-1, 1) for segment, kind in faults]
    segment, kind = rng.choices(faults, shares)[0]
    luck = random.Random(rng.random())
    weights, checks, minutes, opened = CHAIN.shares(), 0, 0.0, ()
    for _ in range(rounds):
        begun, reads = weights, {}
        while len(CHAIN.suspects(weights)) > 1 and (left := unread(CHAIN, weights, reads)):
            n = choose(weights, left, CHAIN.unmade(reads), opened)
            probe = CHAIN.probes[n]
            minutes += order.minutes(CHAIN, n, opened, REACH)
            opened += probe.places
            chance = probe.sees if sees(probe, segment, kind) else probe.false
            reads[probe.id] = "bad" if luck.random() < chance else "good"
            weights = CHAIN.read(begun, reads)
        checks += len(reads)
    suspects = CHAIN.suspects(weights)
    named = CHAIN.segments[suspects[0]].id if len(suspects) == 1 else None
    return named, segment.id, checks, minutes


def measured(harnesses: int, wrong: float, choose, rounds: int, seed: int = 5) -> dict:
    """Return what an order finds on random harnesses."""
    rng = random.Random(seed)
    results = [found(rng, wrong, choose, rounds) for _ in range(harnesses)]
    named = [each for each in results if each[0]]
    return {
        "named": len(named),
        "right": sum(each[0] == each[1] for each in named) / len(named),
        "checks": sum(each[2] for each in results),
        "minutes": sum(each[3] for each in results),
    }


def main() -> None:
    """Print the figures."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--harnesses", type=int, default=1000)
    parser.add_argument("--wrong", type=float, default=3)
    asked = parser.parse_args()
    for wrong in (1, asked.wrong):
        for rounds in (1, 2):
            print(f"shares up to {wrong:g} times wrong, rounds of checks {rounds}")
            for name, choose in (("ours", ours()), ("one ahead", one_ahead), ("from the sensor", in_order)):
                told = measured(asked.harnesses, wrong, choose, rounds)
                print(
                    f"  {name:16} named {told['named']}, of them right {told['right']:.1%}, "
                    f"{told['checks']} checks, {told['minutes']:.0f} minutes"
                )


if __name__ == "__main__":
    main()
