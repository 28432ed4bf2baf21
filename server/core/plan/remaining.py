"""What is left after an outcome: expected minutes until settled, estimated without choosing a move.

The uncertainty left costs its bits at the minutes that the best move now needs for one; a fault that seems
gone, or that comes and goes, may be cheaper to prove or to wait for by clean tests.
"""

from collections import namedtuple

from ..infer.variations import CLASSES
from ..infer.variations import multiplied
from ..infer.variations import of_class
from .hypotheses import acting
from .hypotheses import bits_open
from .hypotheses import likeliest
from .moves import Move
from .moves import seat
from .spares import Spares

# So many hypotheses carry nearly all of what a further look decides on; more would only cost time.
HYPOTHESES_AHEAD = 8
# A result less likely than this is not thought through to the end of many tests in a row.
_TESTED_ON = 0.05
# Of those tests, a result less likely than this is left out; beliefs that agree to so many parts are one.
_NOTICED = 0.05
_SHARES = 1000000000
_MOST_TESTS = 50
# Shares that are equal may differ by so much after they were added up in another order.
_ROUNDED = 0.000000001

# How an outcome stands: whether it settles what to do, how likely all is clear, the bits that are open.
Standing = namedtuple("Standing", ("settled", "clear", "bits"))


class Remaining:
    """Estimates what is left; `minutes_a_bit` and `minutes_to_settle` are the prices to reckon with."""

    def __init__(self, observation, predictions, fixing: bool, doubted: bool):
        """`fixing`: the cause is known already; `doubted`: an assumption is taken to be wrong already."""
        self.observation = observation
        self.case = observation.case
        self.confidence = self.case.confidence
        self.predictions = predictions
        self.fixing = fixing
        self.bearable = 2.0 * (1.0 - self.confidence)
        self.needed = 1.0 - self.bearable if doubted else self.confidence
        self.doubt = 1.0 if doubted else max(self.case.doubt.values())
        self._seat = seat(self.case)
        self.minutes_a_bit = 10.0
        self.minutes_to_settle = 0.0
        self.retest = Move("retest", [], [], self.case.minutes["test"], "retest")
        self.spares = Spares(observation)
        masks = [(of_class(observation.belief, what), self.case.doubt[what]) for what in CLASSES]
        self._units = of_class(observation.belief, "unit")
        self._classes = [each for each in masks if each[0]]
        # How many tests in a row show a fault that is there, as far as anybody wants to know.
        self.often = 0
        self._known = {}
        doubt = 1.0
        while doubt > 1.0 - self.confidence + 1e-9 and self.often < _MOST_TESTS:
            doubt = doubt * self.observation.hidden
            self.often += 1

    def settled(self, outcome, live: int) -> bool:
        """Tell whether an outcome settles what to do: by clear, a verdict, or a known live fault.

        A blockage that is gone or a unit on the bench may stay doubtful for good; what still acts
        is what has to be known.
        """
        return self._standing(outcome, live).settled

    def _standing(self, outcome, live: int) -> Standing:
        """Return how an outcome stands, which no price changes."""
        if outcome.standing is None:
            weights = acting(outcome.hypotheses, live)
            settled = self._settles(weights, outcome, live)
            bits = 0.0 if settled else bits_open(outcome.hypotheses, outcome.total)
            outcome.standing = Standing(settled, weights.get(0, 0.0) / outcome.total, bits)
        return outcome.standing

    def _settles(self, weights: dict, outcome, live: int) -> bool:
        """Tell the same from the weights of what acts."""
        needed = self.needed * outcome.total
        for present in weights:
            if weights[present] >= needed and (present == 0 or not self.fixing):
                return self._survives(present, outcome, live)
        return False

    def _survives(self, present: int, outcome, live: int) -> bool:
        """Tell whether what is known to act stays so with the odds of each class of causes multiplied.

        As one explanation, else cause by cause; a unit, which is bought, has to keep the confidence itself
        then, as the answer asks (`holds.certain`).
        """
        whole, best = 0, 0.0
        for mask, share in outcome.hypotheses:
            if mask & live == present and share > best:
                whole, best = mask, share
        if best >= self.needed * outcome.total and self._keeps(outcome, ~0, whole, self.bearable):
            return True
        units = present & self._units
        if not self._keeps(outcome, live & ~units, present & ~units, self.bearable):
            return False
        while units:
            unit = units & -units
            if not self._keeps(outcome, unit, unit, 1.0 - self.confidence):
                return False
            units &= units - 1
        return True

    def _keeps(self, outcome, among: int, present: int, bearable: float) -> bool:
        """Tell whether those hypotheses keep all but so much under every variation that have, `among` these
        causes, the present ones.

        Other rates than the priors are left out: too long to work out for what is only looked ahead at.
        """
        weight = 0.0
        for mask, share in outcome.hypotheses:
            if mask & among == present:
                weight = weight + share
        doubt = self.doubt
        others = outcome.total - weight
        if doubt == 1.0:
            return others <= bearable * outcome.total + _ROUNDED
        # Two causes more or less of a class is as far as it nearly always goes.
        if doubt * doubt * others <= bearable * weight:
            return True
        for mask, each in self._classes:
            for factor in (each, 1.0 / each):
                same = 0.0
                total = max(1.0, factor) * outcome.total
                for hypothesis, share in outcome.hypotheses:
                    varied = multiplied(share, factor, hypothesis & mask)
                    total = total + varied - max(1.0, factor) * share
                    if hypothesis & among == present:
                        same = same + varied
                if same < (1.0 - bearable) * total:
                    return False
        return True

    def _search(self, bits: float) -> float:
        """Return what is unknown, at the price of a bit, but not less than one move that settles."""
        return max(bits * self.minutes_a_bit, self.minutes_to_settle)

    def left(self, outcome, state, live: int) -> float:
        """Return the estimated minutes that are left after an outcome; once it is settled what is owed.

        Either the cause is searched on: what is unknown, at the price of a bit, but not less than
        one move that settles. Or the fault seems gone, and clean tests are all that is needed.
        """
        settled, clear, bits = self._standing(outcome, live)
        if settled:
            return self.spares.owed(outcome.hypotheses, outcome.total, state) + self.to_seat(state)
        search = self._search(bits)
        if self.often > 1 and outcome.total >= _TESTED_ON:
            minutes = self._by_testing(outcome, state, live, clear, search)
        else:
            minutes = self._by_proof(clear, search)
        owed = self.owed_anyway(outcome.hypotheses, outcome.total, state)
        return max(self.case.minutes["test"], minutes) + owed

    def with_move(self, move, outcomes: list, reached, live: int, most) -> float | None:
        """Return the minutes of a move and of what it leaves, None once they can't come below `most`."""
        expected = move.minutes
        open_ones = []
        for outcome in outcomes:
            left, exact = self.at_least(outcome, reached, live)
            expected = expected + outcome.total * left
            if not exact:
                open_ones.append((outcome, left))
        for outcome, at_least in open_ones:
            if most is not None and expected >= most:
                return None
            left = self.left(outcome, reached, live)
            expected = expected + outcome.total * (left - at_least)
        return expected

    def at_least(self, outcome, state, live: int) -> tuple:
        """Return (what `left` comes to at least, whether that is it), without a look at tests in a row."""
        settled, clear, bits = self._standing(outcome, live)
        if settled or self.often == 1 or outcome.total < _TESTED_ON or outcome.retested is not None:
            return self.left(outcome, state, live), True
        minutes = min(self._waiting(clear), self._search(bits))
        owed = self.owed_anyway(outcome.hypotheses, outcome.total, state)
        return max(self.case.minutes["test"], minutes) + owed, False

    def _waiting(self, clear: float) -> float:
        """Return the minutes of tests in a row until a fault shows, or is known to be gone."""
        minutes = self.case.minutes["test"]
        return minutes * (clear * self.often + (1.0 - clear) / (1.0 - self.observation.hidden))

    def owed_anyway(self, hypotheses: list, total: float, state) -> float:
        """Return the minutes that are owed in a state however the question is settled."""
        return self.spares.to_fit(hypotheses, total, state) + self.to_seat(state)

    def to_seat(self, state) -> float:
        """Return the minutes to push home what hangs, once at the end."""
        return self._seat * state.hanging.count(True)

    def _by_testing(self, outcome, state, live: int, clear: float, search: float) -> float:
        """Return the minutes when the test is run again and again: a fault that comes and goes shows
        after a while where it is now, or it is gone, which is `clear` likely. Not more than `search`,
        the other way.
        """
        waiting = self._waiting(clear)
        if waiting >= search:
            return search
        if outcome.retested is None:
            outcome.retested = self._retested(outcome, state, live)
        known, unsettled = outcome.retested
        expected = waiting + max(0.0, 1.0 - known) * search
        for chance, left_clear, bits in unsettled:
            expected = expected + chance * self._by_proof(left_clear, self._search(bits))
            if expected >= search:
                return search
        return expected

    def _retested(self, outcome, state, live: int) -> tuple:
        """Return (chance, [(chance, clear, bits)] of those unsettled) of what tests in a row would show.

        Several moves lead to the same belief; what it would show is worked out once.
        """
        kept = likeliest(outcome.hypotheses, HYPOTHESES_AHEAD)
        hypotheses = [(mask, weight / outcome.total) for mask, weight in kept]
        belief = tuple([(mask, int(weight * _SHARES + 0.5)) for mask, weight in hypotheses])
        key = (tuple(state.fitted), tuple(state.blockable), state.repaired, belief)
        if key not in self._known:
            known = 0.0
            unsettled = []
            for result in self.predictions.outcomes(state, self.retest, hypotheses, _NOTICED, self.often):
                known = known + result.total
                settled, left_clear, bits = self._standing(result, live)
                if not settled:
                    unsettled.append((result.total, left_clear, bits))
            self._known[key] = (known, unsettled)
        return self._known[key]

    def _by_proof(self, clear: float, search: float) -> float:
        """Return the minutes when clean tests are to prove that all is clear, and if not, it is searched on.

        Not more than `search`, the other way.
        """
        if clear <= 0.0:
            return search
        # The doubt that n clean tests leave, (1 - clear) * hidden ** n, is a share of itself and `clear`.
        bearable = (1.0 - self.confidence) * clear
        doubt = self.confidence * (1.0 - clear)
        tests = 0
        while doubt > bearable and tests < _MOST_TESTS:
            doubt = doubt * self.observation.hidden
            tests += 1
        return min(search, tests * self.case.minutes["test"] * clear + (1.0 - clear) * search)
