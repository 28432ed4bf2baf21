"""The least minutes of a job with one faulted position and a spare at hand: what no policy can beat.

    python -m tests.bench.jobs_optimum [--reach 2.5] [--world nominal "unit x3"] [--depth 8] [--good-part 400]

Dynamic programming over beliefs (expectimax, as by Bellman 1957), written from the design alone: its unit,
circuit or dirt may be to blame, the spare may be bad too, and tests miss and raise false alarms by the true
rates of the world, which it knows. It has the bench's minutes, and closes after a clean test and a clean walk
with the pole, both since anything was changed. Nothing is bought, so that a bad spare ends as a comeback.

A comeback and a good part bought weigh so much that it has about as few of them as the goals allow: by their
60 and 45 minutes alone it would buy half a good part in 100 jobs, on the word of one ear at the bumper.
Nominal, reach 2.5: 11.82 minutes where cleaning pays the reach of a position, as it did before (the spare
in, the unit back to be told, the spare in again), and 10.20 now that a face is wiped with nothing opened
(wiped, then the spare in). A good part that weighs more is bought less often, for more minutes: of at most 6
moves, 0.26 in 100 at 10.60 and 0.10 at 11.73 where misses are three times as likely (400, 1,600), 0.21 at
10.23 and 0.08 at 11.33 with false alarms (400, 2,400), 0.08 at 11.66 where units are a third as likely
(2,400).
"""

import argparse
from itertools import product

from tests.bench.jobs_cars import SPARE
from tests.bench.jobs_cars import WALK
from tests.bench.planner_cars import MINUTES
from tests.bench.planner_cars import REPAIR
from tests.bench.planner_cars import SEAT
from tests.bench.worlds import WORLDS
from tests.bench.worlds import true_chance
from tests.bench.worlds import true_rates

# What a comeback and a good part weigh here.
COMEBACK, GOOD_PART = 300.0, 400.0
# What closing without a proof weighs: a way out where the moves run out, which nobody takes.
UNPROVEN = 30.0
# A result less likely than this is left out.
_RARE = 1e-9
# What may be bad: the unit, the circuit, the place by dirt, the spare.
HYPOTHESES = list(product((0, 1), repeat=4))
UNIT, SPARE_IN = 0, 3
TESTED, WALKED = 1, 2


class Optimum:
    """The best policy for one position in one world; `wiped`: cleaning pays no reach."""

    def __init__(self, world, reach: float, wiped: bool = True, good_part: float = GOOD_PART):
        """Begin after a first test that showed a fault at the position."""
        self.reach, self.wiped, self.good_part = reach, wiped, good_part
        self.rates = true_rates(world)
        chances = [self.rates[kind] for kind in ("unit", "circuit", "blocked")]
        chances.append(true_chance(world, "unit", SPARE))
        prior = []
        for hypothesis in HYPOTHESES:
            weight = 1.0
            for present, chance in zip(hypothesis, chances, strict=True):
                weight *= chance if present else 1 - chance
            prior.append(weight)
        _, self.start = _told(prior, self._faulted(UNIT, True))
        self._known = {}

    def _faulted(self, fitted: int, dirt: bool) -> list:
        """Return how likely the position shows a fault, by hypothesis."""
        clean = 1 - self.rates["false_alarm"]
        causes = [h[fitted] + h[1] + (h[2] if dirt else 0) for h in HYPOTHESES]
        return [1 - clean * (1 - self.rates["shows"]) ** count for count in causes]

    def best(self, belief: tuple, state: tuple, moves: int) -> tuple:
        """Return (weighed minutes, minutes, comebacks, good parts, first move) from a belief on.

        `state` is (unit or spare fitted, whether dirt may still be there, whether it hangs, what proved it).
        """
        key = tuple(round(share, 7) for share in belief), state, moves
        if key not in self._known:
            ends = [self._closed(belief, state)] if state[3] == WALKED or not moves else []
            for move in self._moves(belief, state) if moves else []:
                ends.append(self._expected(move, moves - 1))
            self._known[key] = min(ends)
        return self._known[key]

    def _closed(self, belief: tuple, state: tuple) -> tuple:
        fitted, dirt, hangs, proved = state
        rows = list(zip(belief, HYPOTHESES, strict=True))
        live = sum(share for share, h in rows if h[1] or h[fitted] or (h[2] and dirt))
        good = sum(share for share, h in rows if not h[UNIT]) if fitted == SPARE_IN else 0.0
        minutes = (SEAT if hangs else 0.0) + (0.0 if proved == WALKED else UNPROVEN)
        return minutes + COMEBACK * live + self.good_part * good, minutes, live, good, "close"

    def _moves(self, belief: tuple, state: tuple) -> list:
        """Return (name, minutes, belief before its test, state, what a clean test proves) of each move."""
        fitted, dirt, hangs, proved = state
        test, here = MINUTES["test"], 0.0 if hangs else self.reach
        other = SPARE_IN if fitted == UNIT else UNIT
        changed = here + MINUTES["pull"] + MINUTES["plug"] + test
        name = "spare in" if other == SPARE_IN else "unit back"
        moves = [
            ("test", test, belief, state, max(proved, TESTED)),
            (name, changed, belief, (other, False, True, 0), TESTED),
            ("repair", REPAIR + test, self._repaired(belief), state, TESTED),
        ]
        if proved:
            moves.append(("walk", WALK, belief, state, WALKED))
        if dirt:
            reach = 0.0 if self.wiped else here
            wiped = (fitted, False, hangs, 0)
            moves.append(("wipe", reach + MINUTES["clean"] + test, belief, wiped, TESTED))
        return moves

    def _repaired(self, belief: tuple) -> tuple:
        """Return the belief with another circuit, which is as likely bad as any."""
        share = dict(zip(HYPOTHESES, belief, strict=True))
        both = {h: share[h] + share[(h[0], 1 - h[1], *h[2:])] for h in HYPOTHESES}
        bad = self.rates["circuit"]
        return tuple(both[h] * (bad if h[1] else 1 - bad) for h in HYPOTHESES)

    def _expected(self, move: tuple, moves: int) -> tuple:
        name, cost, belief, state, proves = move
        sums = [cost, cost, 0.0, 0.0]
        faulted = self._faulted(state[0], state[1])
        results = ((faulted, 0), ([1 - chance for chance in faulted], proves))
        for chances, proved in results:
            likely, told = _told(belief, chances)
            if likely > _RARE:
                left = self.best(told, (*state[:3], proved), moves)
                sums = [mine + likely * more for mine, more in zip(sums, left, strict=False)]
        return (*sums, name)


def _told(belief, chances: list) -> tuple:
    """Return (how likely a result is, the belief after it)."""
    shares = [share * chance for share, chance in zip(belief, chances, strict=True)]
    likely = sum(shares)
    return likely, tuple(share / likely for share in shares) if likely else tuple(belief)


def main():
    """Print the least minutes with cleaning as it is priced now, and with the reach of a position."""
    wanted = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    wanted.add_argument("--reach", type=float, default=2.5)
    wanted.add_argument("--world", nargs="+", default=["nominal"], choices=[world.name for world in WORLDS])
    wanted.add_argument("--depth", type=int, default=8, help="moves at most")
    wanted.add_argument("--good-part", type=float, default=GOOD_PART, help="minutes that one weighs")
    asked = wanted.parse_args()
    print("world            cleaning     minutes  comebacks  good parts (in 100 jobs)  first")
    for world in WORLDS:
        for wiped in (False, True) if world.name in asked.world else ():
            optimum = Optimum(world, asked.reach, wiped, asked.good_part)
            state = (UNIT, True, False, 0)
            _, minutes, live, good, first = optimum.best(optimum.start, state, asked.depth)
            how = "wiped" if wiped else "with reach"
            figures = f"{minutes + MINUTES['test']:9.2f} {100 * live:10.2f} {100 * good:11.2f}"
            print(f"{world.name:16} {how:10} {figures} {'':14} {first}")


if __name__ == "__main__":
    main()
