"""What a move would show, roughly: its likely outcomes in a list of likely worlds.

A world is an explanation with its weight. The figures that are shown come from outlook.py; this is
the quick look that lets the foresight weigh many moves.
"""

from .case import NOBODY
from .moves import after
from .noisy import power
from .sight import count

_MOST_WATCHED = 4
_FEW_POSITIONS = 5


class Outcome:
    """What is believed after one possible result: worlds that weigh `total` with the unknown."""

    def __init__(self):
        self.total = 0.0
        # (mask, weight) with no cause beyond the suspects; what is missing to `total` is the
        # weight of something new, which no verdict can name yet.
        self.worlds = []


class Results:
    """The outcomes of moves, for one belief."""

    def __init__(self, sight):
        self.sight = sight
        self.case = sight.case

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

    def outcomes(self, state, move, worlds: list, noticed: float, times: int = 1) -> list:
        """Return the outcomes of a move in these worlds that are likely enough to notice.

        With `times`, of so many tests in a row, of which only is kept where a fault ever showed.
        """
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
                clean = power(reading.quiet * hides[k], times)
                # With none of the suspects behind it, a fault is mostly something new.
                known = 1.0
                if k == 0 and clean < 1.0:
                    known = (1.0 - power(reading.bare, times)) / (1.0 - clean)
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
