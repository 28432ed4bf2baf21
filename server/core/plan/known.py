"""What is known already: the causes that act, what all positions share, and the moves for both."""

from ..infer.figures import parts
from .moves import Move
from .moves import because

# A cause less likely than this is not worth naming.
_LIKELY = 0.1
# From here on what a repair loses if it was not needed may be less than what another test takes.
_WORTH_A_REPAIR = 0.5


class KnownCauses:
    """The causes that are known already, for one belief.

    `named` are the causes of the verdict, `certain` those that stand each by its own chance.
    """

    def __init__(self, observation, lookahead, named: list, certain: list):
        self.belief = observation.belief
        self.model = observation.model
        self.case = observation.case
        self.observation = observation
        self.hypotheses = lookahead.hypotheses
        self.candidates = lookahead.candidates
        self.state = observation.now()
        self.acting = self._acting(named + certain)

    def _acting(self, known: list) -> list:
        """Return the causes known to act in a test made now."""
        live = self.model.live()
        names = self.model.names
        return [cause for cause in self.belief.suspects if live[cause] and names[cause] in known]

    def shared(self) -> list:
        """Return the shared causes that are likely, when they alone are the best explanation.

        One that was repaired is none: what came after it is a cause of its own.
        """
        hypotheses, live = self.hypotheses, self.model.live()
        shared = [n for n, c in enumerate(self.belief.suspects) if self._is_shared(c) and live[c]]
        mask = 0
        for n in shared:
            mask |= 1 << n
        if not hypotheses or not hypotheses[0][0] or hypotheses[0][0] & ~mask:
            return []
        return [self.belief.suspects[n] for n in shared if 1.0 - self.belief.expect([(n, 0.0)]) >= _LIKELY]

    def _is_shared(self, cause: int) -> bool:
        return self.model.kinds[cause] in ("feed", "control")

    def fixes(self, marginals) -> list:
        """Return the moves that deal with the known causes, each with the test that proves it."""
        model = self.model
        units = []
        moves = []
        for cause in self.acting:
            if model.kinds[cause] == "unit":
                units.append(self.state.fitted.index(model.unit.index(cause)))
            elif model.kinds[cause] == "blocked":
                move = self.candidates.clean(self.state, [model.blocked.index(cause)])
                moves.append(because(move, "verdict clean"))
        moves = moves + self.repairs([cause for cause in self.acting if self._to_repair(cause)])
        if units:
            # A good one that lies there is as good as a new one.
            spare = self.candidates.exchanges.spare(self.state, marginals, units[0], [])
            if spare is not None and len(units) > 1:
                moves.insert(0, self.candidates.replace(self.state, units, spare))
            else:
                moves.insert(0, self.candidates.replace(self.state, units))
                if spare is not None:
                    move = self.candidates.exchanges.with_spare(self.state, units[0], spare)
                    moves.insert(0, because(move, "verdict spare"))
        moves.append(Move("retest", [], [], self.case.minutes["test"], "retest"))
        return moves

    def repairs(self, causes: list) -> list:
        """Return the repairs of circuits, feeds and control unit, the likeliest first."""
        rows = []
        for cause in causes:
            chance = 1.0 - self.belief.expect([(self.belief.bit[cause], 0.0)])
            rows.append((-int(chance * 1000000 + 0.5), cause))
        return [self.candidates.repair(cause) for _, cause in sorted(rows)]

    def likely(self, marginals) -> list:
        """Return the circuits that are likely to be bad by what was read of them, though none is certain."""
        rows = enumerate(marginals.circuit)
        likely = [self.model.circuits[place][-1] for place, chance in rows if chance >= _WORTH_A_REPAIR]
        return [cause for cause in likely if cause in self.belief.bit]

    def sure(self, causes: list) -> bool:
        """Tell whether it is sure that one of these is present, though not which."""
        absent = [(self.belief.bit[cause], 0.0) for cause in causes]
        return parts(1.0 - self.belief.expect(absent)) >= parts(self.case.confidence)

    def _to_repair(self, cause: int) -> bool:
        return self._is_shared(cause) or self.model.kinds[cause] == "circuit"

    def dealt(self, move: Move) -> list:
        """Return the known causes that a move deals with."""
        if move.kind == "repair":
            return move.places
        if not move.places:
            return [cause for cause in self.acting if self.model.kinds[cause] == "unit"]
        return [cause for cause in self.acting if [1 for place in move.places if self._is_at(cause, place)]]

    def _is_at(self, cause: int, place: int) -> bool:
        return cause == self.model.blocked[place] or cause in self.model.circuits[place]
