"""Cars for whole jobs, followed to the close: the same number is the like car in every world."""

import random
from collections import namedtuple

from server.core.infer.belief import Belief
from server.core.infer.case_form import read
from server.core.infer.model import Model
from tests.bench.planner_cars import BOARDS
from tests.bench.planner_cars import MINUTES
from tests.bench.planner_cars import REACH
from tests.bench.planner_cars import ROW
from tests.bench.planner_cars import SEAT
from tests.bench.planner_cars import Car
from tests.bench.planner_cars import Truth
from tests.bench.planner_cars import causes_drawn
from tests.bench.worlds import ASSUMED
from tests.bench.worlds import World
from tests.bench.worlds import true_chance

# So many ways to get at the positions are drawn: few, so that what the core says can be remembered.
PROFILES = 40
MOST_MOVES = 60
# Minutes that the walk with the test pole takes before the close.
WALK = 1.0
# The assumed chance that a spare at hand is bad: it was good on other cars.
SPARE = 0.01

# `minutes` is what the work took; `good` counts good parts bought, `live` tells whether a fault was left,
# `closed` whether the job came to an end. The last two are what the true rates say of the same evidence:
# chances instead of counts, so that a few jobs tell as much as many.
End = namedtuple("End", ("minutes", "good", "live", "closed", "good_chance", "live_chance"))


class JobCar(Car):
    """A car on a job to its end: it knows which parts were bought for it."""

    def __init__(self, board: int, truth: Truth):
        """Put a unit into each position; the first test is paid for, nothing is bought yet."""
        super().__init__(board, truth)
        self.minutes = MINUTES["test"]
        self.moves = 0
        self.thrown_away: list = []
        self.walked: list | None = None

    def do(self, move: dict):
        """Carry out a move; what a new part takes the place of is not used again."""
        self.moves += 1
        if move["move"] == "replace":
            self.thrown_away += [self.fitted[place] for place in move["fitted"]]
        super().do(move)
        self.thrown_away = [unit for unit in self.thrown_away if unit not in self.fitted.values()]

    def walk(self) -> list:
        """Walk behind the car with the test pole; return what stays quiet, a fault as surely as in a test.

        It is no self-test: the case knows nothing of it.
        """
        self.moves += 1
        self.minutes += WALK
        self.walked = self.shown(random.Random(f"walk {self.truth.seed} {self.moves}"))
        return self.walked

    def on_bench(self) -> list:
        """Return the units of this car that were taken out and not yet given up."""
        own = [entry["id"] for entry in self.case["units"] if not entry["id"].startswith("s")]
        return [unit for unit in own if unit not in self.fitted.values() and unit not in self.thrown_away]

    def given_up(self) -> list:
        """Return the units that the job used up.

        A new one that lies beside a spare that stayed is none: it takes the spare's place on the shelf.
        """
        bench = self.on_bench()
        stayed = len([unit for unit in self.fitted.values() if unit.startswith("s")])
        shelved = [unit for unit in bench if unit.startswith("new")][:stayed]
        return self.thrown_away + [unit for unit in bench if unit not in shelved]

    def live_names(self) -> set:
        """Return the causes that would act now, each with its generation, as the core names them."""
        done = [cause for test in self.case["tests"] for cause in test["repaired"]]
        found = set()
        for cause in self.live():
            again = done.count(cause) + 1
            found.add(f"{cause}#{again}" if again > 1 else cause)
        return found

    def end(self, closed: bool) -> End:
        """Return what became of the job; a unit left on the bench was bought anew."""
        self.minutes += SEAT * len(self.hanging)
        gone = self.given_up()
        good = len([unit for unit in gone if f"unit:{unit}" not in self.present])
        chances, live = self._by_true_rates()
        doubt = sum(1 - chances[f"unit:{unit}"] for unit in gone)
        return End(self.minutes, good, bool(self.live() & self.present), closed, doubt, live)

    def _by_true_rates(self) -> tuple:
        """Return (the chance of each cause, the chance that a live one is present) in the true world."""
        world = self.truth.world
        rates = {kind: self.true_rates[kind] for kind in ASSUMED}
        units = []
        for entry in self.case["units"]:
            prior = {"prior": true_chance(world, "unit", entry["prior"])} if "prior" in entry else {}
            units.append(entry | prior)
        tests = list(self.case["tests"])
        if self.walked is not None:
            tests.append({"fitted": dict(self.fitted), "faulted": self.walked})
        case = self.case | {"rates": self.rates | rates, "units": units, "tests": tests}
        model = Model(read(case))
        belief = Belief(model)
        alive = model.live()
        clear = belief.absent(alive)
        chances = belief.marginals()
        for cause, chance in enumerate(chances):
            if alive[cause] and cause not in belief.suspects:
                clear *= 1 - chance
        return dict(zip(model.names, chances, strict=True)), 1 - clear


def draw_reach(board: int, seed: int, number: int) -> list:
    """Draw the minutes to get at each position, one of a few ways."""
    profile = random.Random(f"reach {seed} {board} {number % PROFILES}")
    return [profile.choice(REACH) for _, count in BOARDS[board] for _ in range(count)]


def draw_job(board: int, world: World, seed: int, number: int, spare: bool, drawn_reach: bool) -> Truth:
    """Draw what is wrong with a car whose first test shows a fault that does not come and go."""
    reach = draw_reach(board, seed, number) if drawn_reach else ROW * (board // len(ROW))
    spares = [SPARE] if spare else []
    attempt = 0
    while True:
        dice = random.Random(f"{seed} {board} {number} {attempt}")
        luck = dice.randrange(1 << 30)
        present = causes_drawn(board, dice, world, spares)
        truth = Truth("drawn", frozenset(present), reach, ASSUMED["shows"], spares, luck, world)
        if JobCar(board, truth).test():
            return truth
        attempt += 1
