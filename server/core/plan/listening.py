"""Listening as a next move: which positions, what it would show, and what that would say.

Nothing is taken apart for it and nothing changes by it, so it is only a move of now. Whoever listened once
hears the same again: where nothing was changed since, it is no move.
"""

from ..infer import reasons
from ..infer.entropy import bits
from ..infer.figures import apportion
from ..infer.figures import parts
from ..infer.figures import thousandths
from ..infer.noisy_or import ticks_on
from .moves import Move
from .outcome import Outcome

_READS = ("ticks", "silent")


class Listening:
    """What listening would show, for one belief."""

    def __init__(self, observation):
        self.belief = observation.belief
        self.model = observation.model
        self.case = observation.case
        self._hearing = {}

    def moves(self, state, places: list) -> list:
        """Return the moves for these positions, as far as listening there would tell anything new."""
        # Between ways who may be who nobody hears a difference worth a move.
        if not self.case.sort.listen or self.belief.ways > 1:
            return []
        minutes = self.case.minutes["listen"]
        return [
            Move("listen", [place], [], minutes, "listen")
            for place in places
            if state.fitted[place] >= 0 and self.model.listened.get(place) != self.model.sounding(place)
        ]

    def outcomes(self, move: Move, hypotheses: list) -> list:
        """Return what these hypotheses would lead to, as `Predictions.outcomes` does."""
        found = (Outcome(), Outcome())
        for mask, weight in hypotheses:
            ticks = self._ticks(move.places[0], mask)
            for outcome, chance in zip(found, (ticks, 1.0 - ticks)):
                if chance > 0.0:
                    outcome.total = outcome.total + weight * chance
                    outcome.hypotheses.append((mask, weight * chance))
        return [outcome for outcome in found if outcome.total > 0.0]

    def outlook(self, move: Move, entries: list) -> tuple:
        """Return (outcomes as shown, bits); `entries` are the explanations, best first."""
        place = move.places[0]
        quiet, scales = self._heard(place)
        ticks = quiet * self.belief.expect(scales)
        chances = [ticks, 1.0 - ticks]
        rows = sorted([(-share, n) for n, share in enumerate(apportion(chances)) if share > 0])
        outcomes = [
            {"reads": _READS[n], "chance": -less, "then": self._then(place, entries, n, chances[n])}
            for less, n in rows
        ]
        told = bits(chances)
        total = 0.0
        for weight, _ in entries:
            total = total + weight
        for weight, mask in entries:
            here = self._ticks(place, mask)
            told = told - weight / total * bits([here, 1.0 - here])
        return outcomes, thousandths(max(0.0, told))

    def _heard(self, place: int) -> tuple:
        """Return (the chance to tick with no suspect present, [(suspect, its chance to let it tick)])."""
        if place not in self._hearing:
            quiet = 1.0 - self.case.rates["tick_false"]
            scales = []
            for cause in self.model.sounding(place):
                scale = ticks_on(self.model.kinds[cause], self.case.rates)
                if cause in self.belief.bit:
                    scales.append((self.belief.bit[cause], scale))
                else:
                    chance = self.belief.alone[cause]
                    quiet = quiet * (1.0 - chance + chance * scale)
            self._hearing[place] = (quiet, sorted(scales))
        return self._hearing[place]

    def _ticks(self, place: int, mask: int) -> float:
        """Return the chance to tick where just these suspects are present."""
        chance, scales = self._heard(place)
        for suspect, scale in scales:
            if mask >> suspect & 1:
                chance = chance * scale
        return chance

    def _then(self, place: int, entries: list, n: int, chance: float) -> dict:
        """Say what would be the likeliest then; nothing is promised, for no variation is tried."""
        best, likeliest = 0.0, 0
        for weight, mask in entries:
            ticks = self._ticks(place, mask)
            joint = weight * (1.0 - ticks if n else ticks)
            if joint > best:
                best, likeliest = joint, mask
        suspects = self.belief.suspects
        live = self.model.live()
        causes = [cause for at, cause in enumerate(suspects) if likeliest >> at & 1 and live[cause]]
        if not causes:
            return reasons.OPEN
        return reasons.leading([reasons.cause(self.model, cause) for cause in causes], parts(best / chance))
