"""Looking ahead to the end: the least expected minutes until settled, over all that may come.

Every move is followed by each of its results, and each result by its best move, until all is settled
(expectimax over beliefs, as by Bellman 1957). What comes up in several ways is worked out once. Only
small questions are small enough for it; it counts its steps, the same on every machine, and gives up
when they run out. Then the look two moves ahead in `lookahead` stands.
"""

from ..infer.figures import hundredths
from .hypotheses import likeliest
from .hypotheses import weight_clear

# Steps (the results of one move in one belief) that a phone takes well within a second.
_STEPS = 700
# With more positions than this a test shows too much to follow all of it.
SMALL_BOARD = 5
# What is rarer than this from here on is estimated, so that chance can't make it endless.
_RARE = 0.03
_NOTICED = 0.01
# When it is as likely as this that all is clear, one more test may settle it.
_HOPE = 0.1
_HYPOTHESES = 10
_DEEPEST = 4
_NOTED = 0.05
_SHARES = 1000000
_ENDLESS = 1000000.0


class Endgame:
    """Looks ahead to the end with the measures of a LookAhead, which has priced its belief already."""

    def __init__(self, lookahead):
        self.lookahead = lookahead
        self.observation = lookahead.observation
        self.candidates = lookahead.candidates
        self.test = lookahead.case.minutes["test"]
        self.cheapest = self.test
        self.steps = 0
        self.known = {}

    def best(self, state, moves: list, hypotheses: list):
        """Return the best of the moves, the most promising first; None when it is too much to work out."""
        # What is wiped in passing settles little: as the least of what a rest takes it would prune nothing.
        costs = [move.minutes for move in moves if move.kind not in ("retest", "clean")]
        self.cheapest = min(costs or [self.test])
        _, best = self._best(state, moves, hypotheses, 1.0, 0)
        return None if self.steps > _STEPS else best

    def _best(self, state, moves: list, hypotheses: list, chance: float, depth: int) -> tuple:
        """Return the least (minutes to the end, move)."""
        best = None
        chosen = None
        for move in moves:
            if best is not None and move.minutes >= best:
                continue
            self.steps += 1
            if self.steps > _STEPS:
                break
            look = self.lookahead.look(state, move, hypotheses, _NOTICED)
            # A result that is certain beforehand tells nothing, and to see a fault again that is there
            # brings little, over and over.
            hopeless = move.kind == "retest" and weight_clear(hypotheses, look.live) <= _HOPE
            if len(look.outcomes) < 2 or hopeless:
                continue
            expected = look.minutes
            waiting = []
            for outcome in look.outcomes:
                if self.lookahead.remaining.settled(outcome, look.live):
                    owed = self.lookahead.remaining.left(outcome, look.reached, look.live)
                    expected = expected + outcome.total * owed
                else:
                    least = self._least(look, outcome)
                    waiting.append((outcome, least))
                    expected = expected + outcome.total * least
            for outcome, least in waiting:
                if best is not None and expected >= best:
                    break
                left = self._left(look, outcome, chance * outcome.total, depth)
                expected = expected + outcome.total * (left - least)
            # The first move has to be beaten by what a person would notice.
            if best is None or expected < best - (0.0 if depth else _NOTED):
                best = expected
                chosen = move
        return best, chosen

    def _least(self, look, outcome) -> float:
        """Return what the rest takes at least: a test where that can be the end of it, else a move."""
        if weight_clear(outcome.hypotheses, look.live) > _HOPE * outcome.total:
            return self.test
        return self.cheapest

    def _left(self, look, outcome, chance: float, depth: int) -> float:
        """Return the minutes to the end from a result on."""
        state = look.reached
        hypotheses = likeliest(outcome.hypotheses, _HYPOTHESES)
        known = 0.0
        for _, weight in hypotheses:
            known = known + weight
        if chance < _RARE or depth >= _DEEPEST or known <= 0.0:
            return self._estimate(look, outcome)
        hypotheses = [(mask, weight / known) for mask, weight in hypotheses]
        key = (tuple(state.fitted), tuple(state.blockable), tuple(state.hanging), _rounded(hypotheses))
        if key not in self.known:
            # What leads back to this very belief has told nothing.
            self.known[key] = _ENDLESS
            best, _ = self._best(state, self._moves(state, hypotheses), hypotheses, chance, depth + 1)
            self.known[key] = self._estimate(look, outcome) if best is None else best
        # What is new, and no hypothesis says, is left as it would be.
        share = min(1.0, known / outcome.total)
        if share > 0.99:
            return self.known[key]
        return share * self.known[key] + (1.0 - share) * self._estimate(look, outcome)

    def _moves(self, state, hypotheses: list) -> list:
        """Return the moves to try after a result, those first that set a mark for the others to meet."""
        moves = self.candidates.moves(state, self.lookahead.marginals(state, hypotheses), 2, False)
        rows = []
        for n, move in enumerate(moves):
            rows.append((0 if move.kind == "exchange" else 1, hundredths(move.minutes), n))
        return [moves[n] for _, _, n in sorted(rows)]

    def _estimate(self, look, outcome) -> float:
        """Return the estimated minutes, cut to figures that both hosts agree on."""
        left = self.lookahead.remaining.left(outcome, look.reached, look.live)
        return max(self.test, int(left * 1000 + 0.5) / 1000)


def _rounded(hypotheses: list) -> tuple:
    """Return a belief as a key that two ways to it agree on."""
    return tuple(sorted([(mask, int(weight * _SHARES + 0.5)) for mask, weight in hypotheses]))
