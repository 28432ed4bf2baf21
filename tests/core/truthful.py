"""Somebody who works on a car of a hidden truth: answers each step as it is, and takes the app's first way.

What goes wrong by hand, and what such a person cannot know, is said by `habits`: chances by name, or what it
is ("provokes", "mute", and whether it is known that a fault comes and goes). What is told at the end: how
many `steps` and `tests`, what was `bought` and `wrongly` called bad, where no answer was `honest`, and which
screen came `twice` without news.
"""

import json

from tests.core.driver import Driver
from tests.core.true_car import TrueCar
from tests.core.truthful_answers import Answers
from tests.core.walker import CODES_SEED
from tests.core.walker import quick_core
from tests.core.walker import screen
from tests.core.walker import standing


class Lost(AssertionError):
    """A truthful person was refused, led in a circle, or to nothing at all."""


class Mechanic(Answers):
    """One job of one vehicle, from its first screen to its close."""

    def __init__(self, car: TrueCar, layout: str, positions: list, habits: dict | None = None):
        """Open the job."""
        self.car, self.habits = car, dict(habits or {})
        self.driver = Driver(quick_core())
        self.driver.codes = self.driver.core("codes", random=CODES_SEED, count=200)
        opened = {"layout": layout, "part": "PS-1", "positions": positions, "complaint": "beeps"}
        self.driver.fact("job_opened", vehicle={"id": "v1", "name": "Blue estate", "vin": ""}, **opened)
        self.view = self.driver.view()
        at = {each["id"]: each["unit"]["id"] for each in self.view["board"]["positions"]}
        # Which part a unit of the record is, as long as no label says it.
        self.units = {at[place]: car.sits[place] for place in at}
        self.swapped: dict[int, int] = {}
        self.came_again: dict[str, int] = {}
        self.steps = self.tests = 0
        self.story: list[str] = []
        self.bought: list[str] = []
        self.wrongly: list[tuple] = []
        self.not_honest: list[tuple] = []
        self.twice: list[tuple] = []

    def spare(self, bad=False):
        """Put a labelled part on the shelf before the work begins."""
        part = self.car.new_part(bad, self.car.shelf)
        added = {"unit": f"uspare{part:06d}", "part": "PS-1", "serial": "", "place": "stock"}
        self.driver.force("unit_added", code=self.label(part), how="scanned", **added)
        self.view = self.driver.view()

    def work(self, most=150):
        """Do each step until the job is closed or rests; return the mechanic."""
        while not (self.view["closed"] or self.view["paused"]):
            if self.steps == most:
                raise Lost(f"no end after {most} steps\n{self.told()}")
            self.steps += 1
            before, self.step = self.view, self.view["step"]
            self._judge()
            came_between = self._interrupted()
            self.story.append(f"{self.steps} {self.step['id']}: {came_between or self.answer()}")
            self.view = self.driver.view()
            if (
                not came_between
                and screen(before) == screen(self.view)
                and standing(before) == standing(self.view)
            ):
                self.twice.append((self.steps, self.step["id"]))
        return self

    def _interrupted(self) -> str:
        """Let something happen that no step asked for: parts mixed up on the ground, a night between."""
        out = [each["id"] for each in self.view["out"] if each["shown"]]
        if len(out) > 1 and self.chance("mixes"):
            self.habits["mixes"] = 0
            parts = [self.part(unit) for unit in out]
            self.record({"kind": "units_mixed", "data": {"units": out, "note": ""}})
            for part in parts[self.habits.get("labels that stay", 0) :]:
                del self.car.labels[part]
            return f"mixed up {parts}"
        if self.chance("rests"):
            self.record({"kind": "job_paused", "data": {"why": "customer", "part": "", "note": ""}})
            self.driver.core("reset", events=[{"event": each} for each in self.driver.events])
            self.tap(self.driver.step()["action"])
            assert self.driver.step()["title"] == self.step["title"], self.told()
            return "rested"
        return ""

    def _judge(self):
        wrong = [cause for cause in self.verdict() if not self.is_true(cause)]
        if wrong and wrong not in [each[2] for each in self.wrongly]:
            self.wrongly.append((self.steps, self.step["id"], wrong))

    def told(self) -> str:
        """Return the story of the job so far."""
        return "\n".join(self.story)

    # --- what the app believes, beside what is

    def verdict(self) -> list[str]:
        """Return the causes that the app names."""
        told = self.driver.core("reasoned", job=self.driver.job)
        return told["verdict"]["causes"] if told and told["verdict"] else []

    def is_true(self, cause: str) -> bool:
        """Tell whether a cause is there, or was until it was repaired."""
        kind, _, what = cause.partition("#")[0].partition(":")
        return self.part(what) in self.car.bad if kind == "unit" else cause.partition("#")[0] in self.car.ever

    def holds(self) -> dict:
        """Return which unit the record has at each position."""
        return self.driver.core("state")["vehicles"]["v1"]["holds"]

    def code(self, unit: str) -> str:
        """Return the label that a unit of the record carries."""
        return self.driver.core("state")["units"][unit]["code"]

    def part(self, unit: str) -> int:
        """Return the part that a unit of the record is, by its label where it has one."""
        code = self.code(unit)
        found = self.car.labelled(code) if code else None
        return self.units[unit] if found is None else found

    def label(self, part: int) -> str:
        """Stick a fresh label on a part and return it."""
        code = self.driver.codes[len(self.driver.labels)]
        self.driver.labels[f"label {len(self.driver.labels)}"] = self.car.labels[part] = code
        return code

    # --- recording

    def chance(self, habit: str) -> bool:
        """Tell whether a habit strikes now."""
        return self.car.dice.random() < self.habits.get(habit, 0)

    def record(self, *drafts) -> str:
        """Record drafts and let what they say be done to the car; return their kinds."""
        refusal = self.driver.check(*drafts)
        if refusal:
            raise Lost(f"refused {json.dumps(refusal)}\n{self.told()}")
        for draft in drafts:
            self._take_effect(draft["kind"], draft["data"])
            self.driver.force(draft["kind"], **draft["data"])
        return " ".join(sorted({draft["kind"] for draft in drafts}))

    def _take_effect(self, kind: str, data: dict):
        car = self.car
        if kind == "circuit_repaired":
            cause = data["cause"].partition("#")[0]
            if cause not in car.faults:
                self.not_honest.append((self.steps, self.step["id"], "repaired " + cause))
            car.faults.discard(cause)
        elif kind == "cleaned":
            car.faults.discard("blocked:" + data["position"])
        elif kind == "unit_moved" and data["place"] != "out":
            part = self.part(data["unit"])
            car.hand.remove(part)
            if data["place"] == "stock":
                car.shelf.append(part)
