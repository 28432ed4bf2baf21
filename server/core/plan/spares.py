"""What is still owed when a question is settled while a spare is at hand: a part, or proof of the old one.

With no spare every way to the cause ends in the same repair, so that it tells no move from another. A spare
that is in is that repair already; but the unit on the bench has to be known to be bad, else it is a good one
that was bought anew, or the spare goes back.
"""

from ..infer.case import NOBODY
from .moves import handled


class Spares:
    """Knows which units came with the vehicle, and counts what is owed for the others."""

    def __init__(self, observation):
        self.observation = observation
        self.case = observation.case
        self.bit = observation.belief.bit
        fitted = observation.now().fitted
        # Before any test nothing was exchanged.
        self.first = self.case.tests[0].fitted if self.case.tests else fitted
        self.own = [unit for unit in self.first if unit != NOBODY]
        others = [n for n in range(len(self.case.units)) if self._is_spare(n)]
        is_in = [n for n in others if n in fitted]
        # One that is in took the place of a unit that lies on the bench.
        self.any = len(others) > len(is_in) or (len(is_in) > 0 and len(self._benched(fitted)) > 0)

    def _is_spare(self, unit: int) -> bool:
        """Tell whether a unit was at hand; of a part that was bought for the vehicle that is not so."""
        return unit >= 0 and self.case.units[unit].available and unit not in self.own

    def _benched(self, fitted: list) -> list:
        return [unit for unit in self.own if unit not in fitted and self.case.units[unit].available]

    def to_fit(self, hypotheses: list, total: float, state) -> float:
        """Return the minutes to fit others for the units that are bad and still in, and to test."""
        if not self.any:
            return 0.0
        owed = 0.0
        bad = 0.0
        for place, unit in enumerate(state.fitted):
            if unit >= 0:
                here = self._bad(unit, hypotheses, total)
                bad = bad + here
                owed = owed + handled(self.case, state.hanging, place, False) * here
        return owed + self.case.minutes["test"] * min(1.0, bad)

    def owed(self, hypotheses: list, total: float, state) -> float:
        """Return all minutes that are owed in a state where the question is settled."""
        owed = self.to_fit(hypotheses, total, state)
        if not self.any:
            return owed
        for place, unit in self.exchanged(state):
            bad = self._bad(unit, hypotheses, total)
            if bad < self.case.confidence:
                owed = owed + min(self._told(state, place, bad), self.case.minutes["part"] * (1.0 - bad))
        return owed

    def exchanged(self, state) -> list:
        """Return (position, unit): each unit of the vehicle that came out, where another took its place."""
        free = [place for place, unit in enumerate(state.fitted) if self._is_spare(unit)]
        waiting = self._benched(state.fitted)
        pairs = []
        for place in list(free):
            unit = self.first[place]
            if unit in waiting:
                pairs.append((place, unit))
                waiting.remove(unit)
                free.remove(place)
        for n, unit in enumerate(waiting):
            if n < len(free):
                pairs.append((free[n], unit))
        return pairs

    def to_tell(self, state, chances: list) -> list:
        """Return the (position, unit) that go back in to be told whether the unit is bad, where that pays.

        `chances` say how likely each unit is bad.
        """
        found = []
        for place, unit in self.exchanged(state):
            bad = chances[unit]
            lost = self.case.minutes["part"] * (1.0 - bad)
            if bad < self.case.confidence and self._told(state, place, bad) < lost:
                found.append((place, unit))
        return found

    def _told(self, state, place: int, bad: float) -> float:
        """Return the minutes to put a unit back and test it, and to take it out again if it is bad."""
        once = handled(self.case, state.hanging, place, False) + self.case.minutes["test"]
        return once * (1.0 + bad)

    def _bad(self, unit: int, hypotheses: list, total: float) -> float:
        cause = self.observation.model.unit[unit]
        if cause not in self.bit:
            return 0.0
        weight = 0.0
        for mask, share in hypotheses:
            if mask >> self.bit[cause] & 1:
                weight = weight + share
        return weight / total
