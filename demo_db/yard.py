"""Whole jobs of a made-up yard, one after the other, each with a cause that only the dice know.

A job goes the plain way: test, clean, exchange with a neighbour, repair what is left, test until it is
clean, close. What a hand does takes the minutes of `Hands`; what a test shows follows the rates of `Truth`.
The demo's past year is made of such jobs, and so are the yards that the figures are tried on.
"""

from collections.abc import Callable
from collections.abc import Sequence
from typing import NamedTuple

from demo_db.dice import Dice

Step = tuple[int, list[dict]]
"""How many milliseconds after the step before, and what is recorded then."""

_MINUTE = 60_000
_MOST_TESTS = 3  # without a fault before nobody looks any longer


class Truth(NamedTuple):
    """How often what is so: the odds with which one fault shares among the classes, and how tests read."""

    unit: float = 0.05
    circuit: float = 0.005
    blocked: float = 0.01
    feed: float = 0.001
    control: float = 0.001
    shows: float = 0.95
    false_alarm: float = 0.002


class Hands(NamedTuple):
    """Minutes that work takes in the middle; single times spread around them."""

    reach: float = 4.5
    pull: float = 0.7
    plug: float = 0.3
    fit: float = 0.9
    test: float = 1.4
    clean: float = 1.2
    repair: float = 18.0


class Visit(NamedTuple):
    """What comes in: a vehicle, what is complained about, the job's id, and the positions it has."""

    job: str
    vehicle: dict
    complaint: str
    layout: str
    positions: list[dict]
    part: str


class Worker:
    """Somebody at work on one job; `steps` is what came of it."""

    def __init__(
        self,
        visit: Visit,
        truth: Truth,
        hands: Hands,
        dice: Dice,
        label: Callable[[], str],
        sits: dict[str, str] | None = None,
        labelled: Sequence[str] = (),
    ):
        """Draw the cause of a visit; `label` gives the next label off the roll.

        `sits` is what sits on a vehicle that was here before, `labelled` what of it has a label.
        """
        self.visit = visit
        self.steps: list[Step] = []
        self._truth = truth
        self._hands = hands
        self._dice = dice
        self._label = label
        self._places = [each["id"] for each in visit.positions]
        self._sits = sits or {place: f"{visit.vehicle['id']}.{place}" for place in self._places}
        self._fresh = {*self._places}
        self._opened: set[str] = set()
        self._labelled = set(labelled)
        self.cause = self._drawn()

    def work(self) -> list[Step]:
        """Do the job; returns its steps."""
        visit = self.visit
        opened = {"vehicle": visit.vehicle, "complaint": visit.complaint, "layout": visit.layout,
                  "part": visit.part, "positions": visit.positions}  # fmt: skip
        self._record(0, "job_opened", **opened)
        faulted = self._first_fault()
        if not faulted:
            self._record(2 * _MINUTE, "job_closed", note="", why="not_found")
            return self.steps
        if len(faulted) >= min(3, len(self._places)):
            self._repair_shared(faulted)
        else:
            for place in faulted:
                self._settle(place)
        self._close()
        return self.steps

    # --- what is done

    def _first_fault(self) -> list[str]:
        for _ in range(_MOST_TESTS):
            faulted = self._test()
            if faulted:
                return faulted
        return []

    def _settle(self, place: str) -> None:
        """Find what is wrong at one position and mend it."""
        self._fresh.discard(place)
        self._spend("clean", "cleaned", position=place, note="")
        faulted = self._test()
        if place not in faulted and place not in self._test():
            return
        others = [each for each in self._places[::-1] if each != place]
        other = next((each for each in others if each not in faulted), others[0])
        mine, its = self._sits[place], self._sits[other]
        self._exchange(place, other)
        shown = self._test(), self._test()
        there = sum(place in each for each in shown)
        moved = sum(other in each for each in shown)
        if moved > there:
            self._replace(mine, its, other, place)
        else:
            self._exchange(place, other, home=True)
            self._repair("circuit", place)
        self._test()
        self._test()

    def _repair_shared(self, faulted: list[str]) -> None:
        groups = sorted({each["group"] for each in self.visit.positions if each["id"] in faulted})
        if len(groups) == 1:
            self._repair("feed", groups[0])
        if self._test():
            self._repair("control")
        self._test()
        self._test()

    def _repair(self, kind: str, what: str = "") -> None:
        self._spend("repair", "circuit_repaired", cause=f"{kind}:{what}" if what else kind, what="")
        self._is_gone(kind, what)

    def _is_gone(self, kind: str, what: str) -> None:
        if self.cause == (kind, what):
            self.cause = ("", "")

    def _exchange(self, one: str, other: str, home: bool = False) -> None:
        for place in (one, other):
            self._pull(place)
        self._sits[one], self._sits[other] = self._sits[other], self._sits[one]
        for place in (one, other):
            self._fit(place, hanging=not home)

    def _replace(self, bad: str, good: str, now_at: str, home: str) -> None:
        """Put a new sensor where the bad one was first, and the good one back."""
        for place in (now_at, home):
            self._pull(place)
        code = self._label()
        new = f"u{self._dice.bytes(6).hex()}"
        self._record(0, "unit_added", unit=new, part=self.visit.part, serial="", code=code, how="scanned",
                     place="out")  # fmt: skip
        self._labelled.add(new)
        self._sits[now_at], self._sits[home] = good, new
        for place in (now_at, home):
            self._fit(place, hanging=False)
        self._record(20_000, "unit_moved", unit=bad, place="counter", how="scanned", note="")
        self._is_gone("unit", bad)

    def _pull(self, place: str) -> None:
        unit = self._sits[place]
        self._fresh.discard(place)
        minutes = self._hands.pull + (0.0 if place in self._opened else self._reach(place))
        self._opened.add(place)
        self._spend(minutes, "unit_pulled", unit=unit, position=place, how="scanned")
        if unit not in self._labelled:
            self._labelled.add(unit)
            self._record(15_000, "unit_labelled", unit=unit, code=self._label(), how="scanned")

    def _fit(self, place: str, hanging: bool) -> None:
        fitted = {"unit": self._sits[place], "position": place, "how": "scanned", "override": ""}
        if hanging:
            self._spend("plug", "unit_fitted", **fitted, hanging=True)
            return
        self._spend("fit", "unit_fitted", **fitted)

    def _test(self) -> list[str]:
        faulted = [place for place in self._places if self._shows(place)]
        self._spend("test", "test_run", heard=True, faulted=faulted, silent=[], unplugged=[], codes=[],
                    came_and_went=False, note="")  # fmt: skip
        return faulted

    def _close(self) -> None:
        self._record(3 * _MINUTE, "walk_checked", positions=self._places, missed=[])
        self._record(_MINUTE, "job_closed", note="")

    # --- what the dice say

    def _drawn(self) -> tuple[str, str]:
        """Draw one cause as (class, position, group or unit), each cause by its odds."""
        groups = sorted({each["group"] for each in self.visit.positions})
        causes = [("unit", self._sits[place], self._truth.unit) for place in self._places]
        causes += [("circuit", place, self._truth.circuit) for place in self._places]
        causes += [("blocked", place, self._truth.blocked) for place in self._places]
        causes += [("feed", group, self._truth.feed) for group in groups]
        causes += [("control", "", self._truth.control)]
        weights = [rate / (1 - rate) for _, _, rate in causes]
        mark = self._dice.between(0, sum(weights))
        for (kind, what, _), weight in zip(causes, weights, strict=True):
            mark -= weight
            if mark < 0:
                return kind, what
        return "unit", self._sits[self._places[0]]

    def _shows(self, place: str) -> bool:
        chance = self._truth.shows if self._acts(place) else 0.0
        quiet = (1 - chance) * (1 - self._truth.false_alarm)
        return self._dice.between(0, 1) >= quiet

    def _acts(self, place: str) -> bool:
        kind, what = self.cause
        group = next(each["group"] for each in self.visit.positions if each["id"] == place)
        return {
            "unit": self._sits[place] == what,
            "circuit": place == what,
            "blocked": place == what and place in self._fresh,
            "feed": group == what,
            "control": True,
        }.get(kind, False)

    def _reach(self, place: str) -> float:
        planned = next(each["reach_minutes"] for each in self.visit.positions if each["id"] == place)
        return self._hands.reach * float(planned) / 3.0

    # --- how it is recorded

    def _spend(self, minutes: float | str, kind: str, **data) -> None:
        middle = getattr(self._hands, minutes) if isinstance(minutes, str) else minutes
        spread = (
            self._dice.between(0.75, 1.0) if self._dice.between(0, 1) < 0.5 else self._dice.between(1.0, 1.4)
        )
        self._record(int(middle * spread * _MINUTE), kind, **data)

    def _record(self, after: int, kind: str, **data) -> None:
        self.steps.append((after, [{"kind": kind, "data": data}]))
