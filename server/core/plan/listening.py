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

    def outlook(self, move: Move, entries: list, foreseen) -> tuple:
        """Return (outcomes as shown, bits); `entries` are the explanations, best first."""
        place = move.places[0]
        quiet, scales = self._heard(place)
        ticks = quiet * self.belief.expect(scales)
        chances = [ticks, 1.0 - ticks]
        rows = sorted([(-share, n) for n, share in enumerate(apportion(chances)) if share > 0])
        outcomes = [
            {"reads": _READS[n], "chance": -less, "then": self._then(place, entries, n, chances[n], foreseen)}
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

    def _then(self, place: int, entries: list, n: int, chance: float, foreseen) -> dict:
        """Say what would be the likeliest then, and whether it would stand."""
        fresh = self._fresh(place) if n else []
        rows = []
        for weight, mask in entries:
            for extra in [None] + [cause for cause, _ in fresh]:
                rows.append((weight * self._exactly(place, mask, n, fresh, extra), mask, extra))
        best = max([joint for joint, _, _ in rows])
        _, likeliest, extra = next(row for row in rows if row[0] == best)
        live = self.model.live()
        suspects = enumerate(self.belief.suspects)
        causes = [cause for at, cause in suspects if likeliest >> at & 1 and live[cause]]
        if extra is not None:
            causes.append(extra)
        if not causes:
            return reasons.OPEN
        share = best / chance
        stands = foreseen.reads(rows, fresh, (likeliest, extra), chance)
        say = reasons.settled if stands else reasons.leading
        return say([reasons.cause(self.model, cause) for cause in causes], parts(share))

    def _fresh(self, place: int) -> list:
        """Return the causes that a silence would make suspects, with their chances."""
        causes = self.model.sounding(place)
        return [(cause, self.belief.alone[cause]) for cause in causes if cause not in self.belief.bit]

    def _exactly(self, place: int, mask: int, n: int, fresh: list, extra) -> float:
        """Return the chance of what is heard where these suspects are present, of the fresh just `extra`."""
        if not fresh:
            ticks = self._ticks(place, mask)
            return 1.0 - ticks if n else ticks
        ticks = 1.0 - self.case.rates["tick_false"]
        result = 1.0
        for suspect, scale in self._heard(place)[1]:
            if mask >> suspect & 1:
                ticks = ticks * scale
        for cause, chance in fresh:
            result = result * (chance if cause == extra else 1.0 - chance)
            if cause == extra:
                ticks = ticks * ticks_on(self.model.kinds[cause], self.case.rates)
        return result * (1.0 - ticks if n else ticks)
