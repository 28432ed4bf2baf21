"""What the planner is compared with: the habit of the trade, and chance.

All policies stop by the same rule, so that only the choice of moves differs.
"""

from collections import namedtuple

from server.core.infer.figures import WHOLE
from server.core.infer.holds import is_clear
from server.core.plan.answer import reason
from tests.bench.planner_cars import MINUTES
from tests.bench.planner_cars import SEAT

CONFIDENCE = 0.95
CONFIDENCE_PPB = 950_000_000
MOST_TESTS = 25

# `how` is verdict, clear or acts; `right` whether it is true, `told` whether it is but for dirt that no test
# can tell (`_untold`); `chance` what was claimed for it.
End = namedtuple("End", ("how", "chance", "right", "told", "minutes", "tests", "wrong_buys"))


class View:
    """What the evidence says, without the planner."""

    def __init__(self, car):
        said = reason(car.case, plan=False)
        self.chance = {row["cause"]: row["probability"] / WHOLE for row in said["causes"]}
        rows = [(row["probability"] / WHOLE, frozenset(row["causes"])) for row in said["explanations"]]
        self.explanations = rows
        self.verdict = said["verdict"]
        self.clear = said["clear"] / WHOLE
        self.is_clear = is_clear(said, CONFIDENCE_PPB)
        self.certain = {row["cause"] for row in said["certain"]}


def settled(car, view) -> tuple | None:
    """Return (how, chance, right, right of what can be told) once it is settled."""
    live = car.live()
    seen = (car.present | car.mended) & car.suspects()
    acts = seen & live - car.mended
    if view.verdict:
        causes = frozenset(view.verdict["causes"])
        told = causes - _untold(car, causes) == seen - _untold(car, seen)
        return "verdict", view.verdict["probability"] / WHOLE, causes == seen, told
    if view.is_clear:
        return "clear", view.clear, not acts, not acts
    sums = {}
    shared = 0.0
    for share, causes in view.explanations:
        sums[causes & live] = sums.get(causes & live, 0.0) + share
        shared += share if _is_shared(causes & live) else 0.0
    best = max(sums, key=lambda key: (sums[key], sorted(key)))
    if best and sums[best] >= CONFIDENCE and best <= view.certain:
        return "acts", sums[best], acts == best, acts == best
    # No exchange looks behind a supply or control unit that is down: it is repaired first.
    return ("acts", shared, _is_shared(acts), _is_shared(acts)) if shared >= CONFIDENCE else None


def _untold(car, causes) -> frozenset:
    """Return the dirt among some causes that no test can tell: it is gone, and wherever it was behind a fault
    another of them was as well, so that every test reads the same with it and without.
    """
    gone = {cause for cause in causes - car.live() if cause.startswith("blocked:")}
    others = causes - gone
    alone = [behind for behind in car.behind_faults if not behind & others]
    return frozenset(cause for cause in gone if not any(cause in behind for behind in alone))


def _is_shared(causes) -> bool:
    return any(cause == "control" or cause.startswith("feed:") for cause in causes)


def follow(car, choose, look=View) -> End:
    """Let a policy work on a car until it is settled, or until nobody would go on."""
    car.test()
    while True:
        view = look(car)
        end = settled(car, view)
        if end or car.tests >= MOST_TESTS or len(car.case["meter"]) >= MOST_TESTS:
            how, chance, right, told = end or ("open", 0.0, False, False)
            minutes = car.minutes + SEAT * len(car.hanging) + MINUTES["part"] * car.wrong_buys
            return End(how, chance, right, told, minutes, car.tests, car.wrong_buys)
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
