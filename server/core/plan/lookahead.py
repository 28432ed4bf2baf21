"""How long it would take to be sure: ranks the moves by minutes until settled, two moves ahead or to the end.

Runs on the likeliest hypotheses (explanations with their weights) only; it is never shown. What is beyond
the second move `remaining` estimates.
"""

from collections import namedtuple

from ..infer.figures import hundredths
from . import worth
from .candidates import Candidates
from .endgame import SMALL_BOARD
from .endgame import Endgame
from .hypotheses import bits_open
from .hypotheses import likeliest
from .moves import Marginals
from .moves import Move
from .moves import after
from .outcomes import Predictions
from .remaining import HYPOTHESES_AHEAD
from .remaining import Remaining

# So many hypotheses carry nearly all of the probability; more would only cost time.
_HYPOTHESES = 24
# A result less likely than this does not decide between two moves.
_NOTICED = 0.002
_NOTICED_AHEAD = 0.005
_OUTCOMES_AHEAD = 5
# A move that settles the question this often is one that sets the price of settling.
_LIKELY = 0.4
# So many suspect places are thought about at a time, and from here on a place is one.
_FOCUS = 3
_SUSPECT = 0.1
# The best so many by the look two moves ahead are weighed by what they take to the end.
_TO_THE_END = 2
# A look two moves ahead makes listening look better than it is: in simulated cars what it promised did not
# come. It comes first where it promises more than such a look is wrong by; a fault that comes and goes may
# be away while somebody listens.
_LISTENED, _LISTENED_LATER = 1.5, 10.0
# Fewer bits than this are none.
_CERTAIN = 0.02


# A move, its minutes with what it weighs besides, and where it leads.
Look = namedtuple("Look", ("move", "minutes", "reached", "live", "outcomes"))


class LookAhead:
    """Ranks the moves in one belief."""

    def __init__(self, observation, entries: list, fixing: bool, doubted: bool):
        """`entries` are the explanations, best first; `fixing`: the cause is known already.

        `doubted`: they are weighed as they would be were an assumption wrong.
        """
        self.observation = observation
        self.case = observation.case
        self.hypotheses = [(mask, chance) for chance, mask in entries]
        self.candidates = Candidates(self.case)
        self.predictions = Predictions(observation)
        self.remaining = Remaining(observation, self.predictions, fixing, doubted)

    def marginals(self, state, hypotheses: list) -> Marginals:
        """Return how suspect each position's own causes are in these hypotheses."""
        total = 0.0
        for _, weight in hypotheses:
            total = total + weight
        chances = [0.0] * len(self.observation.belief.suspects)
        for mask, weight in hypotheses:
            for n in range(len(chances)):
                if mask >> n & 1:
                    chances[n] = chances[n] + weight / total
        model = self.observation.model
        bit = self.observation.belief.bit
        alone = self.observation.belief.alone

        def chance(cause):
            return chances[bit[cause]] if cause in bit else alone[cause]

        units = [chance(cause) for cause in model.unit]
        fitted = [units[unit] if unit >= 0 else 0.0 for unit in state.fitted]
        circuits = [chance(rows[-1]) for rows in model.circuits]
        blocked = []
        for place, cause in enumerate(model.blocked):
            blocked.append(chance(cause) if state.blockable[place] else 0.0)
        suspected = [cause in bit for cause in model.unit]
        return Marginals(fitted, circuits, blocked, units, suspected)

    def ranked(self, state, moves: list, among: list) -> list:
        """Return the moves, best first.

        `among` are the exchanges of suspects only. What they prove leans on how rare the causes are,
        so that one of them is taken in only when it is the best by a look ahead to the end.
        """
        hypotheses = self._in_focus(state)
        looks = [self.look(state, move, hypotheses, _NOTICED) for move in moves]
        uncertain = bits_open(hypotheses, None)
        moving = [n for n in range(len(looks)) if moves[n].kind != "retest"]
        owed = self.remaining.owed_anyway(hypotheses, 1.0, state)
        self._price([looks[n] for n in moving if moves[n].kind != "listen"], uncertain, owed)
        rows = sorted([(self.promise(looks[n]), n) for n in moving])
        deep = []
        promising = worth.promising(rows, looks)
        for n in promising:
            look = looks[n]
            expected = look.minutes + self._ahead(look.reached, look.outcomes, True)
            if look.move.kind == "listen":
                expected = expected * (_LISTENED if self.remaining.often == 1 else _LISTENED_LATER)
            deep.append((expected, n))
        if deep and uncertain >= _CERTAIN:
            self.remaining.minutes_a_bit = max(
                self.remaining.minutes_a_bit, (min(deep)[0] - owed) / uncertain
            )
        for n, look in enumerate(looks):
            if look.move.kind == "retest":
                # Its few bits are cheap but run dry, and the best move would tell them along with
                # the rest: so it has to be worth it both by the price of a bit and by a look ahead.
                by_look = look.minutes + self._ahead(look.reached, look.outcomes, False)
                deep.append((max(by_look, self._expected(look)), n))
        deep = worth.telling_first(deep, looks, uncertain, hypotheses)
        ranked = [moves[n] for _, n in deep + [row for row in rows if row[1] not in promising]]
        best = self._to_the_end(state, ranked, among, hypotheses)
        return ranked if best is None else [best] + [move for move in ranked if move is not best]

    def _to_the_end(self, state, ranked: list, among: list, hypotheses: list) -> Move | None:
        """Return the move with the least minutes to the end, None where that is too much to work out."""
        # A fault that comes and goes has no end in sight: only estimates, which would decide on nothing.
        if self.remaining.often > 1 or len(self.observation.read()) > SMALL_BOARD:
            return None
        if not ranked or ranked[0].kind == "retest":
            return None
        tried = [move for move in ranked if move.kind != "retest"][:_TO_THE_END]
        return Endgame(self).best(state, tried[:1] + among + tried[1:], hypotheses)

    def look(self, state, move, hypotheses: list, noticed: float) -> Look:
        """Return a move with what it can lead to in these hypotheses."""
        reached = after(state, move)
        outcomes = self.predictions.outcomes(state, move, hypotheses, noticed)
        return Look(
            move,
            move.minutes + worth.besides(self, state, move),
            reached,
            self.observation.live(reached),
            outcomes,
        )

    def promise(self, look) -> int:
        """Return hundredths of the minutes that a move is estimated to take with what it leaves."""
        return hundredths(self._expected(look))

    def _in_focus(self, state) -> list:
        """Return the hypotheses to look ahead in; with many suspects, as far as the most open places go.

        The likeliest hypotheses hold nearly everything that can be with a few suspects, but little of
        what can be with many, and then no move would seem to settle anything.
        """
        marginals = self.marginals(state, self.hypotheses)
        places = self.candidates.by_doubt(state, marginals)
        places = [place for place in places if marginals.place(place) >= _SUSPECT]
        if len(places) <= _FOCUS:
            return self.hypotheses[:_HYPOTHESES]
        live = self.observation.live(state)
        out_of_focus = 0
        self.predictions.out_of_focus = places[_FOCUS:]
        for place in places[_FOCUS:]:
            out_of_focus |= self.observation.own(state, place)
        sums = {}
        total = 0.0
        for mask, weight in self.hypotheses:
            kept = mask & live & ~out_of_focus
            sums[kept] = sums.get(kept, 0.0) + weight
            total = total + weight
        return [(mask, weight / total) for mask, weight in likeliest(sorted(sums.items()), _HYPOTHESES)]

    def _expected(self, look) -> float:
        """Return the minutes of a move and of what it is estimated to leave."""
        expected = look.minutes
        for outcome in look.outcomes:
            expected = expected + outcome.total * self.remaining.left(outcome, look.reached, look.live)
        return expected

    def _price(self, looks: list, uncertain: float, owed: float) -> None:
        """Find what a move that settles costs here, and what a bit does.

        A first price of a bit is the best that one move offers. With it the best move is known,
        and what that one is expected to take, spread over all bits that are open now, is the
        price to reckon with. Testing again and listening are left out: their few bits are cheap but run dry.
        """
        a_bit = None
        to_settle = None
        for look in looks:
            gained = worth.gained(look, uncertain)
            settling = 0.0
            for outcome in look.outcomes:
                if self.remaining.settled(outcome, look.live):
                    settling = settling + outcome.total
            if gained > _CERTAIN and (a_bit is None or look.minutes / gained < a_bit):
                a_bit = look.minutes / gained
            if settling >= _LIKELY and (to_settle is None or look.minutes < to_settle):
                to_settle = look.minutes
        if a_bit is None or uncertain < _CERTAIN:
            return
        self.remaining.minutes_a_bit = a_bit
        self.remaining.minutes_to_settle = 0.0 if to_settle is None else to_settle
        best = min([self._expected(look) for look in looks])
        self.remaining.minutes_a_bit = max(a_bit, (best - owed) / uncertain)

    def _ahead(self, state, outcomes: list, again: bool) -> float:
        """Return the expected minutes after these outcomes when the next move is the best one."""
        expected = 0.0
        live = self.observation.live(state)
        rows = sorted([(-outcome.total, n) for n, outcome in enumerate(outcomes)])
        for rank, row in enumerate(rows):
            outcome = outcomes[row[1]]
            left = self.remaining.left(outcome, state, live)
            still = left > 0 and not self.remaining.settled(outcome, live)
            if still and rank < _OUTCOMES_AHEAD and outcome.total >= _NOTICED_AHEAD:
                # A fault that is always there is dealt with by moves; one that comes and goes may
                # be cheaper by waiting for it than any next move says.
                least = None if self.remaining.often == 1 else left
                left = self._best_move(state, outcome, again, least)
            expected = expected + outcome.total * left
        return expected

    def _best_move(self, state, outcome, again: bool, least) -> float:
        """Return the minutes of the best next move and of what it leaves, after an outcome.

        Or `least`, where no move takes less. A move is followed only as far as it can still be the best.
        """
        kept = likeliest(outcome.hypotheses, HYPOTHESES_AHEAD)
        hypotheses = [(mask, weight / outcome.total) for mask, weight in kept]
        known = 0.0
        for _, weight in hypotheses:
            known = known + weight
        if known <= 0.0:
            return self.remaining.minutes_a_bit * 3
        marginals = self.marginals(state, hypotheses)
        width = 2 if self.remaining.often == 1 else 1
        moves = self.candidates.proving(self.candidates.moves(state, marginals, width, False))
        # What no hypothesis explains is left over whatever is done.
        over = (1.0 - known) * self.remaining.minutes_a_bit
        for _, n in sorted([(hundredths(move.minutes), n) for n, move in enumerate(moves)]):
            move = moves[n]
            if move.kind == "retest" and not again:
                continue
            if least is not None and move.minutes + over >= least:
                continue
            reached = after(state, move)
            live = self.observation.live(reached)
            outcomes = self.predictions.outcomes(state, move, hypotheses, _NOTICED_AHEAD)
            most = None if least is None else least - over
            expected = self.remaining.with_move(move, outcomes, reached, live, most)
            if expected is not None and (least is None or expected + over < least):
                least = expected + over
        return self.remaining.left(outcome, state, self.observation.live(state)) if least is None else least
