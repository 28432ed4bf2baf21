"""What the planner is compared with: the habit of the trade, and chance.

All policies stop by the same rule, so that only the choice of moves differs.
"""

from collections import namedtuple

from server.core.infer.belief import Belief
from server.core.infer.case import read
from server.core.infer.explanations import likeliest
from server.core.infer.model import Model
from server.core.plan.answer import MOST_EXPLANATIONS
from server.core.plan.answer import reason
from tests.bench.planner_cars import MINUTES

CONFIDENCE = 0.95
MOST_TESTS = 25

# `how` is verdict, clear or acts; `right` whether it is true; `chance` what was claimed for it.
End = namedtuple("End", ("how", "chance", "right", "minutes", "tests", "wrong_buys"))


class View:
    """What the evidence says, without the planner."""

    def __init__(self, car):
        self.model = Model(read(car.case))
        self.belief = Belief(self.model)
        names = self.model.names
        self.chance = dict(zip(names, self.belief.marginals(), strict=True))
        self.explanations = []
        for share, mask in likeliest(self.belief, MOST_EXPLANATIONS):
            present = [names[c] for n, c in enumerate(self.belief.suspects) if mask >> n & 1]
            self.explanations.append((share, frozenset(present)))
        self.clear = self.belief.absent(self.model.live())


def settled(car, view) -> tuple | None:
    """Return (how, chance, right) once there is a verdict, a clear, or it is known what acts."""
    if not view.explanations:
        return None
    share, causes = view.explanations[0]
    if causes and share >= CONFIDENCE:
        return "verdict", share, causes == car.present & car.suspects
    live = car.live()
    acts = car.present & car.suspects & live
    if view.clear >= CONFIDENCE:
        return "clear", view.clear, not acts
    sums = {}
    shared = 0.0
    for share, causes in view.explanations:
        sums[causes & live] = sums.get(causes & live, 0.0) + share
        shared += share if _is_shared(causes & live) else 0.0
    best = max(sums, key=lambda key: (sums[key], sorted(key)))
    if best and sums[best] >= CONFIDENCE:
        return "acts", sums[best], acts == best
    # No exchange looks behind a supply or control unit that is down: it is repaired first.
    return ("acts", shared, _is_shared(acts)) if shared >= CONFIDENCE else None


def _is_shared(causes) -> bool:
    return any(cause == "control" or cause.startswith("feed:") for cause in causes)


def follow(car, choose) -> End:
    """Let a policy work on a car until it is settled, or until nobody would go on."""
    car.test()
    while True:
        view = View(car)
        end = settled(car, view)
        if end or car.tests >= MOST_TESTS or len(car.case["meter"]) >= MOST_TESTS:
            how, chance, right = end or ("open", 0.0, False)
            minutes = car.minutes + MINUTES["part"] * car.wrong_buys
            return End(how, chance, right, minutes, car.tests, car.wrong_buys)
        car.do(choose(car, view))


def planner(car, view) -> dict:
    """Do what the core proposes first."""
    found = reason(car.case)["next"]
    return found[0] if found else {"move": "retest"}


def habit(car, view) -> dict:
    """Exchange the suspect with the nearest good one, one pair at a time."""
    places = car.places
    open_ = [place for place in car.case["tests"][-1]["faulted"] if _unexplained(car, view, place)]
    for place in open_:
        good = [p for p in places if p != place and _doubt(car, view, p) < 0.1]
        good.sort(
            key=lambda p: (car.group[p] != car.group[place], abs(places.index(p) - places.index(place)))
        )
        tried = [test["fitted"][place] for test in car.case["tests"]]
        good = [p for p in good if car.fitted[p] not in tried] or good
        if good:
            return _exchange(car, place, good[0])
    return {"move": "retest"}


def _own(car, place: str) -> list:
    own = [f"unit:{car.fitted[place]}", f"circuit:{place}"]
    return [*own, f"blocked:{place}"] if car.may_block[place] else own


def _unexplained(car, view, place: str) -> bool:
    return max(view.chance[cause] for cause in _own(car, place)) < CONFIDENCE


def _doubt(car, view, place: str) -> float:
    return sum(view.chance[cause] for cause in _own(car, place))


def chance(car, view) -> dict:
    """Exchange a faulted position with any other."""
    faulted = car.case["tests"][-1]["faulted"]
    place = car.dice.choice(faulted or car.places)
    return _exchange(car, place, car.dice.choice([p for p in car.places if p != place]))


def _exchange(car, one: str, other: str) -> dict:
    return {"move": "exchange", "fitted": {one: car.fitted[other], other: car.fitted[one]}}
