"""How a job is done from the first test to its close: as the app says, and by careful habit."""

import json

from server.core.infer.holds import is_clear
from server.core.plan.answer import reason
from tests.bench.jobs_cars import MOST_MOVES
from tests.bench.jobs_cars import End
from tests.bench.jobs_cars import JobCar
from tests.bench.planner_policies import CONFIDENCE_PPB


class App:
    """Does what the core proposes first; remembers what it said, for many jobs come to the same case."""

    def __init__(self, walks: bool = True):
        """Remember nothing yet; `walks`: the test pole is used before the close."""
        self.walks = walks
        self._said: dict = {}

    def follow(self, car: JobCar) -> End:
        """Work on a car until nothing is left to do, or nobody would go on."""
        car.test()
        while car.moves < MOST_MOVES:
            answer = self._reason(car.case)
            move = self._move(answer, car)
            if move is None and not (self.walks and car.walk()):
                return car.end(True)
            # What stays quiet at the pole is tested again.
            car.do(move or {"move": "retest"})
        return car.end(False)

    def _reason(self, case: dict) -> dict:
        key = json.dumps(case, sort_keys=True)
        if key not in self._said:
            answer = reason(case)
            kept = ("verdict", "clear", "clear_holds", "next")
            self._said[key] = {name: answer[name] for name in kept}
        return self._said[key]

    def _move(self, answer: dict, car: JobCar) -> dict | None:
        if not answer["next"]:
            return None
        move = answer["next"][0]
        live = car.live_names()
        named = (answer["verdict"] or {"causes": []})["causes"]
        if named and not live.intersection(named) and not is_clear(answer, CONFIDENCE_PPB):
            # The guide proves what was mended before it lets anything else be touched.
            return {"move": "retest"}
        return move


class Habit:
    """Careful habit with perfect bookkeeping: one suspect at a time, until the first clean test."""

    def follow(self, car: JobCar) -> End:
        """Work on a car until a test is clean, or nobody would go on."""
        faulted = car.test()
        tried: list = []
        while faulted and car.moves < MOST_MOVES:
            place = faulted[0]
            good = [p for p in car.places if p not in faulted and (car.fitted[place], p) not in tried]
            row = [p for p in car.places if car.group[p] == car.group[place]]
            if not good or (set(row) <= set(faulted) and self._shared(car, place)):
                faulted = self._wiring(car, faulted)
                tried = []
                continue
            partner = min(good, key=lambda p: (car.reach[p], car.places.index(p)))
            tried.append((car.fitted[place], partner))
            faulted = _after(car, _exchange(car, place, partner))
            if partner in faulted:
                faulted = _after(car, {"move": "replace", "fitted": {partner: f"new{car.moves}"}})
            elif place in faulted:
                faulted = _after(car, {"move": "repair", "cause": f"circuit:{place}"})
        return car.end(not faulted)

    def _shared(self, car: JobCar, place: str) -> list:
        """Return what a position shares with others and nobody has repaired yet."""
        done = [cause for test in car.case["tests"] for cause in test["repaired"]]
        return [cause for cause in (f"feed:{car.group[place]}", "control") if cause not in done]

    def _wiring(self, car: JobCar, faulted: list) -> list:
        """Repair what a whole row that faults shares, the supply first; then fit a new part."""
        for cause in self._shared(car, faulted[0]):
            return _after(car, {"move": "repair", "cause": cause})
        return _after(car, {"move": "replace", "fitted": {faulted[0]: f"new{car.moves}"}})


def _after(car: JobCar, move: dict) -> list:
    car.do(move)
    return car.case["tests"][-1]["faulted"]


def _exchange(car: JobCar, one: str, other: str) -> dict:
    return {"move": "exchange", "fitted": {one: car.fitted[other], other: car.fitted[one]}}
