"""How long it would take to be sure: expected minutes until settled, two moves ahead.

Runs on the likeliest worlds (explanations) only: it ranks moves, it is never shown. Beyond the
second move the rest is estimated as the uncertainty left, at the minutes that the best move now
needs for one bit.
"""

import math

from .case import NOBODY
from .moves import Candidates
from .moves import Scent
from .moves import after
from .sight import count

# So many worlds carry nearly all of the probability; more would only cost time.
_WORLDS = 24
_WORLDS_AHEAD = 12
# A result less likely than this does not decide between two moves.
_NOTICED = 0.002
_NOTICED_AHEAD = 0.02
_OUTCOMES_AHEAD = 4
_LOOKED_AT_DEEPLY = 4
# A move that settles the question this often is one that sets the price of settling.
_LIKELY = 0.4
_MOST_TESTS = 50
_MOST_WATCHED = 4
_FEW_POSITIONS = 5


class Outcome:
    """What is believed after one possible result: worlds that weigh `total` with the unknown."""

    def __init__(self):
        self.total = 0.0
        # (mask, weight) with no cause beyond the suspects; what is missing to `total` is the
        # weight of something new, which no verdict can name yet.
        self.worlds = []


class Foresight:
    """Ranks the moves in one belief."""

    def __init__(self, sight, entries: list, fixing: bool):
        """`entries` are the explanations, best first; `fixing`: the cause is known already."""
        self.sight = sight
        self.case = sight.case
        self.confidence = self.case.confidence
        self.fixing = fixing
        self.worlds = [(mask, chance) for chance, mask in entries[:_WORLDS]]
        self.candidates = Candidates(self.case)
        self.minutes_a_bit = 10.0
        self.minutes_to_settle = 0.0

    def scent(self, state, worlds: list) -> Scent:
        """Return how suspect each position's own causes are in these worlds."""
        total = 0.0
        for _, weight in worlds:
            total = total + weight
        chances = [0.0] * len(self.sight.belief.suspects)
        for mask, weight in worlds:
            for n in range(len(chances)):
                if mask >> n & 1:
                    chances[n] = chances[n] + weight / total
        model = self.sight.model
        bit = self.sight.belief.bit
        alone = self.sight.belief.alone

        def chance(cause):
            return chances[bit[cause]] if cause in bit else alone[cause]

        units = [chance(cause) for cause in model.unit]
        fitted = [units[unit] if unit >= 0 else 0.0 for unit in state.fitted]
        circuits = [chance(rows[-1]) for rows in model.circuits]
        blocked = []
        for place, cause in enumerate(model.blocked):
            blocked.append(chance(cause) if state.blockable[place] else 0.0)
        return Scent(fitted, circuits, blocked, units)

    def ranked(self, state, moves: list) -> list:
        """Return (expected hundredths of a minute, move), best first."""
        looks = []
        for n, move in enumerate(moves):
            looks.append((n, move, self.outcomes(state, move, self.worlds, _NOTICED)))
        self._measure(state, looks)
        rows = []
        for n, move, outcomes in looks:
            live = self.sight.live(after(state, move))
            expected = move.minutes + self._regret(state, move)
            for outcome in outcomes:
                expected = expected + outcome.total * self._left(outcome, live)
            rows.append((int(expected * 100 + 0.5), n))
        rows.sort()
        deep = []
        for _, n in rows[:_LOOKED_AT_DEEPLY]:
            _, move, outcomes = looks[n]
            expected = move.minutes + self._regret(state, move)
            expected = expected + self._ahead(after(state, move), outcomes)
            deep.append((int(expected * 100 + 0.5), n))
        deep.sort()
        return [(expected, moves[n]) for expected, n in deep + rows[_LOOKED_AT_DEEPLY:]]

    def _measure(self, state, looks: list):
        """Find what a bit costs at best here, and what a move that is likely to settle costs."""
        uncertain = _entropy(self.worlds, None)
        a_bit = 60.0
        to_settle = None
        for _, move, outcomes in looks:
            live = self.sight.live(after(state, move))
            minutes = move.minutes + self._regret(state, move)
            gained = uncertain
            settling = 0.0
            for outcome in outcomes:
                gained = gained - outcome.total * _entropy(outcome.worlds, outcome.total)
                if self._settled(outcome, live):
                    settling = settling + outcome.total
            if gained > 0.02:
                a_bit = min(a_bit, minutes / gained)
            if settling >= _LIKELY and (to_settle is None or minutes < to_settle):
                to_settle = minutes
        self.minutes_a_bit = a_bit
        self.minutes_to_settle = 0.0 if to_settle is None else to_settle

    def _regret(self, state, move) -> float:
        """Return what buying the part weighs, times the chance that it was not needed."""
        regret = 0.0
        if move.kind == "replace":
            scent = self.scent(state, self.worlds)
            for place, _ in move.fitted:
                regret = regret + self.case.minutes["part"] * (1.0 - scent.unit[place])
        return regret

    def _ahead(self, state, outcomes: list) -> float:
        """Return the expected minutes after these outcomes when the next move is the best one."""
        expected = 0.0
        live = self.sight.live(state)
        rows = sorted([(-outcome.total, n) for n, outcome in enumerate(outcomes)])
        for rank, row in enumerate(rows):
            outcome = outcomes[row[1]]
            left = self._left(outcome, live)
            if left > 0 and rank < _OUTCOMES_AHEAD and outcome.total >= _NOTICED_AHEAD:
                left = min(left, self._best_move(state, outcome))
            expected = expected + outcome.total * left
        return expected

    def _best_move(self, state, outcome) -> float:
        """Return the minutes of the best next move and of what it leaves, after an outcome."""
        kept = _likeliest(outcome.worlds, _WORLDS_AHEAD)
        worlds = [(mask, weight / outcome.total) for mask, weight in kept]
        known = 0.0
        for _, weight in worlds:
            known = known + weight
        if known <= 0.0:
            return self.minutes_a_bit * 3
        best = None
        scent = self.scent(state, worlds)
        for move in self.candidates.moves(state, scent, 1, False):
            live = self.sight.live(after(state, move))
            expected = move.minutes
            for after_it in self.outcomes(state, move, worlds, _NOTICED_AHEAD):
                expected = expected + after_it.total * self._left(after_it, live)
            # What no world explains is left over whatever is done.
            expected = expected + (1.0 - known) * self.minutes_a_bit
            if best is None or expected < best:
                best = expected
        return best

    def _settled(self, outcome, live: int) -> bool:
        """Tell whether an outcome settles the question, by a verdict or by clear."""
        needed = self.confidence * outcome.total
        if _clear(outcome.worlds, live) >= needed:
            return True
        if self.fixing:
            return False
        top = (0, 0.0)
        for world in outcome.worlds:
            if world[1] > top[1]:
                top = world
        return top[0] != 0 and top[1] >= needed

    def _left(self, outcome, live: int) -> float:
        """Return the estimated minutes that are left after an outcome; 0 once it is settled.

        Either the cause is searched on: what is unknown, at the price of a bit, but not less than
        one move that settles. Or the fault seems gone, and clean tests are all that is needed.
        """
        if self._settled(outcome, live):
            return 0.0
        search = _entropy(outcome.worlds, outcome.total) * self.minutes_a_bit
        search = max(search, self.minutes_to_settle)
        clear = _clear(outcome.worlds, live) / outcome.total
        tests = 0
        doubt = 1.0 - clear
        while doubt > (1.0 - self.confidence) * (doubt + clear) and tests < _MOST_TESTS:
            doubt = doubt * self.sight.hidden
            tests += 1
        prove = tests * self.case.minutes["test"] * clear + (1.0 - clear) * search
        return max(self.case.minutes["test"], min(search, prove))

    def watched(self, state, move, worlds: list) -> list:
        """Return the positions whose reading tells something, by position."""
        places = [place for place, _ in move.fitted]
        if move.place != NOBODY and move.place not in places:
            places.append(move.place)
        read = self.sight.read()
        if len(read) <= _FEW_POSITIONS:
            return sorted(set(read + places))
        rows = []
        reached = after(state, move)
        for place in read:
            reading = self.sight.reading(reached, place, False)
            local = 0.0
            for mask, weight in worlds:
                if mask & reading.suspects:
                    local = local + weight
            rows.append((-int((local + 1.0 - reading.quiet) * 1000000 + 0.5), place))
        rows.sort()
        for _, place in rows:
            if len(places) >= _MOST_WATCHED:
                break
            if place not in places:
                places.append(place)
        return sorted(places)

    def outcomes(self, state, move, worlds: list, noticed: float) -> list:
        """Return the outcomes of a move in these worlds that are likely enough to notice."""
        if move.kind == "meter":
            return self._read_meter(move, worlds)
        reached = after(state, move)
        readings = []
        for n, place in enumerate(self.watched(state, move, worlds)):
            unplugged = move.kind == "unplug" and place == move.place
            readings.append((self.sight.reading(reached, place, unplugged), 1 << n))
        hides = self.sight.hides
        found = {}
        for mask, weight in worlds:
            partial = [(0, weight, 1.0)]
            for reading, bit in readings:
                k = count(mask & reading.suspects)
                clean = reading.quiet * hides[k]
                # With none of the suspects behind it, a fault is mostly something new.
                known = (1.0 - reading.bare) / (1.0 - clean) if k == 0 and clean < 1.0 else 1.0
                longer = []
                # The likelier reading is always followed, so that no world is lost altogether.
                for pattern, chance, share in partial:
                    without = chance * clean
                    if clean > 0.5 or without >= noticed:
                        longer.append((pattern, without, share))
                    if clean <= 0.5 or chance - without >= noticed:
                        longer.append((pattern | bit, chance - without, share * known))
                partial = longer
            for pattern, chance, share in partial:
                if pattern not in found:
                    found[pattern] = Outcome()
                outcome = found[pattern]
                outcome.total = outcome.total + chance
                outcome.worlds.append((mask, chance * share))
        return [found[pattern] for pattern in sorted(found) if found[pattern].total > 0.0]

    def _read_meter(self, move, worlds: list) -> list:
        rates = self.case.rates
        cause = self.sight.model.circuits[move.place][-1]
        bit = self.sight.belief.bit.get(cause)
        good = Outcome()
        bad = Outcome()
        for mask, weight in worlds:
            if bit is None:
                chance = self.sight.belief.alone[cause]
            else:
                chance = 1.0 * (mask >> bit & 1)
            reads_bad = chance * rates["meter_sees"] + (1.0 - chance) * rates["meter_false"]
            for outcome, part in ((good, 1.0 - reads_bad), (bad, reads_bad)):
                outcome.total = outcome.total + weight * part
                outcome.worlds.append((mask, weight * part))
        return [outcome for outcome in (good, bad) if outcome.total > 0.0]


def _clear(worlds: list, live: int) -> float:
    """Return the weight of the worlds in which nothing live is present."""
    clear = 0.0
    for mask, weight in worlds:
        if mask & live == 0:
            clear = clear + weight
    return clear


def _likeliest(worlds: list, most: int) -> list:
    """Return the worlds with the highest weights."""
    rows = sorted([(-weight, mask) for mask, weight in worlds])
    return [(mask, -less) for less, mask in rows[:most]]


def _entropy(worlds: list, total) -> float:
    """Return the entropy in bits; what is missing to `total` counts as one more world."""
    known = 0.0
    for _, weight in worlds:
        known = known + weight
    if total is None:
        total = known
    bits = 0.0
    for weight in [weight for _, weight in worlds] + [total - known]:
        share = weight / total
        if share > 1e-12:
            bits = bits - share * math.log(share)
    return bits * 1.4426950408889634
