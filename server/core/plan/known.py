"""What is known already: the causes that act, what all positions share, and the moves for both."""

from ..infer.figures import parts
from .hypotheses import live_fault
from .moves import Move
from .moves import because

# A cause less likely than this is not worth naming.
_LIKELY = 0.1


class KnownCauses:
    """The causes that are known already, for one belief; `named` are the causes of the verdict."""

    def __init__(self, observation, lookahead, named: list):
        self.belief = observation.belief
        self.model = observation.model
        self.case = observation.case
        self.observation = observation
        self.hypotheses = lookahead.hypotheses
        self.candidates = lookahead.candidates
        self.state = observation.now()
        self.named = named
        self.acting = self._acting()

    def _acting(self) -> list:
        """Return the causes known to act in a test made now: by the verdict, or beyond it.

        Without a verdict the set of live causes can be known all the same, when what is left in
        doubt is past: a blockage that is gone, a unit on the bench.
        """
        live = self.model.live()
        acting = [cause for cause in self.belief.suspects if live[cause]]
        if self.named:
            return [cause for cause in acting if self.model.names[cause] in self.named]
        mask, weight = live_fault(self.hypotheses, self.observation.live(self.state))
        if parts(weight) < parts(self.case.confidence):
            return []
        return [cause for cause in acting if mask >> self.belief.bit[cause] & 1]

    def shared(self) -> list:
        """Return the shared causes that are likely, when they alone are the best explanation."""
        hypotheses = self.hypotheses
        shared = [n for n, c in enumerate(self.belief.suspects) if self._is_shared(c)]
        mask = 0
        for n in shared:
            mask |= 1 << n
        if not hypotheses or not hypotheses[0][0] or hypotheses[0][0] & ~mask:
            return []
        return [self.belief.suspects[n] for n in shared if 1.0 - self.belief.expect([(n, 0.0)]) >= _LIKELY]

    def _is_shared(self, cause: int) -> bool:
        return self.model.kinds[cause] in ("feed", "control")

    def fixes(self, marginals) -> list:
        """Return the moves that deal with the known causes, then the test that proves it."""
        model = self.model
        units = []
        moves = []
        for cause in self.acting:
            kind = model.kinds[cause]
            if kind == "unit":
                units.append(self.state.fitted.index(model.unit.index(cause)))
            elif kind == "blocked":
                move = self.candidates.clean([model.blocked.index(cause)])
                moves.append(because(move, "verdict clean"))
            elif kind == "circuit":
                place = [rows[-1] for rows in model.circuits].index(cause)
                if not self._measured(cause):
                    moves.append(because(self.candidates.meter(place), "verdict meter"))
        if units:
            replace = because(self.candidates.replace(units), "verdict replace")
            moves.insert(0, replace)
            spare = self.candidates.exchanges.spare(self.state, marginals, units[0], [])
            if spare is not None and len(units) == 1:
                move = self.candidates.exchanges.with_spare(units[0], spare)
                moves.insert(1, because(move, "verdict spare"))
        repairs = [cause for cause in self.acting if self._to_repair(cause)]
        why = "repair" if repairs else "retest"
        moves.append(Move("retest", [], [], self.case.minutes["test"], why))
        return moves

    def _measured(self, cause: int) -> bool:
        return self.model.meter_bad[cause] + self.model.meter_good[cause] > 0

    def _to_repair(self, cause: int) -> bool:
        """Tell whether the next thing is a repair, for which there is no move."""
        return self._is_shared(cause) or (self.model.kinds[cause] == "circuit" and self._measured(cause))

    def dealt(self, move: Move) -> list:
        """Return the known causes that a move deals with."""
        if move.kind == "retest":
            return [cause for cause in self.acting if self._to_repair(cause)]
        if not move.places:
            return [cause for cause in self.acting if self.model.kinds[cause] == "unit"]
        return [cause for cause in self.acting if [1 for place in move.places if self._is_at(cause, place)]]

    def _is_at(self, cause: int, place: int) -> bool:
        return cause == self.model.blocked[place] or cause in self.model.circuits[place]
