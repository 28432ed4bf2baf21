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
        tests = self.case.tests
        self.own = [unit for unit in tests[0].fitted if unit != NOBODY] if tests else []
        fitted = observation.now().fitted
        others = [n for n, unit in enumerate(self.case.units) if unit.available and n not in self.own]
        is_in = [unit for unit in others if unit in fitted]
        # One that is in took the place of a unit that lies on the bench.
        self.any = len(others) > len(is_in) or (len(is_in) > 0 and len(self._benched(fitted)) > 0)

    def _benched(self, fitted: list) -> list:
        return [unit for unit in self.own if unit not in fitted and self.case.units[unit].available]

    def to_fit(self, hypotheses: list, total: float, state) -> float:
        """Return the minutes that it takes to fit others for the units that are bad and still in."""
        owed = 0.0
        for place, unit in enumerate(state.fitted):
            if self.any and unit >= 0:
                owed = owed + handled(self.case, place) * self._bad(unit, hypotheses, total)
        return owed

    def owed(self, hypotheses: list, total: float, state) -> float:
        """Return all minutes that are owed in a state where the question is settled."""
        owed = self.to_fit(hypotheses, total, state)
        if not self.any:
            return owed
        places = [place for place, unit in enumerate(state.fitted) if unit not in self.own]
        for n, unit in enumerate(self._benched(state.fitted)):
            if n < len(places):
                bad = self._bad(unit, hypotheses, total)
                if bad < self.case.confidence:
                    back = 2.0 * (handled(self.case, places[n]) + self.case.minutes["test"])
                    owed = owed + min(back, self.case.minutes["part"] * (1.0 - bad))
        return owed

    def _bad(self, unit: int, hypotheses: list, total: float) -> float:
        cause = self.observation.model.unit[unit]
        if cause not in self.bit:
            return 0.0
        weight = 0.0
        for mask, share in hypotheses:
            if mask >> self.bit[cause] & 1:
                weight = weight + share
        return weight / total
